package org.boardtopit.cli;

import java.lang.management.ManagementFactory;

/**
 * What workers can be given.
 *
 * @param cores processors that this process may use
 * @param memoryBytes memory of the machine, or of the container
 */
record Machine(int cores, long memoryBytes) {

    static Machine here() {
        java.lang.management.OperatingSystemMXBean system = ManagementFactory.getOperatingSystemMXBean();
        long memory = system instanceof com.sun.management.OperatingSystemMXBean known
                ? known.getTotalMemorySize()
                : Runtime.getRuntime().maxMemory();
        return new Machine(Runtime.getRuntime().availableProcessors(), memory);
    }
}
