/**
 * Live power-ups and replays begun by a command, in the window or without it, and their options.
 */
package firstamp.cli.run;
