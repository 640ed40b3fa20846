package firstamp.protocol.codes;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.IntFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Every number that stands on the wire, written out as wire-format.md lists it. */
class WireCodesTest {
  private static String decimal(WireCode[] codes) {
    return text(codes, Integer::toString);
  }

  private static String hex(WireCode[] codes) {
    return text(codes, code -> String.format(Locale.ROOT, "0x%02X", code));
  }

  private static String text(WireCode[] codes, IntFunction<String> number) {
    return Arrays.stream(codes)
        .map(code -> number.apply(code.code()) + " " + ((Enum<?>) code).name())
        .collect(Collectors.joining(", "));
  }

  @Test
  void messageType() {
    // wire-format.md, sections 3 and 4
    assertThat(hex(MessageType.values()))
        .isEqualTo(
            "0x01 HELLO, 0x02 RAW, 0x03 READING, 0x04 LOOK_RESULT, 0x05 TRIP, 0x06 "
                + "CAPTURE, 0x07 STATUS, 0x08 ACCEPTED, 0x09 REFUSED, 0x0A SWITCH_CHANGED, "
                + "0x0B PRESS, 0x0C CALIBRATION, 0x41 HELLO_REQUEST, 0x42 STREAM_REQUEST, "
                + "0x43 SET_LIMITS, 0x44 LOOK_REQUEST, 0x45 SWITCH_ON, 0x46 SWITCH_OFF, "
                + "0x47 RESTORE, 0x48 HEARTBEAT, 0x49 SEND_AGAIN, 0x4A CALIBRATION_READ, "
                + "0x4B CALIBRATION_WRITE, 0x4C STATUS_REQUEST, 0x4D SELF_TEST_REQUEST, "
                + "0x4E SOUND, 0x4F CLEAR_TRIP, 0x50 SET_PEDAL, 0x51 READ_CLIPS");
  }

  @Test
  void streamKind() {
    // wire-format.md, 0x42
    assertThat(decimal(StreamKind.values())).isEqualTo("0 NONE, 1 RAW, 2 REDUCED");
  }

  @Test
  void calibrationState() {
    // wire-format.md, 0x01, calibration
    assertThat(decimal(CalibrationState.values())).isEqualTo("0 BLANK, 1 VALID, 2 DAMAGED");
  }

  @Test
  void pedalDuty() {
    // wire-format.md, 0x50
    assertThat(decimal(PedalDuty.values())).isEqualTo("0 OFF, 1 HOLD_TO_RUN, 2 MARK");
  }

  @Test
  void lookOutcome() {
    // wire-format.md, 0x04, result
    assertThat(decimal(LookOutcome.values()))
        .isEqualTo(
            "0 CLEAR, 1 LOW, 2 NOTHING_JOINED, 3 SKIPPED, 4 SHORT, 5 REVERSED, 6 "
                + "TOO_HIGH, 7 NO_SUPPLY, 8 TOO_MUCH_CHARGE, 9 SHUNT, 16 CURRENT_WHILE_OFF, "
                + "17 VOLTS_STAY, 18 NO_ZERO, 19 LIMITER");
  }

  @Test
  void tripCause() {
    // wire-format.md, 0x05, cause
    assertThat(decimal(TripCause.values()))
        .isEqualTo(
            "1 INRUSH, 2 RUNNING, 3 I2T, 4 HARD_SHORT, 5 OVER_VOLTAGE, 6 "
                + "HOST_SILENCE, 7 CHASSIS_CLIP, 8 SELF_TEST, 9 MEAN, 10 PEAK, 11 START");
  }

  @Test
  void pressSource() {
    // wire-format.md, 0x0B, which
    assertThat(decimal(PressSource.values())).isEqualTo("1 BUTTON, 2 PEDAL");
  }

  @Test
  void pressKind() {
    // wire-format.md, 0x0B, kind
    assertThat(decimal(PressKind.values())).isEqualTo("1 TAP, 2 HELD, 3 DOWN");
  }

  @Test
  void switchCause() {
    // wire-format.md, 0x0A, by
    assertThat(decimal(SwitchCause.values()))
        .isEqualTo(
            "0 START, 1 USER, 2 RULE, 3 TIME, 4 SIGNAL, 5 BUTTON, 6 PEDAL, 7 TRIP, 8 "
                + "LOOK, 9 CHASSIS_CLIP, 10 HOST_SILENCE");
  }

  @Test
  void probeState() {
    // wire-format.md, section 5
    assertThat(decimal(ProbeState.values())).isEqualTo("0 OFF, 1 CHECK, 2 LOOK, 3 ON, 4 TRIPPED");
  }

  @Test
  void selfTestFault() {
    // wire-format.md, section 5, bits
    assertThat(decimal(SelfTestFault.values()))
        .isEqualTo(
            "0 REFERENCE, 1 SUPPLY, 2 INPUT_STUCK, 3 CALIBRATION, 4 PROGRAM, 5 "
                + "MEMORY, 6 STACK, 7 SWITCH_PATH, 8 WATCHDOG_START, 9 LATCH_RECORD, 10 "
                + "CONVERTER, 11 FUSES, 12 CURRENTS, 13 GATE, 14 SHUNT");
  }

  @Test
  void refusalReason() {
    // wire-format.md, section 6
    assertThat(decimal(RefusalReason.values()))
        .isEqualTo(
            "1 WRONG_STATE, 2 BAD_VALUE, 3 LIMIT_TOO_FINE, 4 LIMIT_GETS_WIDER, 5 "
                + "NO_LIMITS, 6 NO_CHASSIS_CLIP, 7 BUTTON_DOWN, 8 SELF_TEST, 9 "
                + "CALIBRATION_DAMAGED, 10 TRIP_LATCHED, 11 WRONG_NUMBER, 12 "
                + "TOO_FAST_FOR_LINE, 13 NOTHING_THERE, 14 BUSY, 15 EEPROM, 16 "
                + "FOOT_NOT_DOWN");
  }

  @Test
  void lineSpeed() {
    // wire-format.md, 0x41
    assertThat(decimal(LineSpeed.values())).isEqualTo("0 FAST, 1 SLOW");
  }

  @Test
  void resend() {
    // wire-format.md, 0x49
    assertThat(hex(Resend.values())).isEqualTo("0x05 TRIP, 0x06 CAPTURE");
  }

  @Test
  void soundPattern() {
    // wire-format.md, 0x4E
    assertThat(decimal(SoundPattern.values())).isEqualTo("0 QUIET, 1 ONE_BEEP, 2 ALARM, 3 TRIP");
  }

  @Test
  void thePaperSaysTheSameOfResultsCausesAndRefusals() throws IOException {
    String paper = Files.readString(Path.of("wire-format.md"));
    assertThat(listed(paper, "\\| result \\| ([^|]*) \\|", "(\\d+) ([a-z-]+)"))
        .isEqualTo(names(LookOutcome.values()))
        .hasSize(14);
    assertThat(listed(paper, "\\| cause \\| (1 [^|]*) \\|", "(\\d+) ([a-z0-9-]+)"))
        .isEqualTo(names(TripCause.values()))
        .hasSize(11);
    assertThat(listed(paper, "(?s)## 6\\. Reasons of refusal(.*)", "\\| (\\d+) \\| ([a-z-]+) \\|"))
        .isEqualTo(names(RefusalReason.values()))
        .hasSize(16);
  }

  private static Map<Integer, String> listed(String paper, String place, String entry) {
    Matcher text = Pattern.compile(place).matcher(paper);
    assertThat(text.find()).as(place).isTrue();
    Map<Integer, String> found = new TreeMap<>();
    // An explanation in brackets belongs to no entry.
    Matcher each = Pattern.compile(entry).matcher(text.group(1).replaceAll("\\([^)]*\\)", ""));
    while (each.find()) {
      found.put(Integer.valueOf(each.group(1)), each.group(2));
    }
    return found;
  }

  private static Map<Integer, String> names(WireCode[] codes) {
    Map<Integer, String> names = new TreeMap<>();
    for (WireCode code : codes) {
      names.put(code.code(), ((Enum<?>) code).name().toLowerCase(Locale.ROOT).replace('_', '-'));
    }
    return names;
  }
}
