/**
 * A bench out of a file: a waveform and the front end it was recorded through, read strictly, and
 * the recorder that writes one. An error names the file, the line and the column.
 */
package firstamp.emulate.wave;
