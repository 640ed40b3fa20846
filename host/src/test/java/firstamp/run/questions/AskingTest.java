package firstamp.run.questions;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.Conditions;
import firstamp.model.Difference;
import firstamp.model.JobSheet;
import firstamp.model.ProbeEvent;
import firstamp.run.HandTime;
import firstamp.sheet.Defaults;
import firstamp.sheet.SheetReader;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which questions are due before a set is switched on. */
class AskingTest {
  @TempDir private Path folder;
  private final HandTime time = new HandTime();

  private static JobSheet sheet(String kind, String supply) throws Exception {
    return Defaults.fill(
        SheetReader.parse(
                "sheet",
                "{\"sheet\":1,\"set\":{\"name\":\"Larch\",\"kind\":\""
                    + kind
                    + "\"},\"supply\":{\"kind\":\""
                    + supply
                    + "\",\"nominalV\":12,\"fuseA\":1}}")
            .sheet());
  }

  private Asking asking(JobSheet sheet, String label) {
    return Asking.about(AnswerBook.in(folder, time), Cautions.SHORT, sheet, label, "/dev/ttyUSB0");
  }

  private static void yesToAll(Asking asking) {
    asking.due().forEach(asking::yes);
  }

  @Test
  void everythingIsAskedTheFirstTimeAndTheHandsLast() throws Exception {
    assertThat(asking(sheet("recorder", "bench"), null).due())
        .containsExactly(
            "cautions-short", "floating-supply", "above-60", "hook-up", "tape-out", "hands-out");
    assertThat(asking(sheet("amplifier", "battery"), null).due())
        .containsExactly("cautions-short", "above-60", "hook-up", "speaker-off", "hands-out");
  }

  @Test
  void twoMinutesLaterOnTheSameBenchOnlyTheHandsAreAskedFor() throws Exception {
    yesToAll(asking(sheet("recorder", "bench"), null));
    time.sleepMillis(120_000);
    assertThat(asking(sheet("recorder", "bench"), null).due()).containsExactly("hands-out");
  }

  @Test
  void anotherLabelIsAnotherWire() throws Exception {
    yesToAll(asking(sheet("recorder", "bench"), "W3 to P7"));
    assertThat(asking(sheet("recorder", "bench"), "W3 to P2").due())
        .containsExactly("above-60", "hook-up", "tape-out", "hands-out");
  }

  @Test
  void aTapeThatMayBeErasedIsAskedAboutUntilItIsOut() throws Exception {
    JobSheet sheet = sheet("recorder", "bench");
    AnswerBook book = AnswerBook.in(folder, time);
    book.conditions("Larch", new Conditions(Conditions.Load.OWN_TAPE, null, null));
    yesToAll(asking(sheet, null));
    assertThat(asking(sheet, null).due()).as("each time").contains("tape-out");
    book.conditions("Larch", new Conditions(Conditions.Load.NO_TAPE, null, null));
    assertThat(asking(sheet, null).due()).doesNotContain("tape-out");
  }

  @Test
  void aTapeThatWasOutAnHourAgoIsAskedAboutAgain() throws Exception {
    JobSheet sheet = sheet("recorder", "bench");
    AnswerBook.in(folder, time)
        .conditions(
            "Larch", new Conditions(Conditions.Load.NO_TAPE, null, Conditions.Function.RECORD));
    assertThat(asking(sheet, null).due()).doesNotContain("tape-out");
    time.sleepMillis(3_600_000);
    Asking later = asking(sheet, null);
    assertThat(later.due()).contains("tape-out");
    assertThat(later.conditions().load()).as("still shown").isEqualTo(Conditions.Load.NO_TAPE);
  }

  @Test
  void aSilencedAmplifierIsNotAskedAboutItsLoudspeaker() throws Exception {
    JobSheet sheet = sheet("amplifier", "bench");
    AnswerBook book = AnswerBook.in(folder, time);
    book.conditions(
        "Larch", new Conditions(Conditions.Load.DUMMY_LOAD, Conditions.Volume.DOWN, null));
    assertThat(asking(sheet, null).due()).doesNotContain("speaker-off");
    book.conditions(
        "Larch", new Conditions(Conditions.Load.DUMMY_LOAD, Conditions.Volume.UP, null));
    assertThat(asking(sheet, null).due()).contains("speaker-off");
  }

  @Test
  void aMovedClipOrAWireAsksAgainWhatIsJoined() throws Exception {
    Asking asking = asking(sheet("recorder", "bench"), null);
    ArmGate gate = new ArmGate(asking, List.of());
    gate.clips(Set.of(3));
    yesToAll(asking);
    gate.renew();
    assertThat(asking.due()).containsExactly("hands-out");
    gate.clips(Set.of(2, 3));
    assertThat(asking.due()).contains("hook-up");
    yesToAll(asking);
    gate.again(new ProbeEvent.SwitchedOnAgain(0, 7, Difference.LIMIT, 0, null, null));
    assertThat(asking.due()).as("a limit is no wire").containsExactly("hands-out");
    gate.again(new ProbeEvent.SwitchedOnAgain(0, 7, Difference.WIRE, 0, null, null));
    assertThat(asking.due()).contains("hook-up");
  }

  @Test
  void whatWasToldGoesIntoTheStreamWithTheTimeOfItsAnswer() throws Exception {
    JobSheet sheet = sheet("recorder", "bench");
    Conditions left = new Conditions(Conditions.Load.BLANK_TAPE, null, Conditions.Function.PLAY);
    AnswerBook.in(folder, time).conditions("Larch", left);
    ArmGate first = new ArmGate(asking(sheet, null), List.of());
    long then = time.epochMillis();
    first.questions().forEach(each -> first.yes(each.id()));
    time.sleepMillis(60_000);
    ArmGate gate = new ArmGate(asking(sheet, null), List.of());
    gate.yes(Asking.HANDS_OUT);
    ProbeEvent.SwitchedOnAgain again =
        new ProbeEvent.SwitchedOnAgain(0, 7, Difference.NOTHING, 1, 820.0, null);
    gate.again(again);
    assertThat(gate.open()).isTrue();
    assertThat(gate.told(5))
        .contains(
            new ProbeEvent.ConditionsSaid(5, left),
            new ProbeEvent.Answered(5, "floating-supply", then),
            new ProbeEvent.SwitchedOnAgain(5, 7, Difference.NOTHING, 1, 820.0, null));
    assertThat(gate.told(6)).as("once").noneMatch(ProbeEvent.SwitchedOnAgain.class::isInstance);
  }
}
