package org.boardtopit.report.tables;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.boardtopit.clips.Correction;

/**
 * What the numbers of one measured clip rest on: an object of the list of clips in run.json. NaN where something is not
 * known or does not apply.
 *
 * @param clip name of the file
 * @param corrections what an analyst put right, in the order of the file
 */
public record ClipRecord(
        String clip, Registration registration, Scale scale, Measuring measuring, List<Correction> corrections) {

    /** Without corrections. */
    public ClipRecord(String clip, Registration registration, Scale scale, Measuring measuring) {
        this(clip, registration, scale, measuring, List.of());
    }

    /**
     * How the frames were put into the fixed picture.
     *
     * @param camera what it did: still, turning or free
     * @param referenceMatched true when the fixed picture is the camera's reference picture
     * @param referencePoints points of that picture that were found in the clip, in the view that has most
     * @param residualPx median distance of the background points that agree, pixels of the frame
     * @param inliers median number of these points
     * @param driftPx largest disagreement with the reference picture along the pan, its pixels
     * @param focalPx focal length of the fixed picture, as the turns of the clip tell it
     */
    public record Registration(
            String camera,
            boolean referenceMatched,
            double referencePoints,
            double residualPx,
            double inliers,
            double driftPx,
            double focalPx) {
        public Registration {
            Objects.requireNonNull(camera, "camera");
        }
    }

    /**
     * How the fixed picture became metres.
     *
     * @param source what the metres rest on, as in attempts.csv
     * @param camera where it was found: marks, run or flat (no camera, the picture is the plane of the run)
     * @param focalPx of this camera, in the fixed picture
     * @param heightM of this camera above the ground; NaN also when the metres rest on nothing
     * @param distanceM of this camera from the middle of the runway, to either side; likewise
     * @param marksResidualPx root mean square distance of the marks from where this camera sees them
     * @param misfit of the run and this camera, 1 being as expected, when it was found from the run
     */
    public record Scale(
            String source,
            String camera,
            double focalPx,
            double heightM,
            double distanceM,
            double marksResidualPx,
            double misfit) {
        public Scale {
            Objects.requireNonNull(source, "source");
            Objects.requireNonNull(camera, "camera");
        }
    }

    /**
     * How the athlete was measured.
     *
     * @param looksPerFrame how often the network looked at every frame
     * @param fittedFrames how many frames the whole-clip fit reaches
     */
    public record Measuring(int looksPerFrame, int fittedFrames) {
        public Measuring {
            if (looksPerFrame < 1 || fittedFrames < 0) {
                throw new IllegalArgumentException("looksPerFrame must be 1 or more and fittedFrames not negative, was "
                        + looksPerFrame + ", " + fittedFrames);
            }
        }
    }

    public ClipRecord {
        Objects.requireNonNull(clip, "clip");
        corrections = List.copyOf(corrections);
    }

    /** As run.json has it; docs/measures.md describes the keys. */
    Map<String, Object> content() {
        Map<String, Object> content = new LinkedHashMap<>();
        content.put("clip", clip);
        content.put("registration", content(registration));
        content.put("scale", content(scale));
        content.put("measuring", content(measuring));
        if (!corrections.isEmpty()) {
            content.put(
                    "corrections", corrections.stream().map(ClipRecord::content).toList());
        }
        return content;
    }

    private static Map<String, Object> content(Correction correction) {
        Map<String, Object> content = new LinkedHashMap<>();
        content.put("contact", correction.contact());
        content.put("field", correction.field().label());
        content.put("value", correction.text());
        content.put("by", correction.by());
        content.put("note", correction.note());
        return content;
    }

    private static Map<String, Object> content(Registration registration) {
        Map<String, Object> content = new LinkedHashMap<>();
        content.put("camera", registration.camera());
        content.put("reference_matched", registration.referenceMatched());
        content.put("reference_points", rounded(registration.referencePoints(), 0));
        content.put("residual_px", rounded(registration.residualPx(), 3));
        content.put("inliers", rounded(registration.inliers(), 1));
        content.put("drift_px", rounded(registration.driftPx(), 2));
        content.put("focal_px", rounded(registration.focalPx(), 1));
        return content;
    }

    private static Map<String, Object> content(Scale scale) {
        Map<String, Object> content = new LinkedHashMap<>();
        content.put("source", scale.source());
        content.put("camera", scale.camera());
        content.put("focal_px", rounded(scale.focalPx(), 1));
        content.put("height_m", rounded(scale.heightM(), 2));
        content.put("distance_m", rounded(scale.distanceM(), 2));
        content.put("marks_residual_px", rounded(scale.marksResidualPx(), 2));
        content.put("misfit", rounded(scale.misfit(), 2));
        return content;
    }

    private static Map<String, Object> content(Measuring measuring) {
        Map<String, Object> content = new LinkedHashMap<>();
        content.put("looks_per_frame", measuring.looksPerFrame());
        content.put("fitted_frames", measuring.fittedFrames());
        return content;
    }

    /** No more digits than mean something. */
    private static double rounded(double value, int decimals) {
        double unit = Math.pow(10, decimals);
        return Double.isFinite(value) ? Math.rint(value * unit) / unit : value;
    }
}
