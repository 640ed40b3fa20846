/**
 * Values over time, reading by reading, and what can be told of them at once: lowest, highest, a
 * sum that notices a shift. Knows no rule.
 */
package firstamp.alarm.trail;
