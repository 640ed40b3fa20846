/**
 * Turns a snapshot into what the window says, free of Swing and without state: the same snapshot,
 * the same words.
 */
package firstamp.window.present;
