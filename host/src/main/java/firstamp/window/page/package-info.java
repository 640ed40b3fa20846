/** What a page of the window is, which keys it gets and what it may ask of the window. */
package firstamp.window.page;
