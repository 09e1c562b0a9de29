package org.boardtopit.models;

import java.util.List;
import java.util.Locale;

/**
 * Compares what a network computes on this machine with its stored references, before anything is measured with it.
 *
 * <p>The library that computes networks picks other machine code on other processors, with other numbers of threads and for
 * other batches, and some of that code was measured to give wrong numbers without an error. So the test runs the very workers
 * that the run will use, all at once, each on its own thread, one picture at a time. Every reference is run twice, because
 * the library rewrites a network after its first runs.
 *
 * <p>A network passes when every stored number is within {@value #LARGEST_RELATIVE_DIFFERENCE} of its tensor's largest value,
 * and every stored mode of a mass of {@value #LEAST_MASS} or more is within {@value #LARGEST_POINT_DIFFERENCE_PX} px. Sound
 * processors were measured to differ by 1e-5 to 3e-4 of the largest value; the wrong code by more than 1e-1.
 */
final class NetworkSelfTest {
    static final double LARGEST_RELATIVE_DIFFERENCE = 1e-3;
    static final double LARGEST_POINT_DIFFERENCE_PX = 0.25;
    static final double LARGEST_MASS_DIFFERENCE = 0.02;
    static final double LEAST_MASS = 0.1;

    private static final int ROUNDS = 2;

    private final NetworkCard card;
    private final List<NetworkReference> references;

    NetworkSelfTest(NetworkCard card, List<NetworkReference> references) {
        this.card = card;
        this.references = List.copyOf(references);
    }

    /**
     * Tests all workers at once.
     *
     * @return the largest differences found
     * @throws NetworkUnfitException when a worker is off or fails
     */
    SelfTestResult run(List<? extends NetworkWorker> workers) throws NetworkUnfitException {
        SelfTestResult worst = new SelfTestResult(card.name(), references.size(), 0, 0);
        for (SelfTestResult result : WorkerThreads.runAll(card, workers, this::runWorker)) {
            worst = worst.worse(result);
        }
        return worst;
    }

    private SelfTestResult runWorker(NetworkWorker worker) throws NetworkUnfitException {
        SelfTestResult worst = new SelfTestResult(card.name(), references.size(), 0, 0);
        for (int round = 0; round < ROUNDS; round++) {
            for (NetworkReference reference : references) {
                float[][] tensors = worker.compute(reference.rgb());
                double relative = compareTensors(reference, tensors);
                double px = reference.answer().points() == null ? 0 : comparePoints(reference, worker.points(tensors));
                worst = worst.worse(new SelfTestResult(card.name(), references.size(), relative, px));
            }
        }
        return worst;
    }

    private double compareTensors(NetworkReference reference, float[][] tensors) throws NetworkUnfitException {
        List<NetworkReference.TensorSample> expected = reference.answer().tensors();
        if (tensors.length != expected.size()) {
            throw unfit(reference, "gives " + tensors.length + " tensors, " + expected.size() + " are stored");
        }
        double worst = 0;
        for (int t = 0; t < tensors.length; t++) {
            worst = Math.max(worst, compareTensor(reference, t, tensors[t]));
        }
        return worst;
    }

    private double compareTensor(NetworkReference reference, int index, float[] tensor) throws NetworkUnfitException {
        NetworkReference.TensorSample expected = reference.answer().tensors().get(index);
        int stride = reference.answer().stride();
        if (tensor.length != expected.count() || expected.values().size() != (tensor.length + stride - 1) / stride) {
            throw unfit(
                    reference,
                    "gives tensor " + index + " with " + tensor.length + " numbers, its reference has "
                            + expected.count() + " and keeps "
                            + expected.values().size());
        }
        double worst = 0;
        for (int i = 0; i < expected.values().size(); i++) {
            double difference =
                    Math.abs((double) tensor[i * stride] - expected.values().get(i)) / expected.max();
            // Not >: a NaN must fail.
            if (!(difference <= LARGEST_RELATIVE_DIFFERENCE)) {
                throw unfit(
                        reference,
                        String.format(
                                Locale.ROOT,
                                "computes %g where %g is stored (tensor %d, number %d): off by %.2g of the largest value, %.0e is"
                                        + " allowed",
                                tensor[i * stride],
                                expected.values().get(i),
                                index,
                                i * stride,
                                difference,
                                LARGEST_RELATIVE_DIFFERENCE));
            }
            worst = Math.max(worst, difference);
        }
        return worst;
    }

    private double comparePoints(NetworkReference reference, LandmarkReading reading) throws NetworkUnfitException {
        List<List<Float>> expected = reference.answer().points();
        if (expected.size() != card.points().size()) {
            throw unfit(
                    reference,
                    "has " + card.points().size() + " points on its card, " + expected.size() + " in the reference");
        }
        double worst = 0;
        for (int i = 0; i < expected.size(); i++) {
            BodyPoint point = card.points().get(i);
            for (int mode = 0; point != null && mode < LandmarkReading.MODES; mode++) {
                worst = Math.max(worst, compareMode(reference, reading, point, mode, expected.get(i)));
            }
        }
        return worst;
    }

    private double compareMode(
            NetworkReference reference, LandmarkReading reading, BodyPoint point, int mode, List<Float> expected)
            throws NetworkUnfitException {
        int at = 4 * mode;
        if (expected.get(at + 3) < LEAST_MASS) {
            return 0;
        }
        double px = Math.max(
                Math.hypot(
                        reading.xPx(point, mode) - expected.get(at), reading.yPx(point, mode) - expected.get(at + 1)),
                Math.abs(reading.sdPx(point, mode) - expected.get(at + 2)));
        double mass = Math.abs(reading.mass(point, mode) - expected.get(at + 3));
        if (!(px <= LARGEST_POINT_DIFFERENCE_PX) || !(mass <= LARGEST_MASS_DIFFERENCE)) {
            throw unfit(
                    reference,
                    String.format(
                            Locale.ROOT,
                            "reads %s (mode %d) %.2f px and %.3f of mass off its reference",
                            point,
                            mode,
                            px,
                            mass));
        }
        return px;
    }

    private NetworkUnfitException unfit(NetworkReference reference, String what) {
        return new NetworkUnfitException("network " + card.name()
                + " is not fit to measure on this machine: on reference " + reference.name() + " it " + what);
    }
}
