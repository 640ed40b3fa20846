package firstamp.run;

/**
 * A job sheet as the log keeps it.
 *
 * @param setName name of the set
 * @param given as the person wrote it
 * @param effective with defaults filled in
 */
public record SheetTexts(String setName, String given, String effective) {}
