/**
 * Helps to think: where a signal stops, and where a wire of unknown place belongs.
 *
 * <p>Works on values of {@code model} alone and knows no thread, clock or screen. A state is a list
 * of what the person said and measured; everything else follows from it, so that the same list
 * gives the same bits: elementary functions come from {@link StrictMath}. Odds are kept in logs.
 * Shares between 0 and 1 are for machines; people read words ({@link firstamp.locate.OddsWord}).
 */
package firstamp.locate;
