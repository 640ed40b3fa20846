/**
 * One power-up as a page to keep: a single HTML file with its charts as SVG inside, that asks for
 * nothing from outside and escapes every text it is given.
 *
 * <p>May use {@code model} and {@code analysis}, JFreeChart to paint and Batik to write SVG. Pure:
 * the same input gives the same page. Any thread.
 */
package firstamp.report;
