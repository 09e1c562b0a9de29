package org.boardtopit.models;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * The networks that can be used: those shipped with the program and those of the user's folder.
 *
 * <p>A network of the user's is a sub-folder with the network's name, which holds {@code card.json}, the file that the card
 * names and, if the card names any, references; see docs/networks.md. Nothing is opened that has not passed: the file must
 * have the card's SHA-256, and the workers must compute the references ({@link NetworkSelfTest}). A network of the user's
 * without references is opened without that test; {@link SelfTestResult#references()} tells.
 */
public final class NetworkStore {

    /** Name of the landmark network that a run takes when nothing is said. */
    public static final String DEFAULT_LANDMARKS = "full";

    /** Name of the person detector that a run takes when nothing is said. */
    public static final String DEFAULT_DETECTOR = "detector";

    private static final List<String> SHIPPED = List.of(DEFAULT_DETECTOR, DEFAULT_LANDMARKS);

    private final TensorEngine engine;
    private final Path userFolder;

    /** A store of the shipped networks only. */
    public NetworkStore(TensorEngine engine) {
        this(engine, Optional.empty());
    }

    /**
     * A store of the shipped networks and, when a folder is given, of those in it.
     *
     * @throws IllegalArgumentException when the folder is not there
     */
    public NetworkStore(TensorEngine engine, Optional<Path> userFolder) {
        if (userFolder.isPresent() && !Files.isDirectory(userFolder.get())) {
            throw new IllegalArgumentException("the folder of networks is not there: " + userFolder.get());
        }
        this.engine = engine;
        this.userFolder = userFolder.orElse(null);
    }

    /** All networks by name, also those that cannot be used. Reads the cards only. */
    public List<NetworkEntry> list() {
        return files().entrySet().stream()
                .map(e -> entry(e.getKey(), e.getValue()))
                .toList();
    }

    private static NetworkEntry entry(String name, NetworkFiles files) {
        boolean shipped = SHIPPED.contains(name);
        try {
            return new NetworkEntry(name, shipped, Optional.of(card(name, files)), "");
        } catch (NetworkUnfitException e) {
            return new NetworkEntry(name, shipped, Optional.empty(), e.getMessage());
        }
    }

    /**
     * The card of a network.
     *
     * @throws NetworkUnfitException when there is no such network, or its card is wrong
     */
    public NetworkCard card(String name) throws NetworkUnfitException {
        return card(name, files(name));
    }

    /**
     * Opens and tests a landmark network.
     *
     * @param workers threads of the run that will read crops at once
     * @throws NetworkUnfitException when there is no such network, or it must not be used
     */
    public LandmarkPool openLandmarks(String name, int workers) throws NetworkUnfitException {
        NetworkFiles files = files(name);
        NetworkCard card = card(name, files);
        requireKind(card, true);
        LandmarkPool pool = new LandmarkPool(card, load(card, files), workers);
        testOrClose(card, files, pool.workers(), pool::close);
        return pool;
    }

    /**
     * Opens and tests a person detector.
     *
     * @throws NetworkUnfitException when there is no such network, or it must not be used
     */
    public PersonDetector openDetector(String name) throws NetworkUnfitException {
        NetworkFiles files = files(name);
        NetworkCard card = card(name, files);
        requireKind(card, false);
        DetectorWorker detector = new DetectorWorker(card, load(card, files));
        testOrClose(card, files, List.of(detector), detector::close);
        return detector;
    }

    /**
     * Runs the self-test of a network of either kind.
     *
     * @param workers threads at once; a detector has one
     * @throws NetworkUnfitException when there is no such network, or it does not pass
     */
    public SelfTestResult verify(String name, int workers) throws NetworkUnfitException {
        NetworkFiles files = files(name);
        NetworkCard card = card(name, files);
        try (Opened opened = open(card, files, workers)) {
            return selfTest(card, files).run(opened.workers());
        }
    }

    /**
     * Measures the speed of a network of either kind.
     *
     * @param workers threads at once; a detector has one
     * @param picturesPerWorker how many pictures every worker computes
     * @throws NetworkUnfitException when there is no such network, or it must not be used
     */
    public NetworkTiming time(String name, int workers, int picturesPerWorker) throws NetworkUnfitException {
        NetworkFiles files = files(name);
        NetworkCard card = card(name, files);
        try (Opened opened = open(card, files, workers)) {
            selfTest(card, files).run(opened.workers());
            return NetworkTiming.measure(card, opened.workers(), picture(card, files), picturesPerWorker);
        }
    }

    private static ByteBuffer picture(NetworkCard card, NetworkFiles files) throws NetworkUnfitException {
        List<NetworkReference> references = references(card, files);
        return references.isEmpty()
                ? ByteBuffer.allocateDirect(
                        3 * card.input().sizePx() * card.input().sizePx())
                : references.get(0).rgb();
    }

    private Opened open(NetworkCard card, NetworkFiles files, int workers) throws NetworkUnfitException {
        TensorEngine.LoadedNetwork network = load(card, files);
        if (card.readsLandmarks()) {
            LandmarkPool pool = new LandmarkPool(card, network, workers);
            return new Opened(pool.workers(), pool::close);
        }
        DetectorWorker detector = new DetectorWorker(card, network);
        return new Opened(List.of(detector), detector::close);
    }

    /** Workers of either kind and how they are closed. */
    private record Opened(List<? extends NetworkWorker> workers, Runnable closing) implements AutoCloseable {
        @Override
        public void close() {
            closing.run();
        }
    }

    private static void testOrClose(
            NetworkCard card, NetworkFiles files, List<? extends NetworkWorker> workers, Runnable closing)
            throws NetworkUnfitException {
        try {
            selfTest(card, files).run(workers);
        } catch (NetworkUnfitException | RuntimeException e) {
            closing.run();
            throw e;
        }
    }

    private static NetworkSelfTest selfTest(NetworkCard card, NetworkFiles files) throws NetworkUnfitException {
        return new NetworkSelfTest(card, references(card, files));
    }

    private static List<NetworkReference> references(NetworkCard card, NetworkFiles files)
            throws NetworkUnfitException {
        List<NetworkReference> references = new ArrayList<>();
        for (String name : card.references()) {
            references.add(NetworkReference.read(files, card, name));
        }
        return references;
    }

    private TensorEngine.LoadedNetwork load(NetworkCard card, NetworkFiles files) throws NetworkUnfitException {
        byte[] module;
        try {
            module = files.read(card.file());
        } catch (IOException e) {
            throw new NetworkUnfitException(
                    files.place() + ": " + card.file() + " cannot be read: " + e.getMessage(), e);
        }
        String found = sha256(module);
        if (!found.equals(card.sha256())) {
            throw new NetworkUnfitException(files.place() + ": " + card.file() + " is not the file that the card names:"
                    + " its SHA-256 is " + found + ", the card says " + card.sha256());
        }
        return engine.load(card, module);
    }

    private static String sha256(byte[] content) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    private static void requireKind(NetworkCard card, boolean landmarks) throws NetworkUnfitException {
        if (card.readsLandmarks() != landmarks) {
            throw new NetworkUnfitException("network " + card.name()
                    + (landmarks
                            ? " finds persons, one that reads landmarks"
                            : " reads landmarks, one that finds persons")
                    + " is wanted");
        }
    }

    private static NetworkCard card(String name, NetworkFiles files) throws NetworkUnfitException {
        String json;
        try {
            json = new String(files.read("card.json"), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new NetworkUnfitException(files.place() + ": card.json cannot be read: " + e.getMessage(), e);
        }
        NetworkCard card = NetworkCard.parse(json, files.place() + ": card.json");
        if (!card.name().equals(name)) {
            throw new NetworkUnfitException(
                    files.place() + ": card.json names the network " + card.name() + ", its folder is " + name);
        }
        return card;
    }

    private NetworkFiles files(String name) throws NetworkUnfitException {
        Map<String, NetworkFiles> all = files();
        NetworkFiles files = all.get(name);
        if (files == null) {
            throw new NetworkUnfitException(
                    "there is no network " + name + "; there are " + String.join(", ", all.keySet()));
        }
        return files;
    }

    /** A user's folder with the name of a shipped network does not hide it. */
    private Map<String, NetworkFiles> files() {
        Map<String, NetworkFiles> all = new TreeMap<>();
        if (userFolder != null) {
            try (Stream<Path> folders = Files.list(userFolder)) {
                folders.filter(Files::isDirectory)
                        .forEach(folder -> all.put(folder.getFileName().toString(), NetworkFiles.in(folder)));
            } catch (IOException e) {
                throw new UncheckedIOException("the folder of networks cannot be read: " + userFolder, e);
            }
        }
        SHIPPED.forEach(name -> all.put(name, NetworkFiles.shipped(name)));
        return all;
    }
}
