/**
 * Helps to think: where a signal stops ({@code signal}), and where a wire of unknown place belongs
 * ({@code wire}).
 *
 * <p>Works on values of {@code model} alone and knows no thread, clock or screen. This package
 * itself takes from a job sheet what both searches begin with.
 */
package firstamp.locate;
