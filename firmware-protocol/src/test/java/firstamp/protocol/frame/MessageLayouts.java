package firstamp.protocol.frame;

import java.util.List;

/** Every message field by field, as wire-format.md gives it; shares no code with the codec. */
final class MessageLayouts {
  private static final long U32_HIGH = 4_294_967_295L;
  private static final long I32_LOW = Integer.MIN_VALUE;
  private static final long I32_HIGH = Integer.MAX_VALUE;

  /** One field; {@code repeat} elements of an ordinary vector count up from the ordinary value. */
  record Field(String key, int width, long low, long ordinary, long high) {
    long value(int which, int element) {
      return which == 0 ? low : which == 1 ? ordinary + element : high;
    }
  }

  /** Fields that stand one after the other and repeat together. */
  record Group(int repeat, List<Field> fields) {}

  /** Takes one message after the other. */
  interface Sink {
    void message(String name, int type, Group... groups);
  }

  private final Sink sink;

  MessageLayouts(Sink sink) {
    this.sink = sink;
  }

  void fromProbe() {
    Group scale =
        group(
            8,
            f("zero", 4, I32_LOW, -20_000_000, I32_HIGH),
            f("full", 4, I32_HIGH, 12_500_000, I32_LOW));
    sink.message(
        "hello",
        0x01,
        one(f("firmware", 2, 0, 258, 65535)),
        one(f("boot_id", 4, 0, 70_001, U32_HIGH)),
        one(f("reset_cause", 1, 0, 9, 255)),
        one(f("state", 1, 0, 3, 4)),
        one(f("inputs", 1, 0, 35, 255)),
        one(f("stream", 1, 0, 1, 2)),
        one(f("self_test", 2, 0, 260, 65535)),
        one(f("latched_trip", 2, 0, 517, 65535)),
        one(f("latched_cause", 1, 0, 4, 11)),
        one(f("calibration", 1, 0, 1, 2)),
        scale,
        one(f("calibrated_s", 4, 0, 1_790_000_000L, U32_HIGH)),
        one(f("hard_short_ma", 4, 0, 10_000, U32_HIGH)),
        one(f("look_mohm", 4, 0, 330_000, U32_HIGH)),
        one(f("silence_ms", 2, 0, 2000, 65535)),
        one(f("pedal", 1, 0, 1, 2)),
        one(f("fuse_low", 1, 0, 255, 255)),
        one(f("fuse_high", 1, 0, 199, 255)),
        one(f("fuse_extended", 1, 0, 252, 255)));
    sink.message(
        "reading",
        0x03,
        one(f("dropped", 2, 0, 513, 65535)),
        one(f("flags", 2, 0, 1, 1)),
        group(
            8,
            f("sum", 2, 0, 20_490, 65535),
            f("lowest", 2, 0, 260, 1023),
            f("highest", 2, 0, 771, 1023),
            f("squares", 4, 0, 10_493_001, U32_HIGH)));
    sink.message(
        "look-result",
        0x04,
        one(f("result", 1, 0, 2, 19)),
        one(f("closes", 1, 0, 1, 1)),
        one(f("duration_ms", 2, 0, 400, 65535)),
        one(f("zero_i", 2, 0, 17, 65535)),
        one(f("zero_j", 2, 0, 2000, 65535)),
        one(f("zero_v", 2, 0, 33, 65535)),
        one(f("pairs", 2, 0, 201, 65535)),
        one(f("end_v", 2, 0, 3275, 65535)),
        one(f("end_j", 2, 0, 1456, 65535)),
        one(f("sum_v", 4, 0, 40_321, U32_HIGH)),
        one(f("sum_j", 4, 0, 70_654, U32_HIGH)),
        one(f("clips", 1, 0, 131, 255)),
        reserved(1));
    sink.message(
        "trip",
        0x05,
        one(f("number", 2, 0, 258, 65535)),
        one(f("cause", 1, 1, 2, 11)),
        one(f("channel", 1, 0, 5, 255)),
        one(f("confirmed", 1, 0, 3, 255)),
        reserved(1),
        one(f("crossed", 4, 0, 1_234_567_000L, U32_HIGH)),
        one(f("decided", 4, 0, 1_234_567_812L, U32_HIGH)),
        one(f("value", 2, 0, 700, 65535)),
        one(f("limit", 2, 0, 82, 65535)),
        one(f("i2t", 4, 0, 99_999_999L, U32_HIGH)),
        one(f("i2t_limit", 4, 0, 1_500_000_000L, U32_HIGH)),
        one(f("boot", 2, 0, 4465, 65535)),
        one(f("limited", 2, 0, 17, 65535)),
        one(f("last_v", 2, 0, 208, 65535)));
    sink.message(
        "capture",
        0x06,
        one(f("number", 2, 0, 258, 65535)),
        one(f("first", 2, -127, -15, 113)),
        one(f("count", 1, 16, 16, 16)),
        one(f("missing", 1, 0, 5, 16)),
        reserved(2),
        group(16, f("counts", 2, 0, 250, 1023)));
    sink.message(
        "status",
        0x07,
        one(f("state", 1, 0, 3, 4)),
        one(f("inputs", 1, 0, 35, 255)),
        one(f("self_test", 2, 0, 256, 65535)),
        one(f("latched_trip", 2, 0, 517, 65535)),
        one(f("dropped", 2, 0, 11, 65535)),
        one(f("rejected", 2, 0, 1012, 65535)),
        one(f("overruns", 2, 0, 2013, 65535)),
        one(f("queue_highest", 1, 0, 26, 255)),
        one(f("busy_percent", 1, 0, 64, 255)),
        one(f("stack_free", 2, 0, 707, 65535)),
        one(f("late_starts", 2, 0, 3014, 65535)),
        one(f("zero_i", 2, 0, 17, 65535)),
        one(f("zero_j", 2, 0, 518, 65535)),
        one(f("zero_v", 2, 0, 1019, 65535)),
        one(f("conversions_sent", 4, 0, 16_000_160L, U32_HIGH)),
        one(f("clips", 1, 0, 135, 255)),
        one(f("pedal", 1, 0, 1, 2)));
    sink.message(
        "accepted",
        0x08,
        one(f("type", 1, 0x42, 0x45, 0x51)),
        one(f("sequence", 2, 0, 770, 65535)));
    sink.message(
        "refused",
        0x09,
        one(f("type", 1, 0x42, 0x43, 0x51)),
        one(f("sequence", 2, 0, 770, 65535)),
        one(f("reason", 1, 1, 3, 16)),
        one(f("detail", 2, 0, 1027, 65535)));
    sink.message("switch", 0x0A, one(f("state", 1, 0, 3, 4)), one(f("by", 1, 0, 1, 10)));
    sink.message("press", 0x0B, one(f("which", 1, 1, 2, 2)), one(f("kind", 1, 1, 2, 3)));
    sink.message("calibration", 0x0C, calibration());
  }

  private static Group[] calibration() {
    return new Group[] {
      one(f("calibrated_s", 4, 0, 1_790_000_000L, U32_HIGH)),
      group(
          8,
          f("zero", 4, I32_LOW, -20_000_000, I32_HIGH),
          f("full", 4, I32_HIGH, 12_500_000, I32_LOW)),
      group(8, f("gain_u", 2, 0, 300, 65535)),
      group(8, f("offset_u", 2, 0, 50, 65535))
    };
  }

  void fromHost() {
    sink.message("hello-request", 0x41, one(f("speed", 1, 0, 1, 1)));
    sink.message("stream", 0x42, one(f("kind", 1, 0, 1, 2)));
    sink.message(
        "limits",
        0x43,
        one(f("inrush_ms", 2, 0, 60, 10_000)),
        one(f("inrush_i", 2, 0, 368, 1020)),
        one(f("running_i", 2, 0, 82, 1020)),
        one(f("running_j", 2, 0, 700, 1000)),
        one(f("peak_i", 2, 0, 369, 1020)),
        one(f("mean_i", 2, 0, 1311, 16_320)),
        one(f("mean_j", 2, 0, 8000, 16_000)),
        one(f("confirm_i", 1, 1, 3, 8)),
        one(f("confirm_j", 1, 1, 2, 8)),
        one(f("confirm_rail", 1, 1, 4, 8)),
        one(f("confirm_v", 1, 1, 5, 8)),
        one(f("i2t_budget", 4, 0, 8_053_063L, 2_000_000_000L)),
        one(f("i2t_running", 2, 0, 83, 1020)),
        group(3, f("rail_low", 2, 0, 301, 1023)),
        group(3, f("rail_high", 2, 0, 762, 1023)),
        one(f("over_v", 2, 0, 222, 1022)),
        one(f("silence_ms", 2, 200, 2000, 10_000)),
        one(f("look_over_j", 2, 0, 900, 1000)),
        one(f("start_i", 2, 0, 370, 1020)),
        one(f("start_ms", 2, 0, 400, 1000)),
        reserved(2));
    sink.message(
        "limits-finest",
        0x43,
        one(f("inrush_ms", 2, 1, 1, 1)),
        one(f("inrush_i", 2, 4, 4, 4)),
        one(f("running_i", 2, 4, 4, 4)),
        one(f("running_j", 2, 4, 4, 4)),
        one(f("peak_i", 2, 4, 4, 4)),
        one(f("mean_i", 2, 64, 64, 64)),
        one(f("mean_j", 2, 64, 64, 64)),
        one(f("confirm_i", 1, 1, 1, 1)),
        one(f("confirm_j", 1, 1, 1, 1)),
        one(f("confirm_rail", 1, 1, 1, 1)),
        one(f("confirm_v", 1, 1, 1, 1)),
        one(f("i2t_budget", 4, 1, 1, 1)),
        one(f("i2t_running", 2, 1, 1, 1)),
        group(3, f("rail_low", 2, 1, 1, 1)),
        group(3, f("rail_high", 2, 1022, 1020, 1022)),
        one(f("over_v", 2, 1, 1, 1)),
        one(f("silence_ms", 2, 200, 200, 200)),
        one(f("look_over_j", 2, 1, 1, 1)),
        one(f("start_i", 2, 4, 4, 4)),
        one(f("start_ms", 2, 1, 1, 1)),
        reserved(2));
    sink.message("look", 0x44, look());
    sink.message("switch-on", 0x45, look());
    sink.message("switch-off", 0x46, one(f("by", 1, 1, 2, 4)));
    Group[] look = look();
    Group[] restore = new Group[look.length + 1];
    restore[0] = one(f("number", 2, 0, 258, 65535));
    System.arraycopy(look, 0, restore, 1, look.length);
    sink.message("restore", 0x47, restore);
    sink.message("heartbeat", 0x48);
    sink.message(
        "send-again", 0x49, one(f("what", 1, 5, 5, 6)), one(f("number", 2, 0, 258, 65535)));
    sink.message("calibration-read", 0x4A);
    sink.message("calibration-write", 0x4B, calibration());
    sink.message("status-request", 0x4C);
    sink.message("self-test", 0x4D);
    sink.message("sound", 0x4E, one(f("pattern", 1, 0, 2, 3)));
    sink.message("clear-trip", 0x4F, one(f("number", 2, 0, 258, 65535)));
    sink.message("pedal", 0x50, one(f("duty", 1, 0, 1, 2)));
    sink.message("clips", 0x51);
  }

  private static Group[] look() {
    return new Group[] {
      one(f("skip", 1, 0, 0, 1)),
      reserved(1),
      one(f("max_ms", 2, 100, 1500, 3000)),
      one(f("v_per_j", 2, 1, 563, 65535)),
      one(f("short_v_per_j", 2, 1, 5, 65535)),
      one(f("low_v_per_j", 2, 1, 51, 65535)),
      one(f("supply_lowest", 2, 0, 61, 1023)),
      one(f("supply_highest", 2, 0, 236, 1023)),
      one(f("charge_limit", 4, 0, 87_381_333L, 2_000_000_000L))
    };
  }

  private static Field f(String key, int width, long low, long ordinary, long high) {
    return new Field(key, width, low, ordinary, high);
  }

  private static Group one(Field field) {
    return new Group(1, List.of(field));
  }

  private static Group group(int repeat, Field... fields) {
    return new Group(repeat, List.of(fields));
  }

  private static Group reserved(int bytes) {
    return new Group(1, List.of(new Field("", bytes, 0, 0, 0)));
  }
}
