package org.boardtopit.models;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.atomic.AtomicInteger;

/** An engine whose networks answer every picture with fixed tensors, and which counts what is open. */
final class FakeEngine implements TensorEngine {
    private final float[][] answer;
    private final AtomicInteger open = new AtomicInteger();

    FakeEngine(float[]... answer) {
        this.answer = answer;
    }

    /** Networks and runners that are open. */
    int open() {
        return open.get();
    }

    @Override
    public String description() {
        return "fake";
    }

    @Override
    public LoadedNetwork load(NetworkCard card, byte[] module) throws NetworkUnfitException {
        if (new String(module, StandardCharsets.UTF_8).equals("garbage")) {
            throw new NetworkUnfitException("garbage");
        }
        open.incrementAndGet();
        return new LoadedNetwork() {
            @Override
            public Runner newRunner() {
                return runner();
            }

            @Override
            public void close() {
                open.decrementAndGet();
            }
        };
    }

    private Runner runner() {
        open.incrementAndGet();
        return new Runner() {
            @Override
            public float[][] run(ByteBuffer input) {
                return answer;
            }

            @Override
            public void close() {
                open.decrementAndGet();
            }
        };
    }
}
