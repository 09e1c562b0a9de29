package org.boardtopit.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.boardtopit.check.CheckedClip;
import org.boardtopit.clips.AttemptEntry.Consent;
import org.boardtopit.clips.Camera;
import org.boardtopit.video.ClipFacts;
import org.boardtopit.video.ClipFacts.Tone;

/** The clips of a check in columns; what is not known is a dash. */
final class CheckTable {
    private static final int LONGEST_NAME = 40;
    private static final String UNKNOWN = "-";
    private static final List<String> HEADER = List.of(
            "clip",
            "frames",
            "fps",
            "size",
            "turned",
            "coded",
            "edge px",
            "shutter",
            "athlete px",
            "picture",
            "consent");

    private final List<CheckedClip> clips;

    CheckTable(List<CheckedClip> clips) {
        this.clips = clips;
    }

    /** A header and a line for each clip. */
    List<String> lines() {
        List<List<String>> rows = new ArrayList<>();
        rows.add(HEADER);
        clips.forEach(clip -> rows.add(row(clip)));
        int[] widths = new int[HEADER.size()];
        for (List<String> row : rows) {
            for (int i = 0; i < widths.length; i++) {
                widths[i] = Math.max(
                        widths[i], row.get(i).codePointCount(0, row.get(i).length()));
            }
        }
        return rows.stream().map(row -> line(row, widths)).toList();
    }

    private static String line(List<String> row, int[] widths) {
        StringBuilder line = new StringBuilder();
        for (int i = 0; i < widths.length; i++) {
            String cell = row.get(i);
            line.append(cell).append(" ".repeat(widths[i] - cell.codePointCount(0, cell.length()) + 2));
        }
        return line.toString().stripTrailing();
    }

    private static List<String> row(CheckedClip checked) {
        Optional<ClipFacts> facts = checked.facts();
        return List.of(
                shortened(checked.clip().fileName()),
                facts.map(CheckTable::frames).orElse(UNKNOWN),
                facts.map(f -> rate(checked.fps(), f)).orElse(UNKNOWN),
                facts.map(f -> f.info().widthPx() + " x " + f.info().heightPx()).orElse(UNKNOWN),
                facts.map(f -> Integer.toString(f.info().rotationDeg())).orElse(UNKNOWN),
                facts.map(CheckTable::coded).orElse(UNKNOWN),
                number("%.0f", checked.edgePx()),
                shutter(checked.shutterS()),
                number("%.0f", checked.athletePx()),
                picture(checked),
                consent(checked.consent()));
    }

    private static String shortened(String name) {
        int points = name.codePointCount(0, name.length());
        return points <= LONGEST_NAME ? name : name.substring(0, name.offsetByCodePoints(0, LONGEST_NAME - 3)) + "...";
    }

    private static String frames(ClipFacts facts) {
        return facts.frames() < 0 ? UNKNOWN : (facts.allCounted() ? "" : "~") + facts.frames();
    }

    /** Of a single picture there is none. */
    private static String rate(double fps, ClipFacts facts) {
        return Double.isFinite(fps)
                ? CheckedClip.spokenRate(fps) + (facts.times().isVariable() ? " varies" : "")
                : UNKNOWN;
    }

    private static String coded(ClipFacts facts) {
        return facts.info().codec()
                + (facts.bitDepth() > 8 ? " " + facts.bitDepth() + " bit" : "")
                + (facts.tone() == Tone.STANDARD ? "" : " " + facts.tone())
                + (facts.info().interlaced() ? " fields" : "");
    }

    /** Shorter than 1/1000 s cannot be told from none. */
    private static String shutter(double seconds) {
        if (Double.isNaN(seconds)) {
            return UNKNOWN;
        }
        return seconds < 1e-3 ? "short" : String.format(Locale.ROOT, "1/%.0f", 1 / seconds);
    }

    private static String picture(CheckedClip checked) {
        String camera = checked.clip().camera().map(Camera::name).orElse(UNKNOWN);
        return switch (checked.picture()) {
            case MATCHES -> camera;
            case PARTLY -> camera + ", in part";
            case NO_MATCH -> "not " + camera;
            case NO_PICTURE -> UNKNOWN;
        };
    }

    private static String consent(Consent consent) {
        return switch (consent) {
            case YES -> "yes";
            case NO -> "no";
            case NOT_SAID -> UNKNOWN;
        };
    }

    private static String number(String format, double value) {
        return Double.isNaN(value) ? UNKNOWN : String.format(Locale.ROOT, format, value);
    }
}
