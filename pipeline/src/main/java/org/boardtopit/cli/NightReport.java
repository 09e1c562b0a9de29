package org.boardtopit.cli;

import java.util.List;
import java.util.Map;
import org.boardtopit.cli.NightBench.Figures;
import org.boardtopit.models.NetworkTiming;
import org.boardtopit.run.workers.WorkerPlan;

/** Says how a run in workers compares with the network alone. */
final class NightReport {
    /** Takes a line. */
    @FunctionalInterface
    interface Lines {
        void say(String format, Object... values);
    }

    private final Lines lines;
    private final int looks;
    private final List<NetworkTiming> timings;

    /**
     * A report.
     *
     * @param looks of the network at each frame
     * @param timings of the network alone, with as many threads as all workers have: before, between and after the runs
     */
    NightReport(Lines lines, int looks, List<NetworkTiming> timings) {
        this.lines = lines;
        this.looks = looks;
        this.timings = List.copyOf(timings);
    }

    void report(int clips, WorkerPlan plan, Figures with, Figures without) {
        lines.say(
                "Run: %d clips, %d frames, %d workers of %d threads",
                clips, with.frames(), plan.workers(), plan.threads());
        lines.say("                              clock   ratio   processors   ratio");
        line("network alone", aloneS(with), aloneProcessorS(with), with);
        line("with overlays", with.seconds(), with.processorSeconds(), with);
        line("without overlays", without.seconds(), without.processorSeconds(), with);
        lines.say(
                "Overlays add %.0f %% to the clock, %.0f %% to the processors.",
                100 * (with.seconds() / without.seconds() - 1),
                100 * (with.processorSeconds() / without.processorSeconds() - 1));
        lines.say("Processor seconds by stage, and over those of the network alone:");
        Map<String, Double> worked = with.stages().processorSecondsByStage();
        Map<String, Double> other = without.stages().processorSecondsByStage();
        worked.forEach((stage, s) -> stage(stage, s, other.getOrDefault(stage, 0.0), aloneProcessorS(with)));
        stage("start, tests, tables", with.besidesStagesS(), without.besidesStagesS(), aloneProcessorS(with));
    }

    private void line(String what, double clockS, double processorS, Figures with) {
        lines.say(
                "  %-20s %10.2f s %7.2f %10.2f s %7.2f",
                what, clockS, clockS / aloneS(with), processorS, processorS / aloneProcessorS(with));
    }

    private void stage(String name, double withS, double withoutS, double aloneS) {
        lines.say(
                "  %-20s %10.2f s %7.3f   without overlays %8.2f s %7.3f",
                name, withS, withS / aloneS, withoutS, withoutS / aloneS);
    }

    private double aloneS(Figures run) {
        return looks
                * run.frames()
                * timings.stream()
                        .mapToDouble(t -> t.seconds() / t.pictures())
                        .average()
                        .orElseThrow();
    }

    private double aloneProcessorS(Figures run) {
        return looks
                * run.frames()
                * timings.stream()
                        .mapToDouble(t -> t.processorSeconds() / t.pictures())
                        .average()
                        .orElseThrow();
    }
}
