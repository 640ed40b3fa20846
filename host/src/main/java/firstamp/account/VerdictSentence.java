package firstamp.account;

/**
 * One sentence of a verdict, or a few that belong together.
 *
 * @param importance 1 = first; from 8 on it is only a record
 * @param key of the text
 * @param rail 1 to 3, 0 = none
 * @param text as shown
 */
public record VerdictSentence(int importance, String key, int rail, String text) {}
