package firstamp.sheet;

import java.util.Collection;

/** Finds the known word that somebody most likely meant. */
public final class SpellingSuggestion {
  private SpellingSuggestion() {}

  /** The word with the smallest edit distance, upper and lower case alike; the first of equals. */
  public static String to(String word, Collection<String> known) {
    String best = "";
    int smallest = Integer.MAX_VALUE;
    for (String candidate : known) {
      int distance = distance(word.toLowerCase(java.util.Locale.ROOT), lower(candidate));
      if (distance < smallest) {
        smallest = distance;
        best = candidate;
      }
    }
    return best;
  }

  /** Fewest letters by which two words differ, upper and lower case alike. */
  public static int letters(String one, String other) {
    return distance(lower(one), lower(other));
  }

  private static String lower(String word) {
    return word.toLowerCase(java.util.Locale.ROOT);
  }

  /** Fewest single letters to insert, delete or replace (Levenshtein). */
  static int distance(String one, String other) {
    int[] row = new int[other.length() + 1];
    for (int k = 0; k <= other.length(); k++) {
      row[k] = k;
    }
    for (int i = 1; i <= one.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int k = 1; k <= other.length(); k++) {
        int above = row[k];
        int replaced = diagonal + (one.charAt(i - 1) == other.charAt(k - 1) ? 0 : 1);
        row[k] = Math.min(replaced, Math.min(above, row[k - 1]) + 1);
        diagonal = above;
      }
    }
    return row[other.length()];
  }
}
