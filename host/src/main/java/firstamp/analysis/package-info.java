/**
 * What a power-up says, as arithmetic: levels, ripple, settling, fits, comparisons, findings.
 *
 * <p>Works on values of {@code model} alone and knows no thread, clock, file or screen. Classes
 * that collect are fed by one thread; everything they hand out is an immutable value. All results
 * depend on nothing but what was fed, in its order, so that a replay gives the same bits:
 * elementary functions come from {@link StrictMath}.
 */
package firstamp.analysis;
