/**
 * The strips over one time axis, the row of figures and the picture of a trip: made and painted.
 */
package firstamp.window.strips;
