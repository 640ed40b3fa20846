/**
 * One power-up, live or replayed: the same stream of conversions, readings and events through the
 * same rules, analysis and log.
 *
 * <p>One thread, named {@code session}, reads the port, decodes, applies the rules and answers the
 * probe; it never waits for the disk or for the screen. Other threads see immutable snapshots and
 * leave commands. May use everything but {@code report}, {@code cli} and {@code window}.
 */
package firstamp.session;
