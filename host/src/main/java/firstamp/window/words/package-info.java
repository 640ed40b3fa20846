/** The window's words in one language, and stored sentences said in it. No Swing. */
package firstamp.window.words;
