package org.boardtopit.run;

/** Remembers the stage of a clip, for the listener and for the reason of a failure. */
final class Stages {
    private final StageListener listener;
    private String current = "open";
    private double share;

    Stages(StageListener listener) {
        this.listener = listener;
    }

    /** Nobody hears of them. */
    static Stages unheard() {
        return new Stages((stage, share) -> {});
    }

    void begin(String stage, double done) {
        current = stage;
        share = done;
        listener.at(stage, done);
    }

    /** How much of the clip's work is done, as said last. */
    double share() {
        return share;
    }

    String current() {
        return current;
    }
}
