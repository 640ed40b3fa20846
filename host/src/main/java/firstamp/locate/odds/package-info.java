/**
 * Odds and information: pure arithmetic, kept in logs, with elementary functions from {@link
 * StrictMath}, so that the same list of readings gives the same bits. People read words ({@link
 * firstamp.locate.odds.OddsWord}), never percentages.
 */
package firstamp.locate.odds;
