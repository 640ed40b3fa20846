/**
 * The command line: reads options, starts a session, prints what it finds, ends with a documented
 * exit code.
 *
 * <p>Data goes to standard output, messages to standard error; the only package that uses them.
 * Runs on the main thread.
 */
package firstamp.cli;
