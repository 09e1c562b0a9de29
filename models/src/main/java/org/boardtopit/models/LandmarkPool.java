package org.boardtopit.models;

import java.util.ArrayList;
import java.util.List;

/**
 * A tested landmark network with one worker per thread of the run. {@link #close()} frees everything native and may be called
 * more than once; no worker may be in use then.
 */
public final class LandmarkPool implements AutoCloseable {
    private final NetworkCard card;
    private final TensorEngine.LoadedNetwork network;
    private final List<LandmarkWorker> workers = new ArrayList<>();

    LandmarkPool(NetworkCard card, TensorEngine.LoadedNetwork network, int size) {
        if (size < 1 || size > 256) {
            throw new IllegalArgumentException("workers must be 1 to 256, was " + size);
        }
        this.card = card;
        this.network = network;
        for (int i = 0; i < size; i++) {
            workers.add(new LandmarkWorker(card, network.newRunner()));
        }
    }

    public NetworkCard card() {
        return card;
    }

    public int size() {
        return workers.size();
    }

    /** The worker for the thread number i, 0 to size - 1. */
    public LandmarkNetwork worker(int i) {
        return workers.get(i);
    }

    List<LandmarkWorker> workers() {
        return workers;
    }

    @Override
    public void close() {
        workers.forEach(LandmarkWorker::close);
        network.close();
    }
}
