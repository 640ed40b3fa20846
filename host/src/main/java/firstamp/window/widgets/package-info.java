/** Parts that pages are put together from, the theme, and what is needed to draw. */
package firstamp.window.widgets;
