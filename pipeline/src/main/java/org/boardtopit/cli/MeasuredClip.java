package org.boardtopit.cli;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.ClipList;
import org.boardtopit.clips.InputException;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.MeetSheetReader;
import org.boardtopit.clips.NearMiss;
import org.boardtopit.models.NetworkStore;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.models.TensorEngine;
import org.boardtopit.pose.Look;
import org.boardtopit.run.KeptClip;
import org.boardtopit.run.RunInputs;

/**
 * A clip that a user names in the results of a run.
 *
 * @param networks those of the run
 */
record MeasuredClip(KeptClip kept, NetworkStore networks) {
    /** Folders of the output whose files are called after clips: a user may name one of those. */
    private static final List<String> FOLDERS = List.of("overlays", "work");

    /**
     * Finds it.
     *
     * @param word the clip's name with or without its ending, or such a name in a folder of results
     * @param out the folder of results for a name without a folder
     * @throws InputException says where it was looked for
     */
    static MeasuredClip find(String word, Optional<Path> out, TensorEngine engine)
            throws InputException, NetworkUnfitException {
        Path path = path(word);
        Path folder = results(path)
                .or(() -> out)
                .orElseThrow(() -> new InputException(
                        path,
                        "in the results of which run? Name their folder with --out, or write FOLDER/"
                                + path.getFileName()));
        RunInputs inputs = RunInputs.of(folder);
        MeetSheet meet = inputs.meet().isEmpty()
                ? MeetSheet.NONE
                : MeetSheetReader.read(inputs.meet().get());
        ClipList list =
                CorrectionFile.of(null, Optional.of(inputs), folder).joined(ClipList.join(inputs.folder(), meet));
        Clip clip = clip(path.getFileName().toString(), list, folder);
        NetworkStore networks = new NetworkStore(engine, inputs.networks());
        KeptClip kept = new KeptClip(
                clip,
                meet,
                folder,
                networks.card(inputs.settings().network()),
                Look.of(inputs.settings().effort()));
        return new MeasuredClip(kept, networks);
    }

    private static Path path(String word) throws InputException {
        try {
            Path path = Path.of(word);
            if (path.getFileName() != null) {
                return path;
            }
        } catch (InvalidPathException e) {
            // Told below.
        }
        throw new InputException(Path.of("."), InputException.quoted(word) + " is not the name of a clip");
    }

    /** The folder of results that a path leads into; empty for a mere name. */
    private static Optional<Path> results(Path path) {
        Path parent = path.getParent();
        if (parent == null) {
            return Optional.empty();
        }
        Path name = parent.getFileName();
        boolean inside = name != null && FOLDERS.contains(name.toString());
        Path outer = inside ? parent.toAbsolutePath().normalize().getParent() : parent;
        return Optional.of(outer);
    }

    private static Clip clip(String word, ClipList list, Path folder) throws InputException {
        Optional<Clip> exact = list.clips().stream()
                .filter(clip -> clip.name().equals(word) || clip.fileName().equals(word))
                .findFirst();
        if (exact.isPresent()) {
            return exact.get();
        }
        String stem = word.replaceFirst("\\.[^.]*$", "");
        List<Clip> near = list.clips().stream()
                .filter(clip ->
                        clip.name().equalsIgnoreCase(word) || clip.name().equalsIgnoreCase(stem))
                .toList();
        if (near.size() == 1) {
            return near.get(0);
        }
        List<String> names = list.clips().stream().map(Clip::name).toList();
        String hint = NearMiss.hint(word, names);
        throw new InputException(
                folder,
                "these results have no clip " + InputException.quoted(word)
                        + (hint.isEmpty() ? "; " + resultsHave(names) : hint));
    }

    private static String resultsHave(List<String> names) {
        int most = 8;
        String some = String.join(", ", names.subList(0, Math.min(most, names.size())));
        return "they have " + some + (names.size() > most ? " and " + (names.size() - most) + " more" : "");
    }

    void requireOtherThan(MeasuredClip other) throws InputException {
        boolean same = Files.exists(kept.clip().file())
                && kept.clip().file().equals(other.kept.clip().file());
        if (same) {
            throw new InputException(kept.clip().file(), "an attempt is not compared with itself; name another for B");
        }
    }
}
