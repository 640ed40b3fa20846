/**
 * A bench supply with a port, spoken to by standard commands alone (SCPI-1999 over IEEE 488.2
 * messages): volts, current limit, output.
 *
 * <p>May use {@code model} and {@code model.text}. {@link firstamp.supply.BenchSupply} has a thread
 * of its own, {@code supply}, that waits for answers; nobody else does. Whatever goes wrong ends in
 * the command to switch the output off.
 */
package firstamp.supply;
