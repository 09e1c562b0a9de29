package org.boardtopit.models;

import java.nio.ByteBuffer;

/** One runner of a network with its picture buffer: what a thread of the run uses, and what the self-test tests. */
abstract sealed class NetworkWorker implements AutoCloseable permits LandmarkWorker, DetectorWorker {
    private final NetworkCard card;
    private final TensorEngine.Runner runner;
    private final PictureInput input;

    NetworkWorker(NetworkCard card, TensorEngine.Runner runner) {
        this.card = card;
        this.runner = runner;
        this.input = new PictureInput(card.input());
    }

    public NetworkCard card() {
        return card;
    }

    public int inputSizePx() {
        return card.input().sizePx();
    }

    /** The tensors of a picture; valid until the next call. */
    float[][] compute(ByteBuffer rgb) {
        return runner.run(input.prepare(rgb));
    }

    /** Does with a picture all that a run does with it. */
    abstract void work(ByteBuffer rgb);

    /** The body points in the tensors; none are known to a detector. */
    abstract LandmarkReading points(float[][] tensors);

    @Override
    public void close() {
        runner.close();
    }
}
