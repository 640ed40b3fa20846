/**
 * The bench log: one SQLite file that keeps every conversion, reading and event of every power-up,
 * and gives them back in the order in which they came.
 *
 * <p>The only package that sees JDBC; uses {@code firstamp.model} alone. One thread per open
 * power-up writes ({@link firstamp.log.PowerUpWriter}); readers have connections of their own. The
 * layout of the file is in {@code schemas/log-schema.md}.
 */
package firstamp.log;
