package org.boardtopit.models;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** The files of one network: shipped with the program, or in a folder of the user's. */
interface NetworkFiles {

    /** Where they are, for messages. */
    String place();

    /** Content of a file, by its path below the network's own folder. */
    byte[] read(String file) throws IOException;

    static NetworkFiles shipped(String name) {
        return new NetworkFiles() {
            @Override
            public String place() {
                return "shipped network " + name;
            }

            @Override
            public byte[] read(String file) throws IOException {
                try (InputStream stream = NetworkFiles.class.getResourceAsStream(name + "/" + file)) {
                    if (stream == null) {
                        throw new FileNotFoundException(file);
                    }
                    return stream.readAllBytes();
                }
            }
        };
    }

    static NetworkFiles in(Path folder) {
        return new NetworkFiles() {
            @Override
            public String place() {
                return folder.toString();
            }

            @Override
            public byte[] read(String file) throws IOException {
                return Files.readAllBytes(folder.resolve(file));
            }
        };
    }
}
