package org.boardtopit.clips;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Which clips of a competition show one attempt: those of the same event, bib and attempt number. One clip from the side is
 * the attempt's own; at most one from in front and one from behind are joined to it.
 *
 * <p>A clip without bib or attempt number, or whose athlete did not agree, is joined to none. Where two clips of an attempt
 * claim the same view, none of that attempt is joined, and a warning says so.
 */
public final class AttemptViews {
    /** No clips, so none joined. */
    public static final AttemptViews NONE = of(List.of());

    private final Map<String, List<Clip>> othersBySide = new HashMap<>();
    private final Map<String, Clip> sideByOther = new HashMap<>();
    private final List<String> warnings = new ArrayList<>();

    private AttemptViews() {}

    /** Joins the clips of a run. */
    public static AttemptViews of(List<Clip> clips) {
        Map<List<String>, List<Clip>> attempts = new LinkedHashMap<>();
        for (Clip clip : clips) {
            key(clip)
                    .ifPresent(k -> attempts.computeIfAbsent(k, unused -> new ArrayList<>())
                            .add(clip));
        }
        AttemptViews views = new AttemptViews();
        attempts.values().forEach(views::join);
        return views;
    }

    private static Optional<List<String>> key(Clip clip) {
        return clip.entry()
                .filter(e -> !e.bib().isEmpty()
                        && e.attempt().isPresent()
                        && clip.withheld().isEmpty())
                .map(e ->
                        List.of(e.event(), e.bib(), Integer.toString(e.attempt().getAsInt())));
    }

    private void join(List<Clip> attempt) {
        List<Clip> others = new ArrayList<>();
        Map<Camera.View, List<Clip>> byView = new LinkedHashMap<>();
        for (Clip clip : attempt) {
            byView.computeIfAbsent(clip.view(), unused -> new ArrayList<>()).add(clip);
            if (clip.view() != Camera.View.SIDE) {
                others.add(clip);
            }
        }
        List<Clip> sides = byView.getOrDefault(Camera.View.SIDE, List.of());
        if (others.isEmpty() || sides.isEmpty()) {
            return;
        }
        Optional<List<Clip>> twice =
                byView.values().stream().filter(c -> c.size() > 1).findFirst();
        if (twice.isPresent()) {
            warnings.add(ambiguous(twice.get()));
            return;
        }
        othersBySide.put(sides.get(0).name(), List.copyOf(others));
        others.forEach(other -> sideByOther.put(other.name(), sides.get(0)));
    }

    private static String ambiguous(List<Clip> sameView) {
        Clip first = sameView.get(0);
        AttemptEntry entry = first.entry().orElseThrow();
        return "attempt " + entry.attempt().getAsInt() + " of bib " + entry.bib() + ": " + first.fileName() + " and "
                + sameView.get(1).fileName() + " are both "
                + switch (first.view()) {
                    case SIDE -> "from the side";
                    case FRONT -> "from in front";
                    case REAR -> "from behind";
                }
                + ", so it is not clear which to join with the other views; correct the attempts sheet";
    }

    /** The clips from in front and from behind that are joined to one from the side. */
    public List<Clip> joinedTo(Clip side) {
        return othersBySide.getOrDefault(side.name(), List.of());
    }

    /** The clip from the side to which one from in front or from behind is joined. */
    public Optional<Clip> sideOf(Clip other) {
        return Optional.ofNullable(sideByOther.get(other.name()));
    }

    /** One line for each attempt that could not be joined. */
    public List<String> warnings() {
        return List.copyOf(warnings);
    }
}
