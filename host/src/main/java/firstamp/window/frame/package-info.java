/**
 * What is round every page while a switch is closed or may close: header, sentence, figures, OFF;
 * and the one place where keys come in.
 */
package firstamp.window.frame;
