package org.boardtopit.run;

/**
 * How far a run is.
 *
 * @param clip number of the clip at work, from 1
 * @param clips how many there are
 * @param fileName of the clip at work
 * @param stage at work, for people
 * @param share of the whole run's work that is done, 0 to 1; clips weigh by their files' sizes
 * @param remainingS seconds that the rest takes if it goes on like this; NaN while too little is done to tell
 */
public record Progress(int clip, int clips, String fileName, String stage, double share, double remainingS) {

    public Progress {
        if (clip < 1 || clip > clips) {
            throw new IllegalArgumentException("clip must be from 1 to " + clips + ", was " + clip);
        }
        if (!(share >= 0 && share <= 1)) {
            throw new IllegalArgumentException("share must be from 0 to 1, was " + share);
        }
    }
}
