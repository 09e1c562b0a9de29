package org.boardtopit.models;

import java.nio.ByteBuffer;

/**
 * The library that computes networks; the seam behind which it stays.
 *
 * <p>A loaded network may be used by many runners at once; a runner belongs to one thread at a time. Close runners before
 * their network.
 */
public interface TensorEngine {

    /** Name and version of the library, for the record of a run. */
    String description();

    /**
     * Loads a network.
     *
     * @param card its card
     * @param module content of the card's file
     * @throws NetworkUnfitException when the library cannot read it
     */
    LoadedNetwork load(NetworkCard card, byte[] module) throws NetworkUnfitException;

    /** A network in memory. */
    interface LoadedNetwork extends AutoCloseable {

        /** A new worker on the same weights. */
        Runner newRunner();

        @Override
        void close();
    }

    /** Computes one picture at a time, on one thread. */
    interface Runner extends AutoCloseable {

        /**
         * Computes the network.
         *
         * @param input direct buffer in native order that holds exactly one picture as the card's input says, from position
         *     0 to its limit; not changed, and free again on return
         * @return every output tensor, flat, in the order of the network; the arrays are the runner's own and valid until its
         *     next call
         * @throws IllegalStateException when the network fails on the picture
         */
        float[][] run(ByteBuffer input);

        @Override
        void close();
    }
}
