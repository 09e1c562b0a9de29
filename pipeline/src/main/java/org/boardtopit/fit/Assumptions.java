package org.boardtopit.fit;

/**
 * What the fit takes for known of a jumper beside the network's points and their smoothness. Each can be left out, to see
 * what it gains ({@code docs/accuracy.md}).
 *
 * @param lengths thigh, shank, trunk and foot keep their length over the clip
 * @param support the toe of a foot in support stays where it is
 * @param flight the centre of mass falls freely while no foot is down
 * @param kneeLimit a knee does not bend forwards
 * @param hipOffset the network reads the hips shifted by the same amount over the clip
 */
public record Assumptions(boolean lengths, boolean support, boolean flight, boolean kneeLimit, boolean hipOffset) {
    public static final Assumptions ALL = new Assumptions(true, true, true, true, true);
    public static final Assumptions NONE = new Assumptions(false, false, false, false, false);
}
