/**
 * The coder of the bench log: a series of whole numbers to bytes and back, without loss.
 *
 * <p>Linear prediction, its residuals as tokens, the tokens by their frequency. Knows no file, no
 * power-up and no thread; the layout of the bytes is in {@code schemas/log-schema.md}.
 */
package firstamp.log.code;
