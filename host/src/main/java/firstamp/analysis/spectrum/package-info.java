/**
 * Levels and lines of head, meter and rails: transforms, windows, bands, ripple, hum. Each method
 * names the source of its formula.
 */
package firstamp.analysis.spectrum;
