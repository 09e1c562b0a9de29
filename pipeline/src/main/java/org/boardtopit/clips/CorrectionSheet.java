package org.boardtopit.clips;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * An analyst's corrections of a competition.
 *
 * @param file where they are written
 * @param rows in the order of the file
 */
public record CorrectionSheet(Path file, List<Row> rows) {

    /** A correction and the clip it is about, as the file names it. */
    public record Row(String clip, Correction correction) {}

    public CorrectionSheet {
        rows = List.copyOf(rows);
    }

    /**
     * The list with each clip's corrections.
     *
     * @throws InputException when a row names a clip that the run has not, or corrects a contact of a clip that has none of its
     *     own
     */
    public ClipList joined(ClipList list) throws InputException {
        Map<String, List<Correction>> byClip = new HashMap<>();
        AttemptViews views = list.views();
        for (Row row : rows) {
            Clip clip = find(list.clips(), row.clip()).orElseThrow(() -> unknown(row, list.clips()));
            Optional<Clip> side = views.sideOf(clip);
            if (side.isPresent()
                    && (row.correction().field().needsContact()
                            || row.correction().field() == Correction.Field.ADD)) {
                throw problem(
                        row.correction(),
                        "clip",
                        clip.fileName() + " takes its contacts from "
                                + side.get().fileName() + ": correct them there");
            }
            byClip.computeIfAbsent(clip.name(), unused -> new ArrayList<>()).add(row.correction());
        }
        List<Clip> clips = list.clips().stream()
                .map(clip -> clip.with(byClip.getOrDefault(clip.name(), List.of())))
                .toList();
        return new ClipList(clips, list.skipped(), list.warnings(), list.gone());
    }

    /** By the name of the file, to the letter or else without regard to capitals; or by that name without its ending. */
    private static Optional<Clip> find(List<Clip> clips, String named) {
        return clips.stream()
                .filter(clip -> clip.fileName().equals(named))
                .findFirst()
                .or(() -> clips.stream()
                        .filter(clip -> clip.fileName().equalsIgnoreCase(named)
                                || clip.name().equalsIgnoreCase(named))
                        .findFirst());
    }

    private InputException unknown(Row row, List<Clip> clips) {
        List<String> names = clips.stream().map(Clip::fileName).toList();
        return problem(
                row.correction(),
                "clip",
                "there is no clip " + InputException.quoted(row.clip()) + " in these results"
                        + NearMiss.hint(row.clip(), names));
    }

    /** What is wrong with one of the corrections. */
    public InputException problem(Correction correction, String column, String problem) {
        return new InputException(file, correction.line(), column, problem);
    }
}
