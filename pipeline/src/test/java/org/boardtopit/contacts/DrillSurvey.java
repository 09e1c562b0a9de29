package org.boardtopit.contacts;

import java.util.List;
import java.util.Locale;
import org.boardtopit.clips.Pattern;
import org.boardtopit.synthetic.*;
import org.junit.jupiter.api.Test;

class DrillSurvey {
    static final Foot L = Foot.LEFT, R = Foot.RIGHT, B = Foot.BOTH;

    record Kind(String pattern, DrawnDrill left) {}

    static DrawnDrill drill(boolean approach, boolean slow, Foot... feet) {
        return new DrawnDrill(List.of(feet), approach, slow);
    }

    @Test
    void survey() {
        Object[][] kinds = {
            {"hop-hop-hop", drill(true, false, R, R, R, R)},
            {"hop-hop-hop", drill(false, false, L, L, L, L)},
            {"hop-hop-hop", drill(false, true, L, L, L, L)},
            {"step-step-jump", drill(true, false, R, L, R, B)},
            {"step-step-jump", drill(false, false, L, R, L, B)},
            {"skip", drill(true, true, R, R, L, L, R, R, L, L)},
            {"skip", drill(false, true, R, R, L, L, R, R, L, L)},
        };
        for (double fps : new double[] {60, 120})
            for (Object[] k : kinds) {
                DrawnDrill d = (DrawnDrill) k[1];
                Pattern pattern = Pattern.parse((String) k[0]);
                int right = 0;
                double td = 0, to = 0, tb = 0, ob = 0;
                int n = 0, m = 0, intd = 0, into = 0;
                double conf = 0;
                StringBuilder bad = new StringBuilder();
                long t0 = System.nanoTime();
                for (long seed = 1; seed <= 30; seed++) {
                    DrawnClip clip =
                            new DrawnClip(DrawnClip.Setup.ordinary(seed).atFps(fps), d);
                    DrawnAttempt a = DrawnAttempt.of(clip, clip.calibratedView(), pattern);
                    int off = d.approach() ? 3 : 0;
                    List<TrueContact> truth =
                            clip.contacts().subList(off, off + d.contacts().size());
                    List<Contact> found = a.found().contacts().stream()
                            .filter(c -> c.kind() != ContactKind.APPROACH)
                            .toList();
                    boolean ok = found.size() == truth.size();
                    for (int i = 0; ok && i < found.size(); i++) {
                        Contact c = found.get(i);
                        TrueContact t = truth.get(i);
                        boolean pre = t.touchdownS() < 0;
                        ok = c.foot() == t.foot()
                                && (pre
                                        ? Double.isNaN(c.touchdownS()) && Math.abs(c.toeOffS() - t.toeOffS()) < 0.08
                                        : Math.abs(c.touchdownS() - t.touchdownS()) < 0.06);
                    }
                    if (ok) {
                        right++;
                        conf += a.found().sequenceConfidence();
                        for (int i = 0; i < found.size(); i++) {
                            Contact c = found.get(i);
                            TrueContact t = truth.get(i);
                            double e1 = c.touchdownS() - t.touchdownS(), e2 = c.toeOffS() - t.toeOffS();
                            if (Double.isFinite(e1)) {
                                td += Math.abs(e1);
                                tb += e1;
                                n++;
                                if (Math.abs(e1) < 1.645 * c.touchdownSdS()) intd++;
                            }
                            if (Double.isFinite(e2)) {
                                to += Math.abs(e2);
                                ob += e2;
                                m++;
                                if (Math.abs(e2) < 1.645 * c.toeOffSdS()) into++;
                            }
                        }
                    } else {
                        bad.append(' ').append(seed).append(found.isEmpty() ? "none" : "");
                    }
                }
                System.out.printf(
                        Locale.ROOT,
                        "SURVEY %s approach=%s slow=%s fps=%.0f right %d/30 td %.1f (bias %.1f, in90 %.2f) to %.1f (bias %.1f, in90 %.2f) conf %.2f  %.1f s bad%s%n",
                        k[0],
                        d.approach(),
                        d.slow(),
                        fps,
                        right,
                        1000 * td / n,
                        1000 * tb / n,
                        intd / (double) n,
                        1000 * to / m,
                        1000 * ob / m,
                        into / (double) m,
                        conf / right,
                        (System.nanoTime() - t0) / 1e9,
                        bad);
            }
    }
}
