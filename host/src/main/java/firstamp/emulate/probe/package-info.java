/**
 * The emulated probe's machine: converter, look, limiter, zero, commands and stream. It decides in
 * the same integers as the firmware and takes time from what it is fed.
 */
package firstamp.emulate.probe;
