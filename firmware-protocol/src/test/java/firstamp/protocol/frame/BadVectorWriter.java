package firstamp.protocol.frame;

import java.util.Arrays;
import java.util.HexFormat;

/**
 * Writes vectors/bad.txt: frames that a receiver must drop, each with the reason; independent of
 * the codec.
 */
final class BadVectorWriter {
  private static final String HEADER =
      """
      # Frames that must be dropped, each under its reason. One a line:
      # name | hex before COBS, or - | hex on the line with delimiter | expect=reason ...
      # A probe does not drop a whole host frame for a field: where "answer" stands it answers "refused" with that reason
      # and the number in "field" as detail. Reasons and field numbers as in wire-format.md.
      # Written by BadVectorWriter (test scope) with a checksum and COBS of its own.
      """;
  private static final HexFormat HEX = HexFormat.of().withUpperCase();
  private static final int SEQUENCE = 4660;
  private static final int LIMITS = 0x43;
  private static final int SWITCH_ON = 0x45;

  /**
   * Limits that watch nothing, and look parameters, both valid: the ground on which one field is
   * spoilt.
   */
  private static final String GOOD_LIMITS =
      "0000"
          + "0000".repeat(6)
          + "03020303"
          + "00000000"
          + "0000"
          + "0000".repeat(3)
          + "FF03".repeat(3)
          + "0000"
          + "D007"
          + "0000"
          + "000000000000";

  private static final String HELLO_OF_VERSION_1 =
      "0001"
          + "01000000"
          + "01002300"
          + "0000"
          + "0000"
          + "0000"
          + "00000000"
          + "20BCBE00"
          + "00000000"
          + "801A0600"
          + "00000000"
          + "00879303"
          + "00D3CEFE002D3101".repeat(3)
          + "806967FF80969800"
          + "60DAD9FFA0252600"
          + "00000000"
          + "10270000"
          + "10090500"
          + "D007";

  private static final String GOOD_LOOK = "0000DC05330205003300" + "3D00" + "EC00" + "00000000";

  private final StringBuilder text = new StringBuilder(HEADER);

  static String write() {
    BadVectorWriter writer = new BadVectorWriter();
    writer.brokenOnTheLine();
    writer.wholeButForeign();
    writer.wrongLengths();
    writer.fieldsFromProbe();
    writer.fieldsOfLimits();
    writer.otherFieldsFromHost();
    return writer.text.toString();
  }

  private void brokenOnTheLine() {
    byte[] good = ReferenceFrames.frame(ReferenceFrames.VERSION, 0x48, SEQUENCE, 0, new byte[0]);
    line("cobs-code-past-end", "-", "050102", "expect=bad-cobs");
    line("cobs-code-past-end-long", "-", "FF" + "01".repeat(253), "expect=bad-cobs");
    line(
        "cobs-last-byte-missing",
        "-",
        HEX.formatHex(chopped(ReferenceFrames.cobs(good))),
        "expect=bad-cobs");
    line("one-code-only", "", "01", "expect=too-short");
    plain("nine-bytes", Arrays.copyOf(good, 9), "expect=too-short");
    byte[] flipped = good.clone();
    flipped[3] ^= 0x10;
    plain("one-bit-flipped", flipped, "expect=bad-crc");
    byte[] swapped = good.clone();
    swapped[8] = good[9];
    swapped[9] = good[8];
    plain("checksum-high-byte-first", swapped, "expect=bad-crc");
    plain("ten-zeros", new byte[10], "expect=bad-crc");
    line("longest-without-checksum", "-", "FF" + "55".repeat(254), "expect=bad-crc");
    line("one-byte-too-long", "-", "FF" + "55".repeat(254) + "01", "expect=too-long");
    line("much-too-long", "-", "55".repeat(700), "expect=too-long");
  }

  private void wholeButForeign() {
    plain(
        "version-0",
        ReferenceFrames.frame(0, 0x48, SEQUENCE, 0, new byte[0]),
        "expect=wrong-version");
    plain(
        "version-1",
        ReferenceFrames.frame(1, 0x48, SEQUENCE, 0, new byte[0]),
        "expect=wrong-version version=1");
    // As the firmware of version 1 says who it is, 94 bytes: its first start, never calibrated.
    plain(
        "version-1-hello",
        ReferenceFrames.frame(1, 0x01, 0, 0, HEX.parseHex(HELLO_OF_VERSION_1)),
        "expect=wrong-version version=1");
    plain(
        "version-255",
        ReferenceFrames.frame(255, 0x7F, SEQUENCE, 0, new byte[3]),
        "expect=wrong-version version=255");
    for (int type : new int[] {0x00, 0x0D, 0x3F, 0x40, 0x52, 0xFF}) {
      frame(String.format("type-%02X", type), type, "", "expect=unknown-type");
    }
  }

  private void wrongLengths() {
    frame("heartbeat-with-payload", 0x48, "00", "expect=wrong-length");
    frame("limits-one-short", LIMITS, GOOD_LIMITS.substring(2), "expect=wrong-length");
    frame("limits-one-long", LIMITS, GOOD_LIMITS + "00", "expect=wrong-length");
    frame("switch-on-empty", SWITCH_ON, "", "expect=wrong-length");
    frame("restore-without-look", 0x47, "0100", "expect=wrong-length");
    frame("hello-one-short", 0x01, "00".repeat(97), "expect=wrong-length");
    frame("raw-three-bytes", 0x02, "000100", "expect=wrong-length");
    frame("raw-count-over-length", 0x02, "00020000" + "0000", "expect=wrong-length");
    frame("raw-count-under-length", 0x02, "00010000" + "000000", "expect=wrong-length");
  }

  private void fieldsFromProbe() {
    frame("raw-count-0", 0x02, "00000000", "expect=bad-value");
    frame("raw-count-129", 0x02, "00810000" + "00".repeat(162), "expect=bad-value");
    frame("raw-slot-32", 0x02, "20010000" + "0000", "expect=bad-value");
    frame("trip-cause-0", 0x05, "0100" + "00" + "00".repeat(29), "expect=bad-value");
    frame("trip-cause-12", 0x05, "0100" + "0C" + "00".repeat(29), "expect=bad-value");
    frame("trip-channel-8", 0x05, "0100" + "0208" + "00".repeat(28), "expect=bad-value");
    frame("switch-state-5", 0x0A, "0501", "expect=bad-value");
    frame("switch-by-11", 0x0A, "000B", "expect=bad-value");
    frame("press-which-0", 0x0B, "0001", "expect=bad-value");
    frame("look-result-10", 0x04, "0A" + "00".repeat(25), "expect=bad-value");
    frame("capture-first-114", 0x06, "010072001000" + "0000" + "00".repeat(32), "expect=bad-value");
    frame(
        "capture-counts-1024",
        0x06,
        "010000001000" + "0000" + "0004" + "00".repeat(30),
        "expect=bad-value");
    frame("refused-reason-17", 0x09, "43000011" + "0000", "expect=bad-value");
  }

  private void fieldsOfLimits() {
    limits("inrush-ms-10001", 1, 0, "1127", "bad-value");
    limits("inrush-i-3", 2, 2, "0300", "limit-too-fine");
    limits("inrush-i-1021", 2, 2, "FD03", "bad-value");
    limits("running-i-1", 3, 4, "0100", "limit-too-fine");
    limits("running-i-1021", 3, 4, "FD03", "bad-value");
    limits("running-j-3", 4, 6, "0300", "limit-too-fine");
    limits("running-j-1001", 4, 6, "E903", "bad-value");
    limits("peak-i-2", 5, 8, "0200", "limit-too-fine");
    limits("peak-i-65535", 5, 8, "FFFF", "bad-value");
    limits("mean-i-63", 6, 10, "3F00", "limit-too-fine");
    limits("mean-i-16321", 6, 10, "C13F", "bad-value");
    limits("mean-j-63", 7, 12, "3F00", "limit-too-fine");
    limits("mean-j-16001", 7, 12, "813E", "bad-value");
    limits("confirm-i-0", 8, 14, "00", "bad-value");
    limits("confirm-j-9", 9, 15, "09", "bad-value");
    limits("confirm-rail-0", 10, 16, "00", "bad-value");
    limits("confirm-v-255", 11, 17, "FF", "bad-value");
    limits("i2t-budget-2000000001", 12, 18, "01943577", "bad-value");
    limits("i2t-budget-4294967295", 12, 18, "FFFFFFFF", "bad-value");
    limits("i2t-running-1021", 13, 22, "FD03", "bad-value");
    limits("rail-1-low-1024", 14, 24, "0004", "bad-value");
    limits("rail-3-low-65535", 14, 28, "FFFF", "bad-value");
    limits("rail-2-high-1024", 15, 32, "0004", "bad-value");
    limits("over-v-1023", 16, 36, "FF03", "bad-value");
    limits("silence-199", 17, 38, "C700", "bad-value");
    limits("silence-10001", 17, 38, "1127", "bad-value");
    limits("look-over-j-1001", 18, 40, "E903", "bad-value");
    limits("start-i-3", 19, 42, "0300", "limit-too-fine");
    limits("start-i-1021", 19, 42, "FD03", "bad-value");
    limits("start-ms-1001", 20, 44, "E903", "bad-value");
    limits("reserved-1", 21, 47, "01", "bad-value");
  }

  private void otherFieldsFromHost() {
    look("skip-2", 1, 0, "02");
    look("reserved-1", 2, 1, "01");
    look("max-ms-99", 3, 2, "6300");
    look("max-ms-3001", 3, 2, "B90B");
    look("v-per-j-0", 4, 4, "0000");
    look("short-v-per-j-0", 5, 6, "0000");
    look("low-v-per-j-0", 6, 8, "0000");
    look("supply-lowest-1024", 7, 10, "0004");
    look("supply-highest-65535", 8, 12, "FFFF");
    look("charge-limit-2000000001", 9, 14, "01943577");
    frame("pedal-duty-3", 0x50, "03", refused(1, "bad-value"));
    frame(
        "restore-max-ms-99", 0x47, "0100" + spoilt(GOOD_LOOK, 2, "6300"), refused(3, "bad-value"));
    frame("hello-request-speed-2", 0x41, "02", refused(1, "bad-value"));
    frame("stream-kind-3", 0x42, "03", refused(1, "bad-value"));
    frame("switch-off-by-0", 0x46, "00", refused(1, "bad-value"));
    frame("switch-off-by-5", 0x46, "05", refused(1, "bad-value"));
    frame("send-again-what-7", 0x49, "070100", refused(1, "bad-value"));
    frame("sound-pattern-4", 0x4E, "04", refused(1, "bad-value"));
    frame("calibration-write-flat", 0x4B, "00".repeat(100), refused(2, "bad-value"));
  }

  private void limits(String name, int field, int offset, String value, String answer) {
    frame("limits-" + name, LIMITS, spoilt(GOOD_LIMITS, offset, value), refused(field, answer));
  }

  private void look(String name, int field, int offset, String value) {
    frame(
        "switch-on-" + name,
        SWITCH_ON,
        spoilt(GOOD_LOOK, offset, value),
        refused(field, "bad-value"));
  }

  private static String spoilt(String good, int offset, String value) {
    return good.substring(0, 2 * offset) + value + good.substring(2 * offset + value.length());
  }

  private static String refused(int field, String answer) {
    return "expect=bad-value field=" + field + " answer=" + answer;
  }

  private void frame(String name, int type, String payload, String expect) {
    plain(
        name,
        ReferenceFrames.frame(ReferenceFrames.VERSION, type, SEQUENCE, 0, HEX.parseHex(payload)),
        expect);
  }

  private void plain(String name, byte[] plain, String expect) {
    line(name, HEX.formatHex(plain), HEX.formatHex(ReferenceFrames.cobs(plain)), expect);
  }

  private void line(String name, String plain, String encoded, String expect) {
    text.append(String.join(" | ", name, plain, encoded + "00", expect)).append('\n');
  }

  private static byte[] chopped(byte[] bytes) {
    return Arrays.copyOf(bytes, bytes.length - 1);
  }
}
