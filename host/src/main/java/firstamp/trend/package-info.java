/**
 * The quantities of one power-up over time, as lowest, highest and mean per bucket, for drawing:
 * kept in memory while it runs, read from the log afterwards. Never waits for the disk on the
 * drawing thread.
 */
package firstamp.trend;
