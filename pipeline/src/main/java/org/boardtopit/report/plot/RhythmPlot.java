package org.boardtopit.report.plot;

import java.util.ArrayList;
import java.util.List;

/**
 * Supports and flights in the order of time, a line under another, all from the same instant: a support is a block on the ground, a flight
 * an arc whose height goes with the square of its time, as that of a thrown body does.
 */
public final class RhythmPlot {
    private static final int WIDTH = 340;
    private static final int LEFT = 40;
    private static final int RIGHT = 334;
    private static final int LINE_PX = 64;
    private static final int TOP_PX = 14;
    private static final int AXIS_PX = 22;
    private static final double RISE_PX = 22;

    private final String label;
    private final List<Line> lines = new ArrayList<>();

    /**
     * One support and the flight after it.
     *
     * @param startS of the support, from the common instant
     * @param supportS its time, NaN when not known
     * @param endS of the flight
     * @param supportText the time in words, like flightText
     * @param style class of the page's style sheet
     */
    public record Beat(
            double startS, double supportS, double endS, String supportText, String flightText, String style) {}

    /** The beats of one attempt. */
    public record Line(String name, List<Beat> beats) {
        public Line {
            beats = List.copyOf(beats);
        }
    }

    public RhythmPlot(String label) {
        this.label = label;
    }

    /** Adds a line under the others; one without beats is left out. */
    public RhythmPlot add(Line line) {
        if (!line.beats().isEmpty()) {
            lines.add(line);
        }
        return this;
    }

    public boolean isEmpty() {
        return lines.isEmpty();
    }

    /** The drawing. */
    public String markup(IntervalPlot.TickText tick) {
        double longest = 0;
        double flight = 0;
        for (Line line : lines) {
            for (Beat beat : line.beats()) {
                longest = Math.max(longest, beat.endS());
                flight = Math.max(flight, flightS(beat));
            }
        }
        int bottom = TOP_PX + lines.size() * LINE_PX;
        Svg svg = new Svg(WIDTH, bottom + AXIS_PX, label);
        Scale scale = new Scale(0, longest, LEFT, RIGHT);
        for (double value : scale.ticks()) {
            svg.line(scale.at(value), 0, scale.at(value), bottom + 4, "pg");
            svg.text(scale.at(value), bottom + 17, tick.of(value, scale.decimals()), "pa");
        }
        double ground = TOP_PX + 36;
        for (Line line : lines) {
            svg.text(LEFT - 12, ground + 3, line.name(), "pn");
            for (Beat beat : line.beats()) {
                draw(svg, scale, beat, ground, flight);
            }
            svg.line(LEFT - 4, ground, RIGHT, ground, "p0");
            ground += LINE_PX;
        }
        return svg.markup();
    }

    private static double flightS(Beat beat) {
        return beat.endS() - beat.startS() - (Double.isNaN(beat.supportS()) ? 0 : beat.supportS());
    }

    private static void draw(Svg svg, Scale scale, Beat beat, double ground, double longestFlight) {
        double start = scale.at(beat.startS());
        double end = scale.at(beat.endS());
        double off = Double.isNaN(beat.supportS()) ? start : scale.at(beat.startS() + beat.supportS());
        double share = flightS(beat) / longestFlight;
        double rise = RISE_PX * share * share;
        svg.arc(off, end, ground, rise, "pf " + beat.style());
        svg.rect(start, ground - 4, off - start, 8, beat.style());
        svg.text((off + end) / 2, ground - rise - 4, beat.flightText(), "pm");
        svg.text(start, ground + 17, beat.supportText(), "ps");
    }
}
