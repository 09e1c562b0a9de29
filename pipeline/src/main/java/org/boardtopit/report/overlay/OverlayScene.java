package org.boardtopit.report.overlay;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.boardtopit.video.VideoWriter.Chapter;
import org.boardtopit.wording.Language;

/**
 * Everything that is drawn over one clip.
 *
 * @param titleLines athlete, attempt and the like, for the top left; may be empty
 * @param qualityLines quality and warnings, for the top right; may be empty
 * @param durationUs length of the time axis, which starts at 0
 * @param leftToRight true when the athlete runs to the right in the picture
 * @param phases in time order, not overlapping
 * @param contacts in time order
 * @param touchdowns in time order
 * @param frames by rising frame index; frames that are missing get no skeleton and no runway marks
 * @param closeView whether an enlarged view of the athlete is shown in a top corner
 * @param language of what else is written: legend, clock, angles
 */
public record OverlayScene(
        List<String> titleLines,
        List<String> qualityLines,
        long durationUs,
        boolean leftToRight,
        List<PhaseSpan> phases,
        List<ContactMark> contacts,
        List<TouchdownFigure> touchdowns,
        List<FramePose> frames,
        CloseView closeView,
        Language language) {

    /** AUTO shows it when the athlete is small in the picture. */
    public enum CloseView {
        AUTO,
        ON,
        OFF
    }

    public OverlayScene {
        titleLines = List.copyOf(titleLines);
        qualityLines = List.copyOf(qualityLines);
        phases = List.copyOf(phases);
        contacts = List.copyOf(contacts);
        touchdowns = List.copyOf(touchdowns);
        frames = List.copyOf(frames);
        Objects.requireNonNull(closeView, "closeView");
        Objects.requireNonNull(language, "language");
        if (durationUs <= 0) {
            throw new IllegalArgumentException("durationUs must be positive, was " + durationUs);
        }
        for (int i = 1; i < phases.size(); i++) {
            requireOrder(
                    "phases must not overlap",
                    phases.get(i - 1).endUs(),
                    phases.get(i).startUs());
        }
        for (int i = 1; i < contacts.size(); i++) {
            requireOrder(
                    "contacts must be in time order",
                    contacts.get(i - 1).timeUs(),
                    contacts.get(i).timeUs());
        }
        for (int i = 1; i < touchdowns.size(); i++) {
            requireOrder(
                    "touchdowns must be in time order",
                    touchdowns.get(i - 1).timeUs(),
                    touchdowns.get(i).timeUs());
        }
        for (int i = 1; i < frames.size(); i++) {
            requireOrder(
                    "frames must have rising indexes",
                    frames.get(i - 1).frameIndex() + 1L,
                    frames.get(i).frameIndex());
        }
    }

    private static void requireOrder(String rule, long earlier, long later) {
        if (later < earlier) {
            throw new IllegalArgumentException(rule + ", found " + later + " after " + earlier);
        }
    }

    /** What is known of a frame, by its index. */
    public Optional<FramePose> frame(int frameIndex) {
        int low = 0;
        int high = frames.size() - 1;
        while (low <= high) {
            int middle = (low + high) >>> 1;
            int found = frames.get(middle).frameIndex();
            if (found == frameIndex) {
                return Optional.of(frames.get(middle));
            }
            if (found < frameIndex) {
                low = middle + 1;
            } else {
                high = middle - 1;
            }
        }
        return Optional.empty();
    }

    public Optional<PhaseSpan> phaseAt(long timeUs) {
        return phases.stream().filter(p -> p.contains(timeUs)).findFirst();
    }

    /** The figure to show: the latest whose touchdown has come, while its hold lasts. */
    public Optional<TouchdownFigure> touchdownAt(long timeUs) {
        TouchdownFigure latest = null;
        for (TouchdownFigure figure : touchdowns) {
            if (figure.startUs() <= timeUs) {
                latest = figure;
            }
        }
        return Optional.ofNullable(latest).filter(figure -> figure.strengthAt(timeUs) > 0);
    }

    /** The positions to jump to: the first touchdown of each contact that has a name. */
    public List<Chapter> chapters() {
        List<Chapter> chapters = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        for (ContactMark mark : contacts) {
            if (mark.isTouchdown() && !mark.isSmall() && seen.add(mark.contact())) {
                String text = mark.contact();
                String title = Character.toUpperCase(text.charAt(0)) + text.substring(1);
                chapters.add(new Chapter(title, Math.max(0, mark.timeUs())));
            }
        }
        return chapters;
    }
}
