package firstamp.analysis.spectrum;

import firstamp.model.samples.LevelWindow;

/**
 * A window of levels with its details.
 *
 * @param window of levels
 * @param detail of the same window; null = not told
 */
public record LevelPair(LevelWindow window, LevelDetail detail) {}
