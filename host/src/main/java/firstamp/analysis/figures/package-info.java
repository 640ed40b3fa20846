/**
 * The figures of one power-up, collected from its stream: closing, settling, steady values, levels.
 *
 * <p>Classes that collect are fed by one thread; everything they hand out is an immutable value.
 * Results depend on nothing but what was fed, in its order, so that a replay gives the same bits.
 */
package firstamp.analysis.figures;
