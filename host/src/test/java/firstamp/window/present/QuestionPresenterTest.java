package firstamp.window.present;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.log.LogException;
import firstamp.log.LogState;
import firstamp.model.text.Worded;
import firstamp.run.questions.ArmGate;
import firstamp.run.questions.OpenQuestion;
import firstamp.window.present.BenchView.QuestionView;
import firstamp.window.words.Words;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The question that comes up when the bench log cannot be written before switching on. */
class QuestionPresenterTest {
  private static QuestionView view(Locale locale, LogException.Kind kind) {
    LogException failed = new LogException(kind, Worded.asIs("of a test"), null);
    Worded text = LogState.trouble(failed, Path.of("bench.db")).text();
    return new QuestionPresenter(new Words(locale))
        .view(new OpenQuestion(ArmGate.NOT_LOGGING, text), null);
  }

  @ParameterizedTest
  @EnumSource(LogException.Kind.class)
  void everyCauseIsToldInBothLanguages(LogException.Kind kind) {
    QuestionView english = view(Locale.ENGLISH, kind);
    assertThat(english.title()).endsWith("Switch on without it?");
    assertThat(english.lines()).hasSize(2);
    assertThat(english.lines().get(0)).contains("bench.db").endsWith(".");
    QuestionView german = view(Locale.GERMAN, kind);
    assertThat(german.title()).endsWith("Trotzdem einschalten?");
    assertThat(german.lines().get(0))
        .contains("bench.db")
        .endsWith(".")
        .doesNotContain("Close")
        .doesNotContain("waits")
        .doesNotContain("disk")
        .doesNotContain("start again");
    assertThat(german.yes()).doesNotContain("Switch");
  }
}
