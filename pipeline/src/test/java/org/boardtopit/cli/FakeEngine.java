package org.boardtopit.cli;

import java.nio.ByteBuffer;
import org.boardtopit.models.NetworkCard;
import org.boardtopit.models.TensorEngine;

/** Computes the point (3, 4) for every picture, which is right for no network that is shipped. */
final class FakeEngine implements TensorEngine {

    @Override
    public String description() {
        return "fake engine 1";
    }

    @Override
    public LoadedNetwork load(NetworkCard card, byte[] module) {
        return new LoadedNetwork() {
            @Override
            public Runner newRunner() {
                return new FakeRunner();
            }

            @Override
            public void close() {}
        };
    }

    private static final class FakeRunner implements Runner {
        @Override
        public float[][] run(ByteBuffer input) {
            return new float[][] {{3, 4}};
        }

        @Override
        public void close() {}
    }
}
