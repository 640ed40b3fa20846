package firstamp.window.frame;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class SentenceBarTest {
  private static final String SENTENCE = "A short: take off the wire that was joined last.";

  /** A sentence that is cut must not read as if it were whole. */
  @Test
  void aLineThatLostItsEndSaysSoAtEveryWidth() {
    for (int room = 12; room < SENTENCE.length(); room++) {
      String line = SentenceBar.oneLine(SENTENCE, room, String::length);
      assertThat(line).as("room for %d", room).endsWith(" \u2026").hasSizeLessThanOrEqualTo(room);
      assertThat(SENTENCE).startsWith(line.substring(0, line.length() - 2) + " ");
    }
    assertThat(SentenceBar.oneLine(SENTENCE, SENTENCE.length(), String::length))
        .isEqualTo(SENTENCE);
  }
}
