package firstamp.sound;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.model.Priority;
import firstamp.model.TimeSource;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AlarmSoundTest {
  private static final long SECOND = 1_000_000_000L;

  private static Alarm alarm(int number, Priority priority, AlarmState state, int foldedUnder) {
    return new Alarm(
        number,
        "short",
        0,
        null,
        10,
        5,
        10,
        priority,
        state,
        1.0,
        false,
        2.5,
        "ohm",
        "The set draws like a short: 1 ohm.",
        foldedUnder);
  }

  private static Alarm raised(int number, Priority priority) {
    return alarm(number, priority, AlarmState.UNACKNOWLEDGED, 0);
  }

  private static List<Tune> all(SoundDesk desk, long now) {
    List<Tune> tunes = new ArrayList<>();
    for (Tune tune = desk.next(now); tune != null; tune = desk.next(now)) {
      tunes.add(tune);
    }
    return tunes;
  }

  @Test
  void theHighestIsRepeatedUntilItIsSeen() {
    SoundDesk desk = new SoundDesk(false);
    desk.alarm(raised(1, Priority.HIGH), 0);
    assertThat(all(desk, 0)).containsExactly(Tune.HIGH);
    assertThat(all(desk, 2 * SECOND)).isEmpty();
    assertThat(all(desk, 3 * SECOND)).containsExactly(Tune.HIGH);
    desk.alarm(alarm(1, Priority.HIGH, AlarmState.CLEARED_UNACKNOWLEDGED, 0), 4 * SECOND);
    assertThat(all(desk, 6 * SECOND)).as("gone, and not seen").containsExactly(Tune.HIGH);
    desk.alarm(alarm(1, Priority.HIGH, AlarmState.CLEARED, 0), 7 * SECOND);
    assertThat(all(desk, 60 * SECOND)).isEmpty();
  }

  @Test
  void theOthersAreHeardOnce() {
    SoundDesk desk = new SoundDesk(false);
    desk.alarm(raised(1, Priority.MEDIUM), 0);
    desk.alarm(raised(2, Priority.LOW), 0);
    assertThat(all(desk, 0)).containsExactly(Tune.MEDIUM, Tune.LOW);
    assertThat(all(desk, 60 * SECOND)).isEmpty();
  }

  @Test
  void theHighestGoesFirstAndTheLowerOnesAreNotWaitedFor() {
    SoundDesk desk = new SoundDesk(false);
    desk.alarm(raised(1, Priority.LOW), 0);
    desk.alarm(raised(2, Priority.MEDIUM), 0);
    desk.alarm(raised(3, Priority.HIGH), 0);
    assertThat(all(desk, 0)).containsExactly(Tune.HIGH);
  }

  @Test
  void whatIsShownUnderAnotherIsNotHeard() {
    SoundDesk desk = new SoundDesk(false);
    desk.alarm(alarm(2, Priority.MEDIUM, AlarmState.UNACKNOWLEDGED, 1), 0);
    assertThat(all(desk, 0)).isEmpty();
  }

  @Test
  void withAPlugInTheWallSwitchingOffSaysSo() {
    SoundDesk desk = new SoundDesk(true);
    desk.switchedOff();
    assertThat(all(desk, 0)).containsExactly(Tune.HIGH, Tune.PLUG);
    SoundDesk without = new SoundDesk(false);
    without.switchedOff();
    assertThat(all(without, 0)).containsExactly(Tune.HIGH);
  }

  @Test
  void withAPlugInTheWallAlsoAnOffThatWasWantedSaysSo() {
    SoundDesk desk = new SoundDesk(true);
    desk.offAsWanted();
    assertThat(all(desk, 0)).containsExactly(Tune.PLUG);
    SoundDesk without = new SoundDesk(false);
    without.offAsWanted();
    assertThat(all(without, 0)).isEmpty();
  }

  @Test
  void mutedIsSilentAndAnAlarmThatStandsIsHeardAfterwards() {
    SoundDesk desk = new SoundDesk(false);
    desk.alarm(raised(1, Priority.HIGH), 0);
    desk.mute(true);
    desk.alarm(raised(2, Priority.MEDIUM), 0);
    assertThat(all(desk, 60 * SECOND)).isEmpty();
    desk.mute(false);
    assertThat(all(desk, 61 * SECOND)).containsExactly(Tune.HIGH);
  }

  @Test
  void whatIsUrgentAndComesAfterMutingIsHeardAgain() {
    SoundDesk desk = new SoundDesk(false);
    desk.alarm(raised(1, Priority.HIGH), 0);
    desk.mute(true);
    desk.alarm(alarm(1, Priority.HIGH, AlarmState.CLEARED_UNACKNOWLEDGED, 0), SECOND);
    assertThat(all(desk, 60 * SECOND)).as("the same alarm, not a new one").isEmpty();
    desk.alarm(raised(2, Priority.HIGH), 61 * SECOND);
    assertThat(all(desk, 61 * SECOND)).containsExactly(Tune.HIGH);
    assertThat(desk.muted()).isFalse();
  }

  @Test
  void switchingOffByItselfIsHeardAlsoAfterMuting() {
    SoundDesk desk = new SoundDesk(true);
    desk.mute(true);
    desk.switchedOff();
    assertThat(all(desk, 0)).containsExactly(Tune.HIGH, Tune.PLUG);
    assertThat(desk.muted()).isFalse();
  }

  @Test
  void noDeviceIsSaidOnceAndNothingElseHappens() throws Exception {
    BlockingQueue<String> said = new LinkedBlockingQueue<>();
    AudioOut none =
        new AudioOut() {
          @Override
          public String open() {
            return "this computer has no sound device for alarms";
          }

          @Override
          public void write(short[] pcm) {
            throw new IllegalStateException("nothing was opened");
          }

          @Override
          public void close() {}
        };
    AlarmSound.Wishes wishes = new AlarmSound.Wishes(true, false, "");
    try (AlarmSound sound = new AlarmSound(none, null, wishes, TimeSource.system(), said::add)) {
      sound.start();
      sound.testBeep();
      sound.alarm(raised(1, Priority.HIGH));
      sound.current(0.1, 0);
      assertThat(said.poll(10, TimeUnit.SECONDS)).contains("no sound device").contains("shown");
      sound.alarm(raised(2, Priority.HIGH));
      sound.switchedOff();
    }
    assertThat(said).isEmpty();
  }

  @Test
  void playsTheTestBeepThenTheAlarmAndFinishesWhatWaits() {
    List<short[]> played = new CopyOnWriteArrayList<>();
    AudioOut device =
        new AudioOut() {
          @Override
          public String open() {
            return null;
          }

          @Override
          public void write(short[] pcm) {
            played.add(pcm);
          }

          @Override
          public void close() {}
        };
    AlarmSound.Wishes wishes = new AlarmSound.Wishes(false, false, "");
    AlarmSound sound = new AlarmSound(device, null, wishes, TimeSource.system(), problem -> {});
    sound.testBeep();
    sound.alarm(raised(1, Priority.MEDIUM));
    sound.start();
    sound.close();
    assertThat(played).hasSize(2);
    assertThat(played.get(0)).isEqualTo(Tune.TEST.pcm());
    assertThat(played.get(1)).isEqualTo(Tune.MEDIUM.pcm());
  }

  @Test
  void findsASpeechCommandOnlyWhereThereIsOne(@TempDir Path folder) throws IOException {
    String path = "/nowhere:" + folder;
    assertThat(Voice.commandFor("Linux", path)).isNull();
    assertThat(Voice.commandFor("Linux", "")).isNull();
    Path program = Files.createFile(folder.resolve("espeak-ng"));
    assertThat(Voice.commandFor("Linux", path)).as("it must be executable").isNull();
    Files.setPosixFilePermissions(program, PosixFilePermissions.fromString("rwx------"));
    assertThat(Voice.commandFor("Linux", path)).containsExactly("espeak-ng", "--");
  }

  @Test
  void speaksOneSentenceAsOneArgument() throws Exception {
    BlockingQueue<List<String>> started = new LinkedBlockingQueue<>();
    try (Voice voice =
        new Voice(
            List.of("speak", "--"),
            command -> {
              started.add(command);
              throw new IOException("no such program");
            })) {
      voice.say("The rail is low;\n touch $(nothing)");
      assertThat(started.poll(10, TimeUnit.SECONDS))
          .containsExactly("speak", "--", "The rail is low; touch $(nothing)");
    }
    try (Voice none = new Voice(null, command -> null)) {
      none.say("nothing");
      assertThat(none.exists()).isFalse();
    }
  }
}
