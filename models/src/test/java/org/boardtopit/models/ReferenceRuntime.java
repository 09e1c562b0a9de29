package org.boardtopit.models;

import java.net.URISyntaxException;
import java.net.URL;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.Objects;
import org.bytedeco.javacpp.FloatPointer;
import org.bytedeco.javacpp.Pointer;
import org.bytedeco.tensorflowlite.BuiltinOpResolverWithoutDefaultDelegates;
import org.bytedeco.tensorflowlite.FlatBufferModel;
import org.bytedeco.tensorflowlite.Interpreter;
import org.bytedeco.tensorflowlite.InterpreterBuilder;

/**
 * The runtime that the published networks were made for, TensorFlow Lite, with its built-in kernels (no delegate): another
 * implementation of the same graph, to compare the converted networks with.
 */
final class ReferenceRuntime implements AutoCloseable {
    private final FlatBufferModel model;
    private final BuiltinOpResolverWithoutDefaultDelegates resolver;
    private final InterpreterBuilder builder;
    private final Interpreter interpreter;

    /** Opens a .tflite file beside the tests. */
    ReferenceRuntime(String resource) {
        model = FlatBufferModel.BuildFromFile(path(resource).toString());
        resolver = new BuiltinOpResolverWithoutDefaultDelegates();
        builder = new InterpreterBuilder(model, resolver);
        interpreter = new Interpreter((Pointer) null);
        requireOk("building", builder.apply(interpreter));
        requireOk("allocating", interpreter.AllocateTensors());
    }

    /** Gives the network the picture, each byte as byte * scale + offset. */
    void run(ByteBuffer rgb, double scale, double offset) {
        float[] values = new float[rgb.capacity()];
        for (int i = 0; i < values.length; i++) {
            values[i] = (float) ((rgb.get(i) & 0xFF) * scale + offset);
        }
        interpreter.typed_input_tensor_float(0).put(values);
        requireOk("running", interpreter.Invoke());
    }

    /** Copies an output of the last run. */
    float[] output(int index, int length) {
        float[] values = new float[length];
        try (FloatPointer tensor = interpreter.typed_output_tensor_float(index)) {
            tensor.capacity(length).get(values);
        }
        return values;
    }

    private static void requireOk(String what, int status) {
        if (status != 0) {
            throw new IllegalStateException(what + " failed with status " + status);
        }
    }

    private static Path path(String resource) {
        URL url = Objects.requireNonNull(ReferenceRuntime.class.getResource(resource), resource);
        try {
            return Path.of(url.toURI());
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    @Override
    public void close() {
        interpreter.close();
        builder.close();
        resolver.close();
        model.close();
    }
}
