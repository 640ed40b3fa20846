package firstamp.window.watch;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.PedalJob;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The one job of a pedal; times are handed in. */
class PedalTest implements Pedal.Foot {
  private final List<String> done = new ArrayList<>();
  private final Pedal pedal = new Pedal(this);
  private boolean counting;
  private boolean fed;

  @Override
  public void off() {
    done.add("off");
    fed = false;
  }

  @Override
  public void mark() {
    done.add("mark");
  }

  @Override
  public boolean counting() {
    return counting;
  }

  @Override
  public boolean fed() {
    return fed;
  }

  private void stamp(long at) {
    pedal.pressed(at);
    pedal.released(at + 80);
    pedal.tick(at + 200);
  }

  @Test
  void withoutAChoiceAStampSwitchesOffWhenTheFootComesDown() {
    pedal.pressed(0);
    assertThat(done).as("before it is let go").containsExactly("off");
    pedal.released(80);
    pedal.tick(200);
    assertThat(done).containsExactly("off");
  }

  @Test
  void asMarkATapIsAMark() {
    pedal.job(PedalJob.MARK);
    pedal.pressed(0);
    pedal.released(120);
    pedal.tick(140);
    assertThat(done).as("a repeat may still come").isEmpty();
    pedal.tick(200);
    assertThat(done).containsExactly("mark");
  }

  @Test
  void asMarkItSwitchesOffHeldStillAndWithoutBeingLetGo() {
    pedal.job(PedalJob.MARK);
    pedal.pressed(0);
    pedal.tick(590);
    assertThat(done).isEmpty();
    pedal.tick(610);
    pedal.tick(2000);
    pedal.released(2100);
    pedal.tick(2200);
    assertThat(done).containsExactly("off");
  }

  @Test
  void asMarkAStampStopsACountdown() {
    pedal.job(PedalJob.MARK);
    counting = true;
    stamp(0);
    assertThat(done).containsExactly("off");
  }

  @Test
  void aKeyThatRepeatsAsPressesIsHeld() {
    pedal.job(PedalJob.MARK);
    for (long at = 0; at <= 900; at += 30) {
      pedal.pressed(at);
    }
    assertThat(done).containsExactly("off");
  }

  @Test
  void aKeyThatRepeatsAsReleasesAndPressesIsHeldToo() {
    pedal.job(PedalJob.MARK);
    for (long at = 0; at <= 900; at += 30) {
      pedal.pressed(at);
      pedal.released(at + 28);
      pedal.tick(at + 29);
    }
    assertThat(done).containsExactly("off");
  }

  @Test
  void heldToRunLettingGoSwitchesOff() {
    pedal.job(PedalJob.HOLD_TO_RUN);
    pedal.pressed(0);
    fed = true;
    for (long at = 30; at < 3000; at += 30) {
      pedal.released(at);
      pedal.pressed(at + 2);
      pedal.tick(at + 10);
    }
    assertThat(done).as("repeats of a held key").isEmpty();
    pedal.released(3000);
    pedal.tick(3030);
    assertThat(done).isEmpty();
    pedal.tick(3045);
    assertThat(done).containsExactly("off");
  }

  @Test
  void heldToRunNothingRunsWithoutTheFoot() {
    pedal.job(PedalJob.HOLD_TO_RUN);
    fed = true;
    pedal.tick(10);
    assertThat(done).containsExactly("off");
  }

  @Test
  void heldToRunAFootThatTheWindowCannotSeeAnyMoreIsNone() {
    pedal.job(PedalJob.HOLD_TO_RUN);
    pedal.pressed(0);
    fed = true;
    pedal.lost();
    assertThat(done).containsExactly("off");
  }

  @Test
  void twoTapsAreTwoMarks() {
    pedal.job(PedalJob.MARK);
    stamp(0);
    stamp(300);
    assertThat(done).containsExactly("mark", "mark");
  }
}
