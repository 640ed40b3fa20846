/**
 * Rules of the host: what is wrong with the set, in plain words.
 *
 * <p>Pure: the same stream of events and readings gives the same alarms at the same times, live and
 * in a replay. Asks no clock, does no input or output, starts no thread; may use only {@code
 * model}. Runs on the thread that delivers the stream.
 */
package firstamp.alarm;
