package firstamp.cli.run;

import firstamp.model.text.UnfitValue;
import firstamp.model.text.Worded;
import java.util.List;
import java.util.Map;

/** Names as somebody types them at a bench: capitals do not matter. */
public final class Names {
  private Names() {}

  /**
   * The known name that is meant.
   *
   * @param what kind of name, for the message
   * @param typed null = none was typed
   * @throws IllegalArgumentException there is no such name; says which is nearest
   */
  public static String of(Worded what, String typed, List<String> known) {
    if (typed == null || known.contains(typed)) {
      return typed;
    }
    List<String> alike = known.stream().filter(typed.strip()::equalsIgnoreCase).toList();
    if (alike.size() == 1) {
      return alike.get(0);
    }
    throw new UnfitValue(NameChoice.text(what, typed, Map.of("", known)));
  }
}
