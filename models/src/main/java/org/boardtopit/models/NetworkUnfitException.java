package org.boardtopit.models;

/**
 * A network must not be used: its file is not the one its card names, it cannot be loaded, or it computes something else
 * than its stored references on this machine. The message is one line that says which network and what was found.
 */
public class NetworkUnfitException extends Exception {
    private static final long serialVersionUID = 1L;

    public NetworkUnfitException(String message) {
        super(message);
    }

    public NetworkUnfitException(String message, Throwable cause) {
        super(message, cause);
    }
}
