package firstamp.locate.wire;

import firstamp.model.text.UnfitValue;
import firstamp.model.text.Worded;

/** Why a wire, a place or a step is refused, before any language. */
final class WireRefusals {
  private WireRefusals() {}

  static UnfitValue of(String key, Object... values) {
    return new UnfitValue(Worded.of("firstamp.locate.wires", "refused." + key, values));
  }
}
