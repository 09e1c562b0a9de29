package org.boardtopit.clips;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.boardtopit.wording.Language;

/**
 * Everything a competition says about its clips.
 *
 * @param file the meet.yaml it was read from; empty for a bare folder
 * @param competition its name; empty when not given
 * @param attempts the sheet with a row per clip
 * @param cameras with different names
 * @param athletes with different bibs
 * @param safeguards how the people in the clips are protected
 * @param observationRules the file of rules for observations; empty for those of the program
 * @param language of everything that is read and not counted
 * @param comparisons which attempts are compared when all clips are measured
 */
public record MeetSheet(
        Optional<Path> file,
        String competition,
        Optional<LocalDate> date,
        Optional<AttemptSheet> attempts,
        List<Camera> cameras,
        List<Athlete> athletes,
        RunSettings settings,
        TableFormat tables,
        Safeguards safeguards,
        Optional<Path> observationRules,
        Language language,
        Set<AutomaticComparison> comparisons) {

    /** For a bare folder of clips. */
    public static final MeetSheet NONE = new MeetSheet(
            Optional.empty(),
            "",
            Optional.empty(),
            Optional.empty(),
            List.of(),
            List.of(),
            RunSettings.DEFAULT,
            TableFormat.DEFAULT,
            Safeguards.DEFAULT,
            Optional.empty(),
            Language.ENGLISH,
            Set.of());

    public MeetSheet {
        cameras = List.copyOf(cameras);
        athletes = List.copyOf(athletes);
        comparisons = Collections.unmodifiableSet(new LinkedHashSet<>(comparisons));
    }

    /** The same with other rows and athletes. */
    MeetSheet with(Optional<AttemptSheet> otherAttempts, List<Athlete> otherAthletes) {
        return new MeetSheet(
                file,
                competition,
                date,
                otherAttempts,
                cameras,
                otherAthletes,
                settings,
                tables,
                safeguards,
                observationRules,
                language,
                comparisons);
    }

    public Optional<Camera> camera(String name) {
        return cameras.stream().filter(camera -> camera.name().equals(name)).findFirst();
    }

    /** The files that make up the sheet, absolute and normalised: none is a clip and none may be written over. */
    public Set<Path> inputFiles() {
        Set<Path> files = new LinkedHashSet<>();
        file.ifPresent(files::add);
        attempts.map(AttemptSheet::file).ifPresent(files::add);
        observationRules.ifPresent(files::add);
        for (Camera camera : cameras) {
            camera.reference().ifPresent(reference -> {
                files.add(reference.picture());
                files.add(reference.marksFile());
            });
        }
        return files.stream().map(f -> f.toAbsolutePath().normalize()).collect(Collectors.toUnmodifiableSet());
    }
}
