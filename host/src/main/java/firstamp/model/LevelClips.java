package firstamp.model;

/**
 * Whether the clips of head and meter are joined to something, as the probe has read them back.
 *
 * @param head the head's pair
 * @param meter the meter's clip
 */
public record LevelClips(boolean head, boolean meter) {
  /** Both are joined, or nothing else is known. */
  public static final LevelClips JOINED = new LevelClips(true, true);
}
