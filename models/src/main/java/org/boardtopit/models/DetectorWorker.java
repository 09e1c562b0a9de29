package org.boardtopit.models;

import java.nio.ByteBuffer;
import java.util.List;

/** A person detector that owns the network behind it. */
final class DetectorWorker extends NetworkWorker implements PersonDetector {
    private final TensorEngine.LoadedNetwork network;
    private final DetectionDecoder decoder;

    DetectorWorker(NetworkCard card, TensorEngine.LoadedNetwork network) {
        super(card, network.newRunner());
        this.network = network;
        this.decoder = new DetectionDecoder(card.input().sizePx());
    }

    @Override
    public List<DetectedPerson> find(ByteBuffer rgb) {
        float[][] tensors = compute(rgb);
        if (tensors.length != 2) {
            throw new IllegalStateException(
                    "network " + card().name() + " has " + tensors.length + " output tensors, a detector has 2");
        }
        return decoder.decode(tensors[0], tensors[1]);
    }

    @Override
    void work(ByteBuffer rgb) {
        find(rgb);
    }

    @Override
    LandmarkReading points(float[][] tensors) {
        return LandmarkReading.of(LandmarkReading.unknown());
    }

    @Override
    public void close() {
        super.close();
        network.close();
    }
}
