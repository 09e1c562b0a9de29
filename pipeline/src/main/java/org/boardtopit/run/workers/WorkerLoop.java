package org.boardtopit.run.workers;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.stream.Stream;
import org.boardtopit.clips.AttemptViews;
import org.boardtopit.clips.Clip;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.run.ClipMeasurer;
import org.boardtopit.run.ClipNotMeasuredException;
import org.boardtopit.run.NotMeasuredNowException;
import org.boardtopit.run.RecordJson;
import org.boardtopit.run.StageListener;
import org.boardtopit.run.workers.WorkerMessage.Kind;

/**
 * What a worker process does: reads the setup, opens what it needs, and measures the clips it is given, one at a time, until its
 * input ends. A thread of its own reads the input, so that the end of the supervisor is noticed in the middle of a clip.
 */
public final class WorkerLoop {

    /** Makes the measurer of a setup. */
    @FunctionalInterface
    public interface Opening {
        /**
         * Opens networks.
         *
         * @param setup the line of the supervisor
         * @param life to be told of every frame that is read
         * @throws NetworkUnfitException when this machine must not measure
         */
        JobMeasurer open(String setup, SignsOfLife life) throws NetworkUnfitException, IOException;
    }

    /** Measures and stores the result of a job. */
    public interface JobMeasurer extends AutoCloseable {
        /**
         * A measurer that stores ({@link org.boardtopit.run.StoringMeasurer}).
         *
         * @param views the joined clips of the job
         */
        ClipMeasurer measurer(WorkerJob job, AttemptViews views);

        @Override
        void close();
    }

    private final OutputStream out;
    private final String token;
    private final BlockingQueue<String> jobs = new LinkedBlockingQueue<>();
    private final SignsOfLife life = new SignsOfLife(frames -> send(WorkerMessage.alive(frames)));

    /**
     * On a channel.
     *
     * @param out the process's standard output, on which others may print too
     */
    public WorkerLoop(OutputStream out, String token) {
        this.out = out;
        this.token = token;
    }

    /**
     * Works until the input ends.
     *
     * @param onEnd called from another thread as soon as the input ends: it must end the process
     */
    public void run(InputStream in, Opening opening, Runnable onEnd) throws InterruptedException {
        Thread ear = new Thread(() -> listen(in, onEnd), "supervisor");
        ear.setDaemon(true);
        ear.start();
        try (JobMeasurer measurer = opening.open(jobs.take(), life)) {
            send(WorkerMessage.of(Kind.READY));
            while (true) {
                work(measurer, RecordJson.mapperOfRecords().readValue(jobs.take(), WorkerJob.class));
            }
        } catch (NetworkUnfitException e) {
            send(WorkerMessage.of(Kind.UNFIT, "", String.valueOf(e.getMessage()), ""));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void listen(InputStream in, Runnable onEnd) {
        try {
            BufferedReader lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.US_ASCII));
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                jobs.add(line);
            }
        } catch (IOException e) {
            // The same as its end.
        }
        onEnd.run();
    }

    private void work(JobMeasurer measurer, WorkerJob job) {
        life.begin();
        Stage stage = new Stage();
        try {
            Clip clip = job.clip();
            AttemptViews views = AttemptViews.of(
                    Stream.concat(Stream.of(clip), job.joined().stream()).toList());
            measurer.measurer(job, views).measure(clip, stage);
            send(WorkerMessage.of(Kind.STORED));
        } catch (NotMeasuredNowException e) {
            send(WorkerMessage.of(Kind.NOT_NOW, e.stage(), String.valueOf(e.getMessage()), ""));
        } catch (ClipNotMeasuredException e) {
            send(WorkerMessage.of(Kind.STORED));
        } catch (OutOfMemoryError e) {
            throw e; // the whole process is in doubt
        } catch (RuntimeException | Error e) {
            send(WorkerMessage.of(Kind.FAULT, stage.current, e.toString(), trace(e)));
        }
    }

    private static String trace(Throwable fault) {
        StringWriter text = new StringWriter();
        fault.printStackTrace(new PrintWriter(text, true));
        return text.toString();
    }

    private final class Stage implements StageListener {
        private String current = "start";

        @Override
        public void at(String stage, double share) {
            current = stage;
            send(WorkerMessage.stage(stage, share));
        }
    }

    /** In one piece; see {@link WorkerMessage}. */
    private synchronized void send(WorkerMessage message) {
        try {
            out.write(message.line(token));
            out.flush();
        } catch (IOException e) {
            throw new UncheckedIOException("the supervisor is gone", e);
        }
    }
}
