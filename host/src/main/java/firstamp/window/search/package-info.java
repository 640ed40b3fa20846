/**
 * What the pages of the search for a lost signal and of unknown wires show, worked out from their
 * state. Depends on locate, study and the words; no Swing component. Swing thread.
 */
package firstamp.window.search;
