package firstamp.window.pages;

import firstamp.model.Conditions;
import firstamp.window.widgets.Pieces;
import firstamp.window.words.Words;
import java.util.List;
import javax.swing.JButton;
import javax.swing.JComponent;

/**
 * Three chips before a power-up: tape or loudspeaker, volume, function switch. Each press goes on
 * to the next thing that can be said, after the last one nothing is said again. Swing thread only.
 */
final class LeftChips {
  private final Words words;
  private final String kind;
  private final Runnable changed;
  private final JButton load;
  private final JButton volume;
  private final JButton function;
  private Conditions now = Conditions.UNSAID;
  private boolean touched;

  /**
   * The chips, nothing said yet.
   *
   * @param setKind of the set: a recorder has a tape, anything else a loudspeaker
   * @param changed done after each press
   */
  LeftChips(Pieces pieces, Words words, String setKind, Runnable changed) {
    this.words = words;
    this.kind = setKind;
    this.changed = changed;
    load = pieces.plain("ready.load", () -> press(1));
    volume = pieces.plain("ready.volume", () -> press(2));
    function = pieces.plain("ready.function", () -> press(3));
    tell();
  }

  List<JComponent> buttons() {
    return List.of(load, volume, function);
  }

  Conditions conditions() {
    return now;
  }

  /** Whether the person has said something on this page. */
  boolean touched() {
    return touched;
  }

  /** As the set was left the last time; what was said meanwhile stays. */
  void remember(Conditions last) {
    if (!touched) {
      now = last;
      tell();
    }
  }

  /** The next thing that can be said of the first, second or third chip. */
  void press(int chip) {
    touched = true;
    now =
        switch (chip) {
          case 1 ->
              new Conditions(
                  next(Conditions.Load.of(kind), now.load()), now.volume(), now.function());
          case 2 ->
              new Conditions(
                  now.load(),
                  next(List.of(Conditions.Volume.values()), now.volume()),
                  now.function());
          default ->
              new Conditions(
                  now.load(), now.volume(), next(Conditions.Function.of(kind), now.function()));
        };
    tell();
    changed.run();
  }

  private static <T> T next(List<T> all, T said) {
    int at = said == null ? 0 : all.indexOf(said) + 1;
    return at < all.size() ? all.get(at) : null;
  }

  private void tell() {
    String tapeOrSpeaker = "recorder".equals(kind) ? "tape" : "speaker";
    say(load, "load." + (now.load() == null ? tapeOrSpeaker : now.load().id()));
    say(volume, "volume." + (now.volume() == null ? "unsaid" : now.volume().id()));
    say(function, "function." + (now.function() == null ? "unsaid" : now.function().id()));
  }

  private void say(JButton chip, String key) {
    String text = words.get("left." + key);
    chip.setText(text);
    chip.getAccessibleContext().setAccessibleName(text);
  }
}
