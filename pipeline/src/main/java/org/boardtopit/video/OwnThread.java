package org.boardtopit.video;

import java.util.concurrent.TimeUnit;

/** A thread that belongs to one reader or writer and ends with it. */
final class OwnThread {
    private final Thread thread;

    /** Starts to work at once; the work ends by itself or when it is interrupted. */
    OwnThread(String name, Runnable work) {
        thread = new Thread(work, name);
        thread.setDaemon(true);
        thread.start();
    }

    /** Waits until the work is done. */
    void join() throws InterruptedException {
        thread.join();
    }

    /** Interrupts the work and waits until it has ended, so that nothing native is freed under its hands. */
    void end() {
        thread.interrupt();
        boolean interrupted = false;
        while (thread.isAlive()) {
            try {
                thread.join(TimeUnit.SECONDS.toMillis(1));
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
