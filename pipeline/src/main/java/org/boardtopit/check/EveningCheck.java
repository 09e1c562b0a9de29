package org.boardtopit.check;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.BiConsumer;
import org.boardtopit.clips.Clip;

/** Looks at the clips of a run side by side; what is said comes out in their order. */
public final class EveningCheck {
    private final ClipChecker checker;
    private final int threads;

    /** @param threads clips that are looked at at once */
    public EveningCheck(ClipChecker checker, int threads) {
        if (threads < 1) {
            throw new IllegalArgumentException("threads must be at least 1, was " + threads);
        }
        this.checker = checker;
        this.threads = threads;
    }

    /**
     * Looks at all clips.
     *
     * @param news is told, by the calling thread, the number of each clip that is done and the clip
     */
    public List<CheckedClip> check(List<Clip> clips, BiConsumer<Integer, Clip> news) {
        ExecutorService workers = Executors.newFixedThreadPool(threads, work -> new Thread(work, "check"));
        try {
            List<Future<CheckedClip>> looks = clips.stream()
                    .map(c -> workers.submit(() -> checker.check(c)))
                    .toList();
            List<CheckedClip> checked = new ArrayList<>();
            for (int i = 0; i < clips.size(); i++) {
                checked.add(result(looks.get(i)));
                news.accept(i + 1, clips.get(i));
            }
            return checked;
        } finally {
            workers.shutdownNow();
        }
    }

    private static CheckedClip result(Future<CheckedClip> look) {
        try {
            return look.get();
        } catch (ExecutionException e) {
            throw e.getCause() instanceof RuntimeException bug ? bug : new IllegalStateException(e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while looking at the clips", e);
        }
    }

    /** Clips that are the same file to the last byte: copied twice under two names. */
    public static List<Finding> twins(List<Clip> clips) {
        Map<Long, List<Clip>> bySize = new HashMap<>();
        List<Finding> findings = new ArrayList<>();
        for (Clip clip : clips) {
            long size = size(clip);
            List<Clip> same = bySize.computeIfAbsent(size, k -> new ArrayList<>());
            Optional<Clip> twin = size == 0 ? Optional.empty() : twin(clip, same);
            twin.ifPresent(t -> findings.add(Finding.remark(
                    clip.fileName(),
                    "the same recording as " + t.fileName() + ", to the last byte",
                    "remove one, or copy the right one from the camera")));
            same.add(clip);
        }
        return findings;
    }

    /** 0 when it cannot be read, which is said of the clip itself. */
    private static long size(Clip clip) {
        try {
            return Files.size(clip.file());
        } catch (IOException e) {
            return 0;
        }
    }

    private static Optional<Clip> twin(Clip clip, List<Clip> sameSize) {
        for (Clip other : sameSize) {
            try {
                if (Files.mismatch(clip.file(), other.file()) < 0) {
                    return Optional.of(other);
                }
            } catch (IOException e) {
                return Optional.empty(); // as above
            }
        }
        return Optional.empty();
    }
}
