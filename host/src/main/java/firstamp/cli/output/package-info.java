/**
 * What commands print: JSON lines for scripts, sentences for people, files made whole or not at
 * all; and the exit codes. Data goes to standard output, messages to standard error.
 */
package firstamp.cli.output;
