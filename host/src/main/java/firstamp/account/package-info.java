/**
 * The account of a power-up: its figures turned into a verdict, and compared with those of another
 * one. Sentences come from {@code account/verdict.properties}, names of figures from {@code
 * account/figures.properties}.
 *
 * <p>Works on figures of {@code analysis} alone; knows no thread, clock, file or screen.
 */
package firstamp.account;
