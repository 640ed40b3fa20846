package firstamp.run.questions;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.Conditions;
import firstamp.run.HandTime;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How long an answer holds. Common practice at the bench, no source. */
class AnswerBookTest {
  private static final ZoneId ZONE = ZoneId.of("Europe/Vienna");
  private static final long MINUTE = 60_000;
  private static final long HOUR = 60 * MINUTE;

  private static final Asked LINK = new Asked("floating-supply", Asked.Life.BENCH, "bench 12");
  private static final Asked JOINED = new Asked("hook-up", Asked.Life.HOOK_UP, "Larch a1");
  private static final Asked HANDS = new Asked("hands-out", Asked.Life.BODY, "Larch");

  @TempDir private Path folder;
  private final HandTime time = new HandTime();

  private AnswerBook book() {
    return AnswerBook.in(folder, time, ZONE);
  }

  @Test
  void theBenchIsAskedOncePerDayAndSupply() {
    // The hand-driven clock begins on 2026-09-21 at 16:13 in Vienna.
    AnswerBook book = book();
    book.answered(LINK);
    time.sleepMillis(7 * HOUR);
    assertThat(book.holds(LINK)).as("23:13 of the same day").isTrue();
    assertThat(book.holds(new Asked(LINK.id(), LINK.life(), "bench 24")))
        .as("another supply")
        .isFalse();
    time.sleepMillis(HOUR);
    assertThat(book.holds(LINK)).as("0:13 of the next day").isFalse();
  }

  @Test
  void whatIsJoinedIsAskedAgainAfterAnHourAndWhereSomethingChanged() {
    AnswerBook book = book();
    book.answered(JOINED);
    time.sleepMillis(HOUR - 1);
    assertThat(book.holds(JOINED)).isTrue();
    assertThat(book.holds(new Asked(JOINED.id(), JOINED.life(), "Larch b2")))
        .as("another clip")
        .isFalse();
    time.sleepMillis(1);
    assertThat(book.holds(JOINED)).as("an hour").isFalse();
    book.answered(JOINED);
    book.hookUpChanged(List.of(LINK, JOINED));
    assertThat(book.holds(JOINED)).as("the cable was out").isFalse();
  }

  @Test
  void aMovedClipSaysNothingAboutTheBench() {
    AnswerBook book = book();
    book.answered(LINK);
    book.hookUpChanged(List.of(LINK, JOINED));
    assertThat(book.holds(LINK)).isTrue();
  }

  @Test
  void handsAreAskedForEachTime() {
    AnswerBook book = book();
    book.answered(HANDS);
    assertThat(book.holds(HANDS)).isFalse();
  }

  @Test
  void theNextStartKnowsWhatWasAnsweredAndHowTheSetWasLeft() {
    Conditions left =
        new Conditions(Conditions.Load.NO_TAPE, Conditions.Volume.DOWN, Conditions.Function.STOP);
    book().answered(LINK);
    AnswerBook book = book();
    book.conditions("Larch", left);
    assertThat(book().holds(LINK)).isTrue();
    assertThat(book().answeredEpochMs(LINK)).isEqualTo(time.epochMillis());
    assertThat(book().conditions("Larch")).isEqualTo(left);
    assertThat(book().conditions("Quandel")).isEqualTo(Conditions.UNSAID);
  }

  @Test
  void aClockThatWasPutBackMakesItAskAgain() {
    AnswerBook book = book();
    book.answered(JOINED);
    time.sleepMillis(-MINUTE);
    assertThat(book.holds(JOINED)).isFalse();
  }

  @Test
  void aDamagedFileMeansOnlyThatItIsAskedAgain() throws Exception {
    book().answered(LINK);
    Files.writeString(folder.resolve("answers.json"), "{\"answeredEpochMs\":[");
    assertThat(book().holds(LINK)).isFalse();
    book().answered(LINK);
    assertThat(book().holds(LINK)).isTrue();
  }
}
