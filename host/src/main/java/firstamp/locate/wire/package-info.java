/**
 * Where a wire of unknown place belongs: clues, readings, trials, and the next step, least harm
 * first. A state is a list of what the person saw, checked or tried; everything else follows from
 * it.
 */
package firstamp.locate.wire;
