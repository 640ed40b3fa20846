/**
 * The codec of the wire format (wire-format.md): bytes to messages and back, for both ends of the
 * cable. {@code codes} and {@code values} are what messages ({@code message}) are made of, {@code
 * frame} makes bytes of them, {@code rules} is the trip arithmetic of the firmware.
 *
 * <p>It depends on nothing but the JDK, never blocks, opens nothing and knows no clock. Values are
 * immutable; {@link firstamp.protocol.frame.FrameDecoder}, {@link
 * firstamp.protocol.frame.FrameEncoder} and {@link firstamp.protocol.frame.TickUnwrapper} hold
 * state and belong to one thread each.
 */
package firstamp.protocol;
