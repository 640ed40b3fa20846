package firstamp.log;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.ClipInput;
import firstamp.model.ClipMove;
import firstamp.model.ClipMove.Act;
import firstamp.model.Happening;
import firstamp.model.Happening.Mode;
import firstamp.model.Happening.RecordState;
import firstamp.model.Happening.StepState;
import org.junit.jupiter.api.Test;

/** What marks of before meant, phrase by phrase as that version wrote or took them. */
final class SpokenMarksTest {
  private static void means(String text, Happening expected) {
    assertThat(SpokenMarks.meaning(text)).as(text).isEqualTo(expected);
  }

  @Test
  void theClipAndTheContacts() {
    means(
        "clip on driver out, switched to record, meter input",
        ClipMove.at(Act.HELD, "driver out", "record", ClipInput.METER));
    means("clip on P1, head input", ClipMove.at(Act.HELD, "P1", null, ClipInput.HEAD));
    means("clip on C4 leg", ClipMove.at(Act.HELD, "C4 leg", null, null));
    means("clip off", ClipMove.of(Act.OFF));
    means("worked once: S2, meter input", ClipMove.at(Act.STROKE, "S2", null, ClipInput.METER));
    means("to be tapped: J3, meter input", ClipMove.at(Act.RESTING, "J3", null, ClipInput.METER));
    means("tapping", ClipMove.of(Act.TOUCHED));
    means("tapping ended", ClipMove.of(Act.LEFT));
    means(
        "signal there at meter, switched to record",
        ClipMove.at(Act.THERE, "meter", "record", null));
    means("signal gone at head", ClipMove.at(Act.GONE, "head", null, null));
    means(
        "level typed at driver out, switched to record: dBV -4.2",
        ClipMove.typed("driver out", "record", -4.2));
    means("taken back", ClipMove.of(Act.BACK));
    means("mended: J1", ClipMove.at(Act.MENDED, "J1", null, null));
  }

  @Test
  void modesStepsAndRecording() {
    means("mode: soak", new Happening.ModeSet(Mode.SOAK));
    means("mode: usual", new Happening.ModeSet(Mode.USUAL));
    means("mode: hands in", new Happening.ModeSet(Mode.HANDS_IN));
    means("soak: the time is over", new Happening.ModeSet(Mode.SOAK_OVER));
    means("step 1 of 4: 3 V, at most 50 mA", step(1, StepState.BEGUN, "3 V, at most 50 mA"));
    means("step 4 of 4 settled: 12 V, 1 mA", step(4, StepState.SETTLED, "12 V, 1 mA"));
    means("step 2 of 4 stopped: too much", step(2, StepState.STOPPED, "too much"));
    means("now Record ON, tape out", new Happening.Recording(RecordState.ON));
    means("record off", new Happening.Recording(RecordState.OFF));
  }

  private static Happening step(int number, StepState state, String text) {
    return new Happening.Step(number, 4, state, text);
  }

  /** Each of them began a stretch, whatever it said. */
  @Test
  void everythingElseWasAChange() {
    for (String text :
        new String[] {
          "",
          "lamp on",
          "Clip on C4",
          "clip off now",
          "clipon",
          "MODE: soak",
          "mode: soak ",
          "step 1 of many: x",
          "level typed at P2: dBV loud",
          "level typed at P2: dBV 900",
          "all steps are done"
        }) {
      means(text, new Happening.SetChanged(text));
    }
  }
}
