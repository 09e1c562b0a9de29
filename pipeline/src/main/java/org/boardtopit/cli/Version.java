package org.boardtopit.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;
import picocli.CommandLine.IVersionProvider;

/** The version of this program, which the build writes into a file beside this class. */
final class Version implements IVersionProvider {
    private static final String FILE = "program.properties";

    static String number() {
        Properties properties = new Properties();
        try (InputStream in = Version.class.getResourceAsStream(FILE)) {
            if (in == null) {
                throw new IllegalStateException(FILE + " is missing in the program");
            }
            properties.load(in);
        } catch (IOException e) {
            throw new UncheckedIOException(FILE + " cannot be read", e);
        }
        return properties.getProperty("version");
    }

    @Override
    public String[] getVersion() {
        return new String[] {
            "Board to Pit " + number(),
            "Java " + Runtime.version() + " on " + System.getProperty("os.name") + " " + System.getProperty("os.arch")
        };
    }
}
