/** What the converter gives and what one count of it means: conversions, readings, zero, scales. */
package firstamp.model.samples;
