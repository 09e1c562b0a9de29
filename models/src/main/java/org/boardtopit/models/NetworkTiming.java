package org.boardtopit.models;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.nio.ByteBuffer;
import java.util.List;

/**
 * How fast a network is on this machine.
 *
 * @param network name of the network
 * @param workers threads that computed at once, one picture each at a time
 * @param pictures computed, warm-up not counted
 * @param seconds that took
 * @param processorSeconds that the whole process worked meanwhile; a busy machine makes them little longer. NaN where unknown
 */
public record NetworkTiming(String network, int workers, int pictures, double seconds, double processorSeconds) {
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
        double beforeS = workedS();
        long startNs = System.nanoTime();
        compute(card, workers, rgb, picturesPerWorker);
        double seconds = (System.nanoTime() - startNs) * 1e-9;
        int pictures = workers.size() * picturesPerWorker;
        return new NetworkTiming(card.name(), workers.size(), pictures, seconds, workedS() - beforeS);
    }

    private static double workedS() {
        return ManagementFactory.getOperatingSystemMXBean() instanceof OperatingSystemMXBean known
                ? known.getProcessCpuTime() * 1e-9
                : Double.NaN;
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
