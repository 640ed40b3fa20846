/**
 * One live power-up, from the first hello to the last conversion: connects, asks, arms, watches,
 * switches off, logs.
 *
 * <p>One thread, named {@code session} (headless: the main thread), reads the port, decodes,
 * applies the rules and answers the probe; it never waits for the disk or for the screen. Other
 * threads see immutable values and leave commands.
 */
package firstamp.run;
