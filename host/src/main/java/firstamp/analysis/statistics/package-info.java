/**
 * Statistics for few and for many values: fits, distributions, tests, uncertainty. Pure arithmetic;
 * each method names the source of its formula.
 */
package firstamp.analysis.statistics;
