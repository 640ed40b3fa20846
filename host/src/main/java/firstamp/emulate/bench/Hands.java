package firstamp.emulate.bench;

/** What a person's hands do at a bench apart from switching; an emulated one has none. */
public interface Hands {
  /** Nothing can be moved. */
  Hands NONE = new Hands() {};

  /**
   * Puts a clip on a point of the path.
   *
   * @param point by name
   * @param mode position of the switches
   * @param headInput whether it is the head's clip, else the meter's
   */
  default void clipOn(String point, String mode, boolean headInput) {}

  /** Puts the clip back where it was. */
  default void clipOff() {}

  /** Works a contact once. */
  default void work(String joint) {}

  /** Taps and flexes a joint, or leaves it alone again. */
  default void touch(String joint, boolean now) {}
}
