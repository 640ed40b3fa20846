package firstamp.cli.output;

/** Small help for messages that are put together. */
public final class Sentences {
  private Sentences() {}

  /** With a full stop behind it, unless something else ends it already. */
  public static String ended(String text) {
    String bare = text.strip();
    String lastLine = bare.substring(bare.lastIndexOf('\n') + 1);
    if (lastLine.startsWith(" ")) {
      // The end of a list.
      return bare;
    }
    if (bare.isEmpty() || ".?!:`".indexOf(bare.charAt(bare.length() - 1)) >= 0) {
      return bare;
    }
    return bare + ".";
  }
}
