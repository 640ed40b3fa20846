/**
 * Power-ups of invented sets that share no model with the program: circuits integrated here or by
 * ngspice, voices made by a speech synthesizer, and what was built in as the truth.
 */
package firstamp.worlds;
