package org.boardtopit.clips;

/**
 * How a run measures.
 *
 * @param network name of the landmark network
 * @param threads threads for the network; 0 leaves it to the program
 * @param workers processes that measure side by side; 0 leaves it to the program
 * @param effort how much time the network is given for each frame
 */
public record RunSettings(String network, int threads, int workers, Effort effort) {
    public static final int MOST_THREADS = 256;
    public static final int MOST_WORKERS = 64;
    static final String NETWORK_NAME = "[A-Za-z0-9_-]{1,40}";

    public static final RunSettings DEFAULT = new RunSettings("full", 0, 0, Effort.NORMAL);

    public RunSettings {
        if (!network.matches(NETWORK_NAME)) {
            throw new IllegalArgumentException("network must be 1 to 40 letters, digits, - or _");
        }
        if (threads < 0 || threads > MOST_THREADS) {
            throw new IllegalArgumentException("threads must be from 0 to " + MOST_THREADS + ", was " + threads);
        }
        if (workers < 0 || workers > MOST_WORKERS) {
            throw new IllegalArgumentException("workers must be from 0 to " + MOST_WORKERS + ", was " + workers);
        }
    }
}
