package firstamp.log;

/**
 * Whether what comes is being written.
 *
 * @param logging false: it waits in memory
 * @param text what is wrong and what to do; empty when all is well
 */
public record LogState(boolean logging, String text) {}
