package org.boardtopit.season;

import java.util.List;

/**
 * The mean of competitions, each weighted by how well its own mean is known. When they differ by more than their errors explain,
 * the error grows by the ratio (R. T. Birge, The calculation of errors by the method of least squares, Physical Review 40,
 * 207-227, 1932; the Particle Data Group does likewise). It never shrinks: few competitions agree by chance.
 */
record WeightedMean(double mean, double standardError) {

    static WeightedMean of(List<Series.Point> points) {
        double sum = 0;
        double weights = 0;
        for (Series.Point point : points) {
            double weight = 1 / (point.standardError() * point.standardError());
            sum += weight * point.mean().mean();
            weights += weight;
        }
        double mean = sum / weights;
        double misfit = 0;
        for (Series.Point point : points) {
            double off = (point.mean().mean() - mean) / point.standardError();
            misfit += off * off;
        }
        double ratio = points.size() < 2 ? 1 : Math.max(1, misfit / (points.size() - 1));
        return new WeightedMean(mean, Math.sqrt(ratio / weights));
    }
}
