package org.boardtopit.clips;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.boardtopit.clips.ListWarning.Kind;

/**
 * The clips of a run, joined with the sheets.
 *
 * @param clips in the order of the folder
 * @param skipped files of the folder that are no clips
 * @param warnings rows and clips that do not belong together, and what is odd about the rows
 * @param gone clips, as rows of the attempts sheet name them, that are not in the folder and must not be shown
 */
public record ClipList(List<Clip> clips, List<SkippedFile> skipped, List<ListWarning> warnings, List<String> gone) {
    /** Three attempts and three more for the best eight (rules of the event); beyond that it is a jump-off or a slip. */
    private static final int USUAL_ATTEMPTS = 6;

    public ClipList {
        clips = List.copyOf(clips);
        skipped = List.copyOf(skipped);
        warnings = List.copyOf(warnings);
        gone = List.copyOf(gone);
    }

    /** With nothing odd about it. */
    public ClipList(List<Clip> clips, List<SkippedFile> skipped) {
        this(clips, skipped, List.of(), List.of());
    }

    /**
     * Finds the row, the camera and the athlete of every clip.
     *
     * <p>A row names its clip by the file name; where none fits to the letter, without regard to capitals, and last
     * without the ending if only one clip fits then. An InputException tells of a camera that the meet sheet has not.
     */
    public static ClipList join(ClipFolder folder, MeetSheet meet) throws InputException {
        Joining joining = new Joining(meet);
        List<AttemptEntry> entries = meet.attempts().map(AttemptSheet::entries).orElse(List.of());
        Map<Path, AttemptEntry> entryOfClip = joining.match(folder.clips(), entries);
        Set<String> doubleStems = doubleStems(folder.clips());
        List<Clip> clips = new ArrayList<>();
        for (Path file : folder.clips()) {
            String stem = ClipFolder.stem(file);
            boolean isDouble = doubleStems.contains(stem.toLowerCase(Locale.ROOT));
            String name = isDouble ? file.getFileName().toString() : stem;
            clips.add(joining.clip(file, name, Optional.ofNullable(entryOfClip.get(file))));
        }
        refuseSameNames(clips);
        joining.warnOfOddRows(entries);
        AttemptViews.of(clips).warnings().forEach(text -> joining.warn(Kind.VIEWS, text));
        return new ClipList(clips, folder.skipped(), joining.warnings, joining.gone);
    }

    /** The warnings as lines for people. */
    public List<String> warningLines() {
        return warnings.stream().map(ListWarning::text).toList();
    }

    /** Which of the clips show the same attempt from other views. */
    public AttemptViews views() {
        return AttemptViews.of(clips);
    }

    private static Set<String> doubleStems(List<Path> files) {
        Map<String, Long> counts = files.stream()
                .collect(Collectors.groupingBy(
                        f -> ClipFolder.stem(f).toLowerCase(Locale.ROOT), TreeMap::new, Collectors.counting()));
        counts.values().removeIf(count -> count == 1);
        return counts.keySet();
    }

    /** a.mp4 and a.mov keep their endings; a third clip called a.mov.mp4 would then get the name of the second. */
    private static void refuseSameNames(List<Clip> clips) throws InputException {
        Set<String> names = new HashSet<>();
        for (Clip clip : clips) {
            if (!names.add(clip.name().toLowerCase(Locale.ROOT))) {
                throw new InputException(
                        clip.file(), "another clip's overlay would have the same name; rename one of them");
            }
        }
    }

    private static final class Joining {
        private final MeetSheet meet;
        private final ConsentCheck consents;
        private final List<ListWarning> warnings = new ArrayList<>();
        private final List<String> gone = new ArrayList<>();

        private Joining(MeetSheet meet) {
            this.meet = meet;
            this.consents = new ConsentCheck(
                    meet.safeguards().consent(),
                    meet.attempts().map(AttemptSheet::entries).orElse(List.of()));
        }

        private Map<Path, AttemptEntry> match(List<Path> files, List<AttemptEntry> entries) {
            Map<Path, AttemptEntry> found = new HashMap<>();
            for (AttemptEntry entry : entries) {
                Optional<Path> file = fileOf(entry.clip(), files);
                if (file.isEmpty()) {
                    warnOfNoClip(entry, files);
                } else if (found.putIfAbsent(file.get(), entry) != null) {
                    warn(entry, "the clip " + InputException.quoted(entry.clip()) + " already has a row");
                }
            }
            if (meet.attempts().isPresent()) {
                files.stream()
                        .filter(file -> !found.containsKey(file))
                        .forEach(file -> warn(
                                Kind.CLIP_WITHOUT_ROW,
                                file + ": the attempts sheet has no row for this clip; it is measured all the same"));
            }
            return found;
        }

        /** Of a refused clip that was deleted nothing is missing, unless its name in the row is a slip. */
        private void warnOfNoClip(AttemptEntry entry, List<Path> files) {
            String near = nearFile(entry, files);
            String there = place(entry) + "there is no clip " + InputException.quoted(entry.clip()) + near;
            Optional<String> refused = consents.reason(Optional.of(entry));
            if (refused.isEmpty()) {
                warn(Kind.ROW_WITHOUT_CLIP, there);
                return;
            }
            gone.add(entry.clip());
            warn(
                    near.isEmpty() ? Kind.REFUSED_CLIP_GONE : Kind.ROW_WITHOUT_CLIP,
                    there + "; " + refused.get() + ", so what an earlier run left of it is removed");
        }

        private static Optional<Path> fileOf(String clip, List<Path> files) {
            for (Path file : files) {
                if (file.getFileName().toString().equals(clip)) {
                    return Optional.of(file);
                }
            }
            for (Path file : files) {
                if (file.getFileName().toString().equalsIgnoreCase(clip)) {
                    return Optional.of(file);
                }
            }
            List<Path> sameStem = files.stream()
                    .filter(file -> ClipFolder.stem(file).equalsIgnoreCase(clip))
                    .toList();
            return sameStem.size() == 1 ? Optional.of(sameStem.get(0)) : Optional.empty();
        }

        private static String nearFile(AttemptEntry entry, List<Path> files) {
            return NearMiss.hint(
                    entry.clip(),
                    files.stream().map(file -> file.getFileName().toString()).toList());
        }

        private Clip clip(Path file, String name, Optional<AttemptEntry> entry) throws InputException {
            return new Clip(file, name, entry, cameraOf(file, entry), athleteOf(entry), consents.reason(entry));
        }

        /** A clip that names no camera was filmed by the only one there is; where there are several, by none known. */
        private Optional<Camera> cameraOf(Path file, Optional<AttemptEntry> entry) throws InputException {
            String wanted = entry.map(AttemptEntry::camera).orElse("");
            if (!wanted.isEmpty()) {
                return Optional.of(namedCamera(entry.get(), wanted));
            }
            if (meet.cameras().size() > 1) {
                warn(
                        Kind.CLIP_WITHOUT_CAMERA,
                        file + ": the attempts sheet names no camera for this clip, so its marks are not used");
            }
            return meet.cameras().size() == 1 ? Optional.of(meet.cameras().get(0)) : Optional.empty();
        }

        private Camera namedCamera(AttemptEntry entry, String wanted) throws InputException {
            Optional<Camera> camera = meet.camera(wanted);
            if (camera.isPresent()) {
                return camera.get();
            }
            List<String> names = meet.cameras().stream().map(Camera::name).toList();
            throw new InputException(
                    meet.attempts().orElseThrow().file(),
                    entry.line(),
                    "camera",
                    "the meet sheet has no camera " + InputException.quoted(wanted) + NearMiss.hint(wanted, names));
        }

        private Optional<Athlete> athleteOf(Optional<AttemptEntry> entry) {
            if (entry.isEmpty()) {
                return Optional.empty();
            }
            String bib = entry.get().bib();
            String name = entry.get().athlete();
            Optional<Athlete> athlete = meet.athletes().stream()
                    .filter(a -> bib.isEmpty()
                            ? !name.isEmpty() && a.name().equals(name)
                            : a.bib().equals(bib))
                    .findFirst();
            warnOfOtherName(entry.get(), athlete);
            return athlete;
        }

        private void warnOfOtherName(AttemptEntry entry, Optional<Athlete> athlete) {
            String name = entry.athlete();
            boolean known = athlete.isPresent() && !athlete.get().name().isEmpty() && !name.isEmpty();
            if (known && !athlete.get().name().equals(name)) {
                warn(
                        entry,
                        "bib " + entry.bib() + " is "
                                + InputException.quoted(athlete.get().name()) + " in the meet sheet and "
                                + InputException.quoted(name) + " here");
            }
        }

        private void warnOfOddRows(List<AttemptEntry> entries) {
            Map<List<String>, Integer> lines = new HashMap<>();
            for (AttemptEntry entry : entries) {
                warnOfOddRow(entry);
                if (entry.bib().isEmpty() || entry.attempt().isEmpty()) {
                    continue;
                }
                String attempt = Integer.toString(entry.attempt().getAsInt());
                Integer earlier =
                        lines.putIfAbsent(List.of(entry.event(), entry.bib(), attempt, entry.camera()), entry.line());
                if (earlier != null) {
                    warn(entry, "attempt " + attempt + " of bib " + entry.bib() + " is also on line " + earlier);
                }
            }
        }

        private void warnOfOddRow(AttemptEntry entry) {
            boolean valid = entry.result().map(r -> r == AttemptResult.VALID).orElse(true);
            if (!valid && !Double.isNaN(entry.officialM())) {
                warn(entry, "an official distance is given for an attempt that is not valid");
            }
            if (entry.attempt().isPresent() && entry.attempt().getAsInt() > USUAL_ATTEMPTS) {
                warn(entry, "attempt " + entry.attempt().getAsInt() + " is more than the usual " + USUAL_ATTEMPTS);
            }
        }

        private void warn(AttemptEntry entry, String text) {
            warn(Kind.ODD_ROW, place(entry) + text);
        }

        private void warn(Kind kind, String text) {
            warnings.add(new ListWarning(kind, text));
        }

        private String place(AttemptEntry entry) {
            return meet.attempts().map(sheet -> sheet.file().toString()).orElse("") + ", line " + entry.line() + ": ";
        }
    }
}
