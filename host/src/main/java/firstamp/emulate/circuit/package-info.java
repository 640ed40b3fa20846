/**
 * A bench that is calculated: supply, limiter, reservoir, load and signal path of an invented set,
 * as its values and its script say.
 */
package firstamp.emulate.circuit;
