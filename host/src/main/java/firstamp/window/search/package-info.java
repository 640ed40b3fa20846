/**
 * The search for a lost signal and wires of unknown place: the two pages, their parts, and what
 * they show, worked out from the state of the search. Swing thread.
 */
package firstamp.window.search;
