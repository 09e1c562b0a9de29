package org.boardtopit.run.workers;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.boardtopit.run.RecordJson;

/**
 * What a worker says, one line each on its standard output, behind the token of the channel: native libraries print there too,
 * and their lines lack it. A line begins and ends with a line end and is short enough to be written in one piece
 * (POSIX, PIPE_BUF), so that others' output cannot get into it.
 *
 * @param kind what happened
 * @param stage of the clip, where it matters; else empty
 * @param share of the clip's work that is done, for STAGE
 * @param frames that the clip has, as far as is known, for ALIVE
 * @param text a reason or a fault, for those that have one
 * @param details the trace of a fault
 */
public record WorkerMessage(Kind kind, String stage, double share, long frames, String text, String details) {
    /** Of 4096 bytes, what is left beside the other parts. */
    private static final int LONGEST_DETAILS = 2200;

    private static final int LONGEST_TEXT = 600;

    /** What happened. */
    public enum Kind {
        /** The networks are open and tested. */
        READY,
        /** The networks must not be used; the worker ends. */
        UNFIT,
        /** A stage has begun or goes on. */
        STAGE,
        /** Frames are being read. */
        ALIVE,
        /** The result of the clip is stored, be it rows or a reason. */
        STORED,
        /** The clip cannot be measured now. */
        NOT_NOW,
        /** A fault of the program. */
        FAULT,
        /** Of the supervisor's own: the worker's output has ended. */
        ENDED
    }

    static WorkerMessage of(Kind kind) {
        return new WorkerMessage(kind, "", 0, 0, "", "");
    }

    static WorkerMessage stage(String stage, double share) {
        return new WorkerMessage(Kind.STAGE, stage, share, 0, "", "");
    }

    static WorkerMessage alive(long frames) {
        return new WorkerMessage(Kind.ALIVE, "", 0, frames, "", "");
    }

    static WorkerMessage of(Kind kind, String stage, String text, String details) {
        return new WorkerMessage(kind, stage, 0, 0, cut(text, LONGEST_TEXT), cut(details, LONGEST_DETAILS));
    }

    /** Counted as JSON in ASCII has it, where a letter may take six bytes. */
    private static String cut(String text, int longest) {
        int bytes = 0;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            bytes += c < 0x20 || c > 0x7e ? 6 : c == '"' || c == '\\' ? 2 : 1;
            if (bytes > longest) {
                return text.substring(0, i);
            }
        }
        return text;
    }

    byte[] line(String token) {
        try {
            String json = RecordJson.mapperOfRecords().writeValueAsString(this);
            return ("\n" + token + " " + json + "\n").getBytes(StandardCharsets.US_ASCII);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a message that cannot be written as JSON", e);
        }
    }

    /** The message of a line; empty for a line of somebody else. */
    static Optional<WorkerMessage> parse(String line, String token) {
        if (!line.startsWith(token + " ")) {
            return Optional.empty();
        }
        try {
            return Optional.of(
                    RecordJson.mapperOfRecords().readValue(line.substring(token.length() + 1), WorkerMessage.class));
        } catch (IOException e) {
            return Optional.empty(); // cut off by the death of the worker
        }
    }
}
