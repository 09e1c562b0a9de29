package org.boardtopit.run;

/** A fault of the program in another process; the message is what it says of itself there. */
public final class WorkerFaultException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final String remoteTrace;

    /**
     * A fault.
     *
     * @param fault the class and message of what was thrown there
     * @param remoteTrace its trace there, perhaps not all of it
     */
    public WorkerFaultException(String fault, String remoteTrace) {
        super(fault);
        this.remoteTrace = remoteTrace;
    }

    public String remoteTrace() {
        return remoteTrace;
    }
}
