/**
 * The cable between the emulated probe and the host: frames out, with what can go wrong on a line,
 * at the pace asked for.
 */
package firstamp.emulate.line;
