package org.boardtopit.run;

/** Remembers the stage of a clip, for the listener and for the reason of a failure. */
final class Stages {
    private final StageListener listener;
    private String current = "open";

    Stages(StageListener listener) {
        this.listener = listener;
    }

    /** Nobody hears of them. */
    static Stages unheard() {
        return new Stages((stage, share) -> {});
    }

    void begin(String stage, double share) {
        current = stage;
        listener.at(stage, share);
    }

    String current() {
        return current;
    }
}
