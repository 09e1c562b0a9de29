package org.boardtopit.models;

import java.nio.ByteBuffer;
import java.util.function.Function;

/** A landmark network of any output form. */
final class LandmarkWorker extends NetworkWorker implements LandmarkNetwork {
    private final int tensor;
    private final Function<float[], LandmarkReading> reader;

    LandmarkWorker(NetworkCard card, TensorEngine.Runner runner) {
        super(card, runner);
        int sizePx = card.input().sizePx();
        if (card.output() instanceof NetworkCard.HeatMaps maps) {
            tensor = maps.tensor();
            reader = new HeatMapReader(maps, sizePx, card.points())::read;
        } else if (card.output() instanceof NetworkCard.PlainPoints points) {
            tensor = points.tensor();
            reader = new PlainPointReader(points, sizePx, card.points())::read;
        } else {
            throw new IllegalArgumentException("network " + card.name() + " does not read landmarks");
        }
    }

    @Override
    public LandmarkReading read(ByteBuffer rgb) {
        return points(compute(rgb));
    }

    @Override
    void work(ByteBuffer rgb) {
        read(rgb);
    }

    @Override
    LandmarkReading points(float[][] tensors) {
        if (tensor >= tensors.length) {
            throw new IllegalStateException("network " + card().name() + " has " + tensors.length
                    + " output tensors, its card reads number " + tensor + " (from 0)");
        }
        return reader.apply(tensors[tensor]);
    }
}
