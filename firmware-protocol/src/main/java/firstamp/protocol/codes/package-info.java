/**
 * What stands on the wire as a number: each kind, state, cause and reason with its code, as the
 * tables of wire-format.md list them.
 */
package firstamp.protocol.codes;
