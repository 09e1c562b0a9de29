package org.boardtopit.report;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.observations.Observation;
import org.boardtopit.observations.Observation.Measured;
import org.boardtopit.phases.PhaseName;
import org.boardtopit.report.tables.ObservationRow;

/** Puts the observations of one attempt into the rows of observations.csv. */
public final class ObservationTable {
    private final String clip;
    private final MotionTrack motion;

    /**
     * For one clip.
     *
     * @param motion tells the frame of an instant
     */
    public ObservationTable(String clip, MotionTrack motion) {
        this.clip = clip;
        this.motion = motion;
    }

    /** In the order of the observations. */
    public List<ObservationRow> rows(List<Observation> observations) {
        return observations.stream().map(this::row).toList();
    }

    private ObservationRow row(Observation o) {
        Optional<Measured> m = o.evidence();
        return new ObservationRow(
                clip,
                phase(o.phase()),
                known(m, Measured::atS),
                m.map(e -> motion.nearestFrame(e.atS())).orElse(null),
                o.topic(),
                o.finding(),
                known(m, Measured::value),
                m.map(e -> e.unit().label()).orElse(""),
                known(m, e -> e.guide().low()),
                known(m, e -> e.guide().high()),
                o.basis(),
                o.confidence(),
                o.text(),
                o.practice(),
                m.map(e -> e.unit().decimals()).orElse(0),
                o.kind(),
                o.rank(),
                o.causedBy(),
                o.level(),
                m.map(Measured::part).orElse(""),
                m.map(Measured::measure).orElse(""),
                known(m, e -> e.interval().low()),
                known(m, e -> e.interval().high()),
                Double.isFinite(o.severity()) ? o.severity() : null,
                o.heading());
    }

    private static PhaseName phase(String word) {
        return Arrays.stream(PhaseName.values())
                .filter(p -> p.label().equals(word))
                .findFirst()
                .orElse(null);
    }

    private static Double known(Optional<Measured> measured, Function<Measured, Double> number) {
        return measured.map(number).filter(Double::isFinite).orElse(null);
    }
}
