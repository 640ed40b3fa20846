/**
 * The codec of the wire format (wire-format.md): bytes to messages and back, for both ends of the
 * cable.
 *
 * <p>It depends on nothing but the JDK, never blocks, opens nothing and knows no clock. Values are
 * immutable; {@link firstamp.protocol.FrameDecoder}, {@link firstamp.protocol.FrameEncoder} and
 * {@link firstamp.protocol.TickUnwrapper} hold state and belong to one thread each.
 */
package firstamp.protocol;
