package org.boardtopit.fit;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What the fit takes for known of a jumper beside the network's points and their smoothness. Each can be left out, to see
 * what it gains ({@code docs/accuracy.md}).
 *
 * @param wholeClip false: nothing is fitted, the repaired points stand (then the others mean nothing)
 * @param lengths thigh, shank, trunk and foot keep their length over the clip
 * @param support the toe of a foot in support stays where it is
 * @param flight the centre of mass falls freely while no foot is down
 * @param kneeLimit a knee does not bend forwards
 * @param hipOffset the network reads the hips shifted by the same amount over the clip
 */
public record Assumptions(
        boolean wholeClip, boolean lengths, boolean support, boolean flight, boolean kneeLimit, boolean hipOffset) {
    public static final Assumptions ALL = new Assumptions(true, true, true, true, true, true);
    /** No fit over the whole clip: the plain, repaired points. */
    public static final Assumptions PLAIN = new Assumptions(false, false, false, false, false, false);

    /** Free fall is known in metres only. */
    public Assumptions withoutFlight() {
        return new Assumptions(wholeClip, lengths, support, false, kneeLimit, hipOffset);
    }

    /** By name: all of them, each one left out, only the points' smoothness, and no fit. */
    public static Map<String, Assumptions> variants() {
        Map<String, Assumptions> variants = new LinkedHashMap<>();
        variants.put("all", ALL);
        variants.put("without lengths", new Assumptions(true, false, true, true, true, true));
        variants.put("without support", new Assumptions(true, true, false, true, true, true));
        variants.put("without free fall", ALL.withoutFlight());
        variants.put("without knee limit", new Assumptions(true, true, true, true, false, true));
        variants.put("without hip offset", new Assumptions(true, true, true, true, true, false));
        variants.put("smoothness only", new Assumptions(true, false, false, false, false, false));
        variants.put("no fit", PLAIN);
        return variants;
    }
}
