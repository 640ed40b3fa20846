/**
 * A stretch of a power-up's stream in memory: conversions, readings and their lowest, highest and
 * mean over buckets, to chunks and back. Knows no file; the coder is in {@code log.code}.
 */
package firstamp.log.stream;
