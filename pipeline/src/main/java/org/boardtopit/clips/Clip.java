package org.boardtopit.clips;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * A clip with what the competition says of it.
 *
 * @param file as the user named it
 * @param name names its overlay and stills; no other clip of the run has it, also where capitals do not count. The
 *     file name without its ending, or with it where two clips differ in the ending only
 * @param entry its row of the attempts sheet
 * @param camera the camera position it was filmed from
 * @param athlete the athlete of the entry, where the meet sheet has more to say
 * @param withheld why the clip must not be opened and nothing of it may be shown; empty when it may
 * @param corrections what an analyst put right, in the order of the file
 */
public record Clip(
        Path file,
        String name,
        Optional<AttemptEntry> entry,
        Optional<Camera> camera,
        Optional<Athlete> athlete,
        Optional<String> withheld,
        List<Correction> corrections) {

    public Clip {
        corrections = List.copyOf(corrections);
    }

    /** Without corrections. */
    public Clip(
            Path file,
            String name,
            Optional<AttemptEntry> entry,
            Optional<Camera> camera,
            Optional<Athlete> athlete,
            Optional<String> withheld) {
        this(file, name, entry, camera, athlete, withheld, List.of());
    }

    /** Without corrections; withheld when its row says that the athlete did not agree. */
    public Clip(
            Path file, String name, Optional<AttemptEntry> entry, Optional<Camera> camera, Optional<Athlete> athlete) {
        this(file, name, entry, camera, athlete, ConsentCheck.refusal(entry));
    }

    /** The same with other corrections. */
    public Clip with(List<Correction> others) {
        return new Clip(file, name, entry, camera, athlete, withheld, others);
    }

    /** From where it was filmed; from the side when no camera is known. */
    public Camera.View view() {
        return camera.map(Camera::view).orElse(Camera.View.SIDE);
    }

    /** False for a clip that must not be opened: its athlete did not agree. */
    public boolean isAgreed() {
        return withheld.isEmpty();
    }

    /** What tables call the clip: the name of the file with its ending. */
    public String fileName() {
        return file.getFileName().toString();
    }
}
