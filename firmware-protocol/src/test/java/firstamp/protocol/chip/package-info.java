/**
 * Tests of the real firmware in the simulated chip. They talk to it as a host does, through a
 * pseudo-terminal, and judge by the simulator's own record of pins and cycles.
 */
package firstamp.protocol.chip;
