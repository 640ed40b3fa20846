/**
 * What the emulated probe is joined to: the voltages and currents at its terminals, the hands of
 * the person at the bench, and the front end that turns them into what the converter sees.
 */
package firstamp.emulate.bench;
