/**
 * Tests of the hardware guide: drawings, parts list and netlists say the same, and the circuit
 * simulator finds what the guide promises. They read {@code hardware/} and need ngspice or python3,
 * which are skipped with a warning where they are missing.
 */
package firstamp.hardware;
