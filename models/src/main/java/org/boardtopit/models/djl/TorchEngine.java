package org.boardtopit.models.djl;

import ai.djl.MalformedModelException;
import ai.djl.Model;
import ai.djl.engine.Engine;
import ai.djl.engine.EngineException;
import ai.djl.inference.Predictor;
import ai.djl.ndarray.NDArray;
import ai.djl.ndarray.NDList;
import ai.djl.ndarray.types.DataType;
import ai.djl.ndarray.types.Shape;
import ai.djl.translate.NoBatchifyTranslator;
import ai.djl.translate.TranslateException;
import ai.djl.translate.TranslatorContext;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Properties;
import org.boardtopit.models.NetworkCard;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.models.TensorEngine;

/**
 * Computes TorchScript networks with libtorch, on the processor, one thread per runner.
 *
 * <p>One picture at a time and one thread per runner was measured to be the fastest for whole clips, and it is the only setting
 * in which no wrong numbers were seen (docs/networks.md). The first use in a Java process loads the native libraries; the very
 * first one on a machine unpacks them from the class path into the library's cache folder ({@code DJL_CACHE_DIR}, by default
 * {@code .djl.ai} in the user's home). Nothing is fetched from elsewhere.
 */
public final class TorchEngine implements TensorEngine {
    private static final String ENGINE = "PyTorch";

    /** Read by the library when it starts, once per process. */
    private static void setUp() {
        System.setProperty("ai.djl.offline", "true");
        System.setProperty("OPT_OUT_TRACKING", "true");
        System.setProperty("ai.djl.pytorch.num_threads", "1");
        System.setProperty("ai.djl.pytorch.num_interop_threads", "1");
    }

    public TorchEngine() {
        setUp();
    }

    /** From the library's own note, so that nothing native is loaded for it. */
    @Override
    public String description() {
        Properties note = new Properties();
        try (InputStream in = Engine.class.getResourceAsStream("/pytorch-engine.properties")) {
            if (in == null) {
                return ENGINE;
            }
            note.load(in);
        } catch (IOException e) {
            throw new UncheckedIOException("the engine's note of its version cannot be read", e);
        }
        return ENGINE + " " + note.getProperty("pytorch_version") + " (Deep Java Library "
                + note.getProperty("djl_version") + ")";
    }

    @Override
    public LoadedNetwork load(NetworkCard card, byte[] module) throws NetworkUnfitException {
        Model model = Model.newInstance(card.name(), ENGINE);
        try {
            model.load(new ByteArrayInputStream(module));
        } catch (IOException | MalformedModelException | EngineException e) {
            model.close();
            throw new NetworkUnfitException(
                    "network " + card.name() + ": " + card.file() + " is not a TorchScript file that can be read: "
                            + firstLine(e),
                    e);
        }
        return new TorchNetwork(card, model);
    }

    private static String firstLine(Exception e) {
        return String.valueOf(e.getMessage()).lines().findFirst().orElse("");
    }

    private record TorchNetwork(NetworkCard card, Model model) implements LoadedNetwork {
        @Override
        public Runner newRunner() {
            return new TorchRunner(card.name(), model.newPredictor(new PictureTranslator(card.input())));
        }

        @Override
        public void close() {
            model.close();
        }
    }

    private record TorchRunner(String name, Predictor<ByteBuffer, float[][]> predictor) implements Runner {
        @Override
        public float[][] run(ByteBuffer input) {
            try {
                return predictor.predict(input);
            } catch (TranslateException e) {
                throw new IllegalStateException("network " + name + " fails on a picture: " + firstLine(e), e);
            }
        }

        @Override
        public void close() {
            predictor.close();
        }
    }

    /**
     * Hands the picture's buffer to the network and copies its tensors out. The predictor gives every call a memory manager of
     * its own and closes it afterwards, so that native memory stays flat.
     */
    private static final class PictureTranslator implements NoBatchifyTranslator<ByteBuffer, float[][]> {
        private final Shape shape;
        private final DataType type;
        private float[][] tensors = {};

        PictureTranslator(NetworkCard.Input input) {
            int size = input.sizePx();
            shape = input.layout() == NetworkCard.Layout.nhwc
                    ? new Shape(1, size, size, 3)
                    : new Shape(1, 3, size, size);
            type = input.values() == NetworkCard.Values.bytes ? DataType.UINT8 : DataType.FLOAT32;
        }

        @Override
        public NDList processInput(TranslatorContext context, ByteBuffer picture) {
            return new NDList(context.getNDManager().create(picture, shape, type));
        }

        @Override
        public float[][] processOutput(TranslatorContext context, NDList outputs) {
            if (tensors.length != outputs.size()) {
                tensors = new float[outputs.size()][0];
            }
            for (int i = 0; i < tensors.length; i++) {
                tensors[i] = copy(outputs.get(i), tensors[i]);
            }
            return tensors;
        }

        private static float[] copy(NDArray tensor, float[] into) {
            if (tensor.getDataType() != DataType.FLOAT32) {
                throw new IllegalStateException("its outputs should be FLOAT32, one is " + tensor.getDataType());
            }
            int length = Math.toIntExact(tensor.size());
            float[] target = into.length == length ? into : new float[length];
            tensor.toByteBuffer(true)
                    .order(ByteOrder.nativeOrder())
                    .asFloatBuffer()
                    .get(target);
            return target;
        }
    }
}
