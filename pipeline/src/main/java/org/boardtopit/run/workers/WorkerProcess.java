package org.boardtopit.run.workers;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.run.RecordJson;
import org.boardtopit.run.StageListener;
import org.boardtopit.run.workers.WorkerMessage.Kind;

/** One worker as the supervisor sees it. Use from one thread at a time; {@link #close()} ends the process, however it is. */
final class WorkerProcess implements AutoCloseable {
    /** Unpacking the native libraries for the first time, and the test of the networks, on a slow machine. */
    private static final double START_LIMIT_S = 600;

    private static final int LAST_WORDS = 25;
    private static final double END_LIMIT_S = 10;

    private final Process process;
    private final String token = UUID.randomUUID().toString();
    private final BlockingQueue<WorkerMessage> heard = new LinkedBlockingQueue<>();
    private final Deque<String> lastWords = new ArrayDeque<>();
    private final Thread ear;
    private boolean ended;

    /**
     * Starts a worker and gives it the setup; {@link #awaitReady} waits for it.
     *
     * @param setup one line that the worker understands
     */
    WorkerProcess(WorkerStarter starter, WorkerPlan plan, Path work, String setup) throws IOException {
        process = starter.start(plan, token, work);
        ear = new Thread(() -> listen(process.getInputStream()), "ear-of-" + process.pid());
        ear.setDaemon(true);
        ear.start();
        try {
            say(setup);
        } catch (IOException e) {
            // It has died already; awaitReady tells how.
        }
    }

    private void listen(InputStream from) {
        BoundedLines lines = new BoundedLines(new BufferedInputStream(from));
        try {
            for (String line = lines.next(); line != null; line = lines.next()) {
                Optional<WorkerMessage> message = WorkerMessage.parse(line, token);
                if (message.isPresent()) {
                    heard.add(message.get());
                } else if (!line.isBlank()) {
                    keep(line);
                }
            }
        } catch (IOException e) {
            keep("(its output broke off: " + e.getMessage() + ")");
        }
        heard.add(WorkerMessage.of(Kind.ENDED));
    }

    private void keep(String line) {
        synchronized (lastWords) {
            lastWords.addLast(line);
            if (lastWords.size() > LAST_WORDS) {
                lastWords.removeFirst();
            }
        }
    }

    private String lastWords() {
        synchronized (lastWords) {
            return String.join("\n", lastWords);
        }
    }

    long pid() {
        return process.pid();
    }

    /** Processor time of the process since it began, to some hundredths of a second; empty where the system does not tell. */
    Optional<Duration> worked() {
        return process.info().totalCpuDuration();
    }

    boolean isAlive() {
        return !ended && process.isAlive();
    }

    private void say(String line) throws IOException {
        OutputStream out = process.getOutputStream();
        out.write((line + "\n").getBytes(StandardCharsets.US_ASCII));
        out.flush();
    }

    /**
     * Waits until the worker has opened and tested the networks.
     *
     * @throws NetworkUnfitException when it must not use them
     */
    void awaitReady() throws NetworkUnfitException, WorkerDiedException {
        WorkerMessage message = next(START_LIMIT_S);
        if (message == null) {
            throw hung("start", START_LIMIT_S);
        }
        switch (message.kind()) {
            case READY -> {
                return;
            }
            case UNFIT -> throw new NetworkUnfitException(message.text());
            default -> throw died("start");
        }
    }

    /**
     * Has a clip measured.
     *
     * @return what the worker said last: STORED, NOT_NOW or FAULT
     */
    WorkerMessage measure(WorkerJob job, TimeLimits limits, StageListener listener) throws WorkerDiedException {
        String stage = "start";
        try {
            say(RecordJson.mapperOfRecords().writeValueAsString(job));
        } catch (IOException e) {
            throw died(stage);
        }
        long bytes = size(job.clip().file());
        long frames = 0;
        long startNs = System.nanoTime();
        while (true) {
            double leftS = limits.wholeS(frames, bytes) - (System.nanoTime() - startNs) * 1e-9;
            double quietS = limits.quietS(frames, bytes);
            WorkerMessage message = next(Math.min(leftS, quietS));
            if (message == null) {
                throw hung(stage, leftS < quietS ? limits.wholeS(frames, bytes) : quietS);
            }
            switch (message.kind()) {
                case STAGE -> {
                    stage = message.stage();
                    worked().ifPresent(listener::worked);
                    listener.at(stage, message.share());
                }
                case ALIVE -> frames = Math.max(frames, message.frames());
                case STORED, NOT_NOW, FAULT -> {
                    worked().ifPresent(listener::worked);
                    return message;
                }
                default -> throw died(stage);
            }
        }
    }

    private static long size(Path file) {
        try {
            return Files.size(file);
        } catch (IOException e) {
            return 0; // the worker will say what is wrong
        }
    }

    /** Null when the time is over. */
    private WorkerMessage next(double limitS) {
        try {
            return heard.poll((long) (Math.max(0, limitS) * 1e9), TimeUnit.NANOSECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return WorkerMessage.of(Kind.ENDED);
        }
    }

    private WorkerDiedException hung(String stage, double limitS) {
        end();
        return new WorkerDiedException(
                stage, String.format(Locale.ROOT, "did not go on for %.0f s and was ended", limitS), lastWords());
    }

    private WorkerDiedException died(String stage) {
        boolean byItself = exited();
        end();
        String words = lastWords();
        String how = byItself ? WorkerEnd.inWords(process.exitValue(), words) : "closed its channel and was ended";
        return new WorkerDiedException(stage, how, words);
    }

    private boolean exited() {
        try {
            return process.waitFor((long) (END_LIMIT_S * 1000), TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    private void end() {
        ended = true;
        process.destroyForcibly();
        exited();
        try {
            ear.join((long) (END_LIMIT_S * 1000));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void close() {
        end();
    }
}
