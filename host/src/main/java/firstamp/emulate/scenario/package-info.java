/**
 * The invented sets and what happens to them. Names of scenarios occur here and in the list of
 * {@code emulate} alone.
 */
package firstamp.emulate.scenario;
