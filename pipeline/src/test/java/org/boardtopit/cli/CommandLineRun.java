package org.boardtopit.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;
import org.boardtopit.cli.MeasurerFactory.OpenMeasurer;
import org.boardtopit.cli.MeasurerFactory.Setup;
import org.boardtopit.clips.Clip;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.run.ClipNotMeasuredException;
import org.boardtopit.run.ClipResult;
import org.boardtopit.run.LandmarkSource;
import org.boardtopit.run.ScriptedMeasurer;
import org.boardtopit.run.StageListener;

/** The program in a folder of its own, with a scripted measurer, an invented network engine and captured streams. */
final class CommandLineRun {
    final ScriptedMeasurer measurer = new ScriptedMeasurer();
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();
    private final Path folder;
    private MeasurerFactory factory = setup -> open(setup);
    private LandmarkSource landmarks = (clip, listener) -> {
        throw new ClipNotMeasuredException("survey", "no landmarks were drawn", null);
    };
    private boolean terminal;
    private Setup setup;
    private boolean closed;

    CommandLineRun(Path folder) {
        this.folder = folder;
    }

    CommandLineRun onTerminal() {
        terminal = true;
        return this;
    }

    CommandLineRun with(MeasurerFactory other) {
        factory = other;
        return this;
    }

    CommandLineRun with(LandmarkSource source) {
        landmarks = source;
        return this;
    }

    /** Runs the program; words that begin with @ are files in the folder. */
    int run(String... words) {
        String[] args = words.clone();
        for (int i = 0; i < args.length; i++) {
            args[i] = args[i].startsWith("@") ? path(args[i].substring(1)).toString() : args[i];
        }
        Console console = new Console(new PrintWriter(out), new PrintWriter(err), terminal);
        return Main.run(args, new Surroundings(console, new FakeEngine(), factory, Optional.empty(), Optional.empty()));
    }

    private OpenMeasurer open(Setup wanted) {
        setup = wanted;
        return new OpenMeasurer() {
            @Override
            public ClipResult measure(Clip clip, StageListener listener) throws ClipNotMeasuredException {
                return measurer.measure(clip, listener);
            }

            @Override
            public ClipLandmarks landmarks(Clip clip, StageListener listener) throws ClipNotMeasuredException {
                return landmarks.landmarks(clip, listener);
            }

            @Override
            public void close() {
                closed = true;
            }
        };
    }

    Path path(String name) {
        return folder.resolve(name);
    }

    Path file(String name, String content) {
        try {
            Files.createDirectories(path(name).getParent());
            return Files.writeString(path(name), content, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A network that the invented engine computes, in the folder networks. */
    void network(String name) {
        file("networks/" + name + "/network.pt", "weights");
        file("networks/" + name + "/card.json", """
                {"name": "%s", "title": "One point", "file": "network.pt", "sha256": "%s",
                 "input": {"sizePx": 32, "channels": "rgb", "layout": "nhwc", "values": "bytes",
                           "scale": [1, 1, 1], "offset": [0, 0, 0]},
                 "output": {"kind": "points", "tensor": 0, "numbersPerPoint": 2, "unit": "pixels", "score": null,
                            "scoreAs": "probability", "sdPx": 2},
                 "points": ["NOSE"], "sdFactor": 1, "references": [], "licence": "CC0-1.0", "sources": [],
                 "training": "none", "limits": []}
                """.formatted(name, sha256("weights")));
    }

    private static String sha256(String text) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    String out() {
        return out.toString();
    }

    String err() {
        return err.toString();
    }

    /** With what the measurer was made; null when it was not. */
    Setup setup() {
        return setup;
    }

    boolean closed() {
        return closed;
    }
}
