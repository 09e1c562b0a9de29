package org.boardtopit.contacts;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.pose.PoseTrack;
import org.boardtopit.synthetic.DrawnClip;
import org.boardtopit.synthetic.TrueContact;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Drawn attempts (SYN, our own). */
class CandidateFinderTest {

    private static List<Candidate> candidates(DrawnAttempt attempt) {
        return new CandidateFinder(attempt.motion(), GroundLine.level()).find();
    }

    private static boolean isFound(List<Candidate> candidates, TrueContact drawn) {
        return candidates.stream()
                .anyMatch(c -> c.foot() == drawn.foot()
                        && Math.abs(c.middleS() - (drawn.touchdownS() + drawn.toeOffS()) / 2) < 0.06);
    }

    private static double firstSightS(ClipLandmarks clip) {
        int f = 0;
        while (clip.poses().at(f).isEmpty()) {
            f++;
        }
        return clip.timeS(f);
    }

    /** A running stride stands for 0.10 s or three frames, of which two must do. */
    @ParameterizedTest(name = "{0} frames a second")
    @ValueSource(doubles = {25, 30, 60})
    void findsTheStridesAtFewFramesASecond(double fps) {
        int strides = 0;
        int found = 0;
        for (long seed = 1; seed <= 40; seed++) {
            DrawnClip clip = new DrawnClip(DrawnClip.Setup.ordinary(seed).atFps(fps));
            DrawnAttempt attempt = DrawnAttempt.of(clip, clip.landmarks(), clip.calibratedView());
            List<Candidate> candidates = candidates(attempt);
            double from = firstSightS(clip.landmarks()) + 0.15;
            for (TrueContact drawn : clip.contacts()) {
                if (drawn.kind() == ContactKind.APPROACH && drawn.touchdownS() > from) {
                    strides++;
                    found += isFound(candidates, drawn) ? 1 : 0;
                }
            }
        }
        assertTrue(strides > 60, "strides " + strides);
        assertTrue(found >= 0.93 * strides, "found " + found + " of " + strides);
    }

    /** When it came down is not known. */
    @Test
    void passesOverAFootThatStandsWhenItIsFirstSeen() {
        DrawnClip clip = new DrawnClip(
                DrawnClip.Setup.ordinary(8).withStillCamera().atFps(60).perfect());
        ClipLandmarks all = clip.landmarks();
        TrueContact standing = clip.contacts().stream()
                .filter(c -> c.kind() == ContactKind.APPROACH && c.touchdownS() > firstSightS(all) + 0.15)
                .findFirst()
                .orElseThrow();
        assertTrue(isFound(candidates(DrawnAttempt.of(clip, all, clip.calibratedView())), standing));
        List<Optional<PoseTrack.FramePose>> poses = new ArrayList<>();
        for (int f = 0; f < all.frameCount(); f++) {
            boolean late = all.timeS(f) > standing.touchdownS() + 0.02;
            poses.add(late ? all.poses().at(f) : Optional.empty());
        }
        ClipLandmarks cut = new ClipLandmarks(
                all.video(), all.timestampsUs(), 0, all.background(), all.subject(), new PoseTrack(poses));
        List<Candidate> seen = candidates(DrawnAttempt.of(clip, cut, clip.calibratedView()));
        assertEquals(
                0,
                seen.stream()
                        .filter(c -> c.touchdownS() < standing.toeOffS() && c.foot() == standing.foot())
                        .count());
        assertTrue(seen.size() >= 5, "the others stay: " + seen);
    }
}
