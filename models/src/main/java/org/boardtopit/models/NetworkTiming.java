package org.boardtopit.models;

import java.nio.ByteBuffer;
import java.util.List;

/**
 * How fast a network is on this machine.
 *
 * @param network name of the network
 * @param workers threads that computed at once, one picture each at a time
 * @param pictures computed, warm-up not counted
 * @param seconds that took
 */
public record NetworkTiming(String network, int workers, int pictures, double seconds) {
    public NetworkTiming {
        if (workers < 1 || pictures < 1 || !(seconds > 0)) {
            throw new IllegalArgumentException(
                    "a timing has workers, pictures and seconds, was " + workers + ", " + pictures + ", " + seconds);
        }
    }

    private static final int WARM_UP_PICTURES = 10;

    /** Lets every worker compute the picture so many times. */
    static NetworkTiming measure(
            NetworkCard card, List<? extends NetworkWorker> workers, ByteBuffer rgb, int picturesPerWorker)
            throws NetworkUnfitException {
        compute(card, workers, rgb, WARM_UP_PICTURES);
        long startNs = System.nanoTime();
        compute(card, workers, rgb, picturesPerWorker);
        double seconds = (System.nanoTime() - startNs) * 1e-9;
        return new NetworkTiming(card.name(), workers.size(), workers.size() * picturesPerWorker, seconds);
    }

    private static void compute(NetworkCard card, List<? extends NetworkWorker> workers, ByteBuffer rgb, int times)
            throws NetworkUnfitException {
        WorkerThreads.runAll(card, workers, worker -> {
            for (int i = 0; i < times; i++) {
                worker.work(rgb);
            }
            return times;
        });
    }

    /** Pictures per second of all workers together, reading the points or persons included. */
    public double picturesPerSecond() {
        return pictures / seconds;
    }
}
