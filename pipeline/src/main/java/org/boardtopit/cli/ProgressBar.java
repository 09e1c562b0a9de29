package org.boardtopit.cli;

import java.io.PrintWriter;
import java.util.Locale;
import java.util.function.LongSupplier;
import org.boardtopit.run.Progress;

/** One line of a terminal that is written over as the run goes on. */
final class ProgressBar {
    /** The narrowest terminal in use is 80 columns wide; the last one stays free, as some terminals wrap there. */
    private static final int WIDTH = 79;

    private static final int BAR_WIDTH = 24;
    private static final long LEAST_STEP_NS = 200_000_000;

    private final PrintWriter out;
    private final LongSupplier nanoTime;
    private boolean shown;
    private long shownNs;

    ProgressBar(PrintWriter out) {
        this(out, System::nanoTime);
    }

    ProgressBar(PrintWriter out, LongSupplier nanoTime) {
        this.out = out;
        this.nanoTime = nanoTime;
    }

    /** Shows the progress, unless the line was written a moment ago. */
    void show(Progress progress) {
        long now = nanoTime.getAsLong();
        if (!shown || now - shownNs >= LEAST_STEP_NS) {
            out.print("\r" + padded(line(progress)));
            out.flush();
            shown = true;
            shownNs = now;
        }
    }

    /** Makes room for other words. */
    void clear() {
        if (shown) {
            out.print("\r" + padded("") + "\r");
            out.flush();
            shown = false;
        }
    }

    static String line(Progress progress) {
        int full = (int) (progress.share() * BAR_WIDTH);
        String remaining =
                Double.isNaN(progress.remainingS()) ? "" : "  " + Spoken.forecast(progress.remainingS()) + " left";
        String line = String.format(
                Locale.ROOT,
                "|%s%s| %3d %%%s  clip %d/%d  %s  %s",
                "#".repeat(full),
                " ".repeat(BAR_WIDTH - full),
                (int) (progress.share() * 100),
                remaining,
                progress.clip(),
                progress.clips(),
                progress.stage(),
                progress.fileName());
        return Console.oneLine(line);
    }

    private static String padded(String line) {
        int length = Math.min(WIDTH, line.length());
        return line.substring(0, length) + " ".repeat(WIDTH - length);
    }
}
