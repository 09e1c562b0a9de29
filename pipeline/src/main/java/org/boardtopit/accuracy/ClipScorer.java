package org.boardtopit.accuracy;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.InputException;
import org.boardtopit.fit.Assumptions;
import org.boardtopit.measures.AttemptMeasures;
import org.boardtopit.measures.Quality;
import org.boardtopit.measures.Reading;
import org.boardtopit.measures.ScaleSource;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.run.AttemptAnalyser;
import org.boardtopit.run.AttemptAnalysis;

/** Holds one clip against its truth: {@code <clip>.truth.json} and {@code <clip>.frames.csv} beside it. */
public final class ClipScorer {
    private final Clip clip;
    private final AttemptTruth truth;

    private ClipScorer(Clip clip, AttemptTruth truth) {
        this.clip = clip;
        this.truth = truth;
    }

    /** True when the clip has a truth beside it. */
    public static boolean knowsTruthOf(Clip clip) {
        return AttemptTruthReader.isThere(clip);
    }

    /** Reads the truth; an InputException says what is wrong in it and where. */
    public static ClipScorer of(Clip clip) throws InputException {
        return new ClipScorer(clip, AttemptTruthReader.read(clip));
    }

    /** Measures the clip from its landmarks, with what is assumed of a jumper, and compares. */
    public ClipScore score(ClipLandmarks landmarks, Assumptions assumptions) throws InputException {
        if (landmarks.frameCount() != truth.frames().size()) {
            throw new InputException(
                    clip.file(),
                    "the clip has " + landmarks.frameCount() + " frames, its truth "
                            + truth.frames().size());
        }
        AttemptAnalysis analysis = new AttemptAnalyser(assumptions).analyse(clip, landmarks);
        AttemptErrors attempt = new AttemptErrors(truth, analysis.measures());
        PointErrors points = new PointErrors(truth, landmarks.poses(), analysis.view(), analysis.fitted());
        return new ClipScore(
                clip.name(),
                Optional.empty(),
                analysis.measures().quality().label(),
                attempt.contacts(),
                attempt.list(),
                points.list(),
                points.exchangesBefore(),
                points.exchangesAfter(),
                Optional.of(GroundErrors.of(truth, analysis.view())));
    }

    /** The score of a clip that could not be measured: all is missing. */
    public ClipScore notMeasured(String reason) {
        double unknown = Double.NaN;
        AttemptMeasures nothing = new AttemptMeasures(
                Optional.empty(),
                unknown,
                Reading.UNKNOWN,
                ScaleSource.MARKS,
                unknown,
                unknown,
                Quality.POOR,
                List.of(),
                List.of(),
                List.of(),
                Map.of());
        AttemptErrors attempt = new AttemptErrors(truth, nothing);
        return new ClipScore(
                clip.name(),
                Optional.of(reason),
                "",
                attempt.contacts(),
                attempt.list(),
                List.of(),
                LegExchanges.NONE,
                LegExchanges.NONE,
                Optional.empty());
    }
}
