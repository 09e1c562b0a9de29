package org.boardtopit.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import org.boardtopit.clips.Camera;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.ClipList;
import org.boardtopit.report.tables.Outcome;

/**
 * Makes the results of a competition anew from what is kept of its clips, as far as anything they are made from has changed:
 * corrections, sheets, rules, the program. Opens no network.
 *
 * <p>First everything is measured that changed, and nothing is written ({@link #find}): a correction that is refused leaves all
 * as it was. Then pictures are drawn and results stored ({@link #keep}). The result of a clip whose picture could not be drawn is
 * not stored, so that the next start tries again.
 */
public final class Remeasuring {
    private final ClipList list;
    private final Fingerprinter fingerprinter;
    private final StoredResults results;
    private final Path out;
    private final int lanes;
    private final Map<String, StoredResult> found = new ConcurrentHashMap<>();
    private final Map<String, String> made = new ConcurrentHashMap<>();
    private final Map<String, Exception> failures = new ConcurrentHashMap<>();
    private final List<Clip> changed = new ArrayList<>();

    /** Gives the fingerprint of a clip's result. */
    @FunctionalInterface
    public interface Fingerprinter {
        String of(Clip clip) throws IOException;
    }

    /** Is told how it goes; may be called from several threads, one at a time. */
    public interface Listener {
        /** A clip is being measured or drawn. */
        void at(String clip, String what, int number, int of);

        /** The user should know; one line. */
        void trouble(String what);
    }

    /**
     * Of one output folder, whose lock the caller holds.
     *
     * @param lanes how many clips are measured side by side
     */
    public Remeasuring(ClipList list, Fingerprinter fingerprinter, Path out, int lanes) {
        this.list = list;
        this.fingerprinter = fingerprinter;
        this.results = new StoredResults(out);
        this.out = out;
        this.lanes = lanes;
    }

    /**
     * Finds the results that still hold and measures the others; writes nothing.
     *
     * @param measurers make measurers that draw nothing, one for each lane
     * @throws RefusedHereException the first correction, by its line, that cannot be true
     */
    public void find(Supplier<ClipMeasurer> measurers, Listener listener) throws RefusedHereException {
        List<Clip> agreed = list.clips().stream().filter(Clip::isAgreed).toList();
        agreed.forEach(this::findStored);
        changed.addAll(agreed.stream()
                .filter(clip -> !found.containsKey(clip.name()) && !failures.containsKey(clip.name()))
                .toList());
        Work work = new Work(changed, measurers, listener);
        new Lanes(Math.max(1, Math.min(lanes, changed.size()))).runAll(work::measureAll);
        Optional<RefusedHereException> refused = failures.values().stream()
                .filter(RefusedHereException.class::isInstance)
                .map(RefusedHereException.class::cast)
                .min(Comparator.comparingInt(RefusedHereException::line));
        if (refused.isPresent()) {
            throw refused.get();
        }
    }

    private void findStored(Clip clip) {
        try {
            String fingerprint = fingerprinter.of(clip);
            made.put(clip.name(), fingerprint);
            results.find(clip, fingerprint).ifPresent(result -> found.put(clip.name(), result));
        } catch (IOException e) {
            failures.put(clip.name(), StoringMeasurer.cannotRead(clip, e));
        }
    }

    /** The clips that were measured anew. */
    public List<Clip> changed() {
        return List.copyOf(changed);
    }

    /** What became of every clip that could be measured, by its name. */
    public Map<String, StoredResult> results() {
        return Map.copyOf(found);
    }

    /** Says of the other clips why they could not. */
    public ClipMeasurer others() {
        return (clip, listener) -> {
            Exception failure = failures.get(clip.name());
            listener.at("measure", 0);
            if (failure instanceof ClipNotMeasuredException known) {
                throw known;
            }
            throw failure instanceof RuntimeException bug ? bug : new IllegalStateException(clip.fileName(), failure);
        };
    }

    /** Clips in a queue, for measurers of one thread each. */
    private final class Work {
        private final ConcurrentLinkedQueue<Clip> waiting;
        private final int all;
        private final Supplier<ClipMeasurer> measurers;
        private final Listener listener;
        private final AtomicInteger begun = new AtomicInteger();

        Work(List<Clip> clips, Supplier<ClipMeasurer> measurers, Listener listener) {
            this.waiting = new ConcurrentLinkedQueue<>(clips);
            this.all = clips.size();
            this.measurers = measurers;
            this.listener = listener;
        }

        void measureAll() {
            ClipMeasurer measurer = measurers.get();
            for (Clip clip = waiting.poll(); clip != null; clip = waiting.poll()) {
                tell(clip, "measuring");
                measure(measurer, clip);
            }
        }

        private void tell(Clip clip, String what) {
            synchronized (listener) {
                listener.at(clip.fileName(), what, begun.incrementAndGet(), all);
            }
        }

        private void measure(ClipMeasurer measurer, Clip clip) {
            double seconds = results.last(clip).map(StoredResult::seconds).orElse(0.0);
            try {
                ClipResult result = measurer.measure(clip, (stage, share) -> {});
                found.put(clip.name(), StoredResult.measured(result, seconds));
            } catch (NotMeasuredNowException e) {
                failures.put(clip.name(), e);
            } catch (ClipNotMeasuredException e) {
                found.put(clip.name(), StoredResult.failed(e.stage(), e.getMessage(), seconds));
            } catch (RuntimeException e) {
                failures.put(clip.name(), e);
            }
        }

        void drawAll() {
            ClipMeasurer drawer = measurers.get();
            for (Clip clip = waiting.poll(); clip != null; clip = waiting.poll()) {
                tell(clip, "drawing");
                String trouble = draw(drawer, clip);
                if (!trouble.isEmpty()) {
                    made.remove(clip.name());
                    synchronized (listener) {
                        listener.trouble(clip.fileName() + ": " + trouble);
                    }
                }
            }
        }
    }

    /**
     * Draws what changed and stores the results.
     *
     * @param drawers make measurers that draw, one for each lane; empty when no pictures are wanted
     */
    public void keep(Optional<Supplier<ClipMeasurer>> drawers, Listener listener) throws IOException {
        if (drawers.isPresent()) {
            List<Clip> drawn = list.clips().stream().filter(this::needsPicture).toList();
            Work work = new Work(drawn, drawers.get(), listener);
            new Lanes(Math.max(1, Math.min(lanes, drawn.size()))).runAll(work::drawAll);
        }
        for (Clip clip : changed) {
            StoredResult result = found.get(clip.name());
            String fingerprint = made.get(clip.name());
            if (result != null && fingerprint != null) {
                results.write(clip, fingerprint, result);
            }
        }
    }

    private boolean needsPicture(Clip clip) {
        StoredResult now = found.get(clip.name());
        if (now == null || now.result().isEmpty() || clip.view() != Camera.View.SIDE) {
            return false;
        }
        return !ClipPictures.arePresent(clip, now, out) || (changed.contains(clip) && !isSame(now, results.last(clip)));
    }

    /** Apart from the outcome, which follows, and the time it took. */
    private static boolean isSame(StoredResult now, Optional<StoredResult> before) {
        return before.flatMap(StoredResult::result)
                .map(r -> plain(r).equals(plain(now.result().orElseThrow())))
                .orElse(false);
    }

    private static ClipResult plain(ClipResult result) {
        return result.with(Outcome.MEASURED, null);
    }

    private String draw(ClipMeasurer drawer, Clip clip) {
        if (!Files.exists(clip.file())) {
            return "its pictures could not be made anew, for the clip is not at " + clip.file()
                    + " any more; they show what was before";
        }
        try {
            drawer.measure(clip, (stage, share) -> {});
            return "";
        } catch (ClipNotMeasuredException e) {
            return "its pictures could not be made anew (" + e.stage() + ": " + e.getMessage()
                    + "); they show what was before";
        }
    }
}
