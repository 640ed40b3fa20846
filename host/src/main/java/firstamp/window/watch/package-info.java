/** The page on which a set is watched, its cards, its controls and its keys. */
package firstamp.window.watch;
