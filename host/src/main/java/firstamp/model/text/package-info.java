/** Text in and out, for every other package: numbers, sentences of a bundle, strict JSON fields. */
package firstamp.model.text;
