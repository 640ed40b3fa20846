package firstamp.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class SleepInhibitorTest {
  private final List<String> done = new ArrayList<>();

  private SleepInhibitor.Starter starter(boolean endsAtOnce) {
    return command -> {
      done.add("start " + command.get(0));
      return new SleepInhibitor.Child() {
        private boolean alive = !endsAtOnce;

        @Override
        public boolean alive() {
          return alive;
        }

        @Override
        public void end() {
          alive = false;
          done.add("end");
        }

        @Override
        public boolean endedWithin(long ms) {
          return !alive;
        }
      };
    };
  }

  @Test
  void startsOnceAndEnds() {
    SleepInhibitor keeper = new SleepInhibitor(starter(false), List.of("tool"));
    keeper.keep();
    keeper.keep();
    keeper.let();
    keeper.let();
    assertThat(done).containsExactly("start tool", "end");
    assertThat(keeper.problem()).isNull();
  }

  @Test
  void saysThatTheToolEndedAtOnce() {
    SleepInhibitor keeper = new SleepInhibitor(starter(true), List.of("tool"));
    keeper.keep();
    assertThat(keeper.problem().english())
        .isEqualTo("tool ended at once and does not keep the computer awake.");
  }

  @Test
  void saysThatTheToolIsMissing() {
    SleepInhibitor keeper =
        new SleepInhibitor(
            command -> {
              throw new IOException("no such file");
            },
            List.of("tool"));
    keeper.keep();
    assertThat(keeper.problem().english()).startsWith("tool is missing: ");
  }

  @Test
  void saysThatNoToolIsKnown() {
    SleepInhibitor keeper =
        new SleepInhibitor(starter(false), SleepInhibitor.commandFor("Plan", 1));
    keeper.keep();
    assertThat(keeper.problem().english())
        .isEqualTo("On this system Firstamp cannot keep the computer awake.");
    assertThat(done).isEmpty();
  }

  @Test
  void endsWithThisProcessOnEverySystem() {
    assertThat(SleepInhibitor.commandFor("Linux", 4711)).contains("systemd-inhibit", "--pid=4711");
    assertThat(SleepInhibitor.commandFor("Mac OS X", 4711)).contains("caffeinate", "4711");
    assertThat(String.join(" ", SleepInhibitor.commandFor("Windows 11", 4711)))
        .contains("SetThreadExecutionState(2147483651)", "Wait-Process -Id 4711");
  }
}
