package org.boardtopit.video;

import java.io.IOException;

/** A clip cannot be read or written; the message is one line that a club volunteer understands. */
public class VideoException extends IOException {
    private static final long serialVersionUID = 1L;

    public VideoException(String message) {
        super(message);
    }

    public VideoException(String message, Throwable cause) {
        super(message, cause);
    }
}
