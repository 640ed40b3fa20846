package firstamp.protocol;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.function.IntUnaryOperator;

/**
 * Writes vectors/messages.txt from the layout of every message as wire-format.md gives it. It
 * shares no code with the codec: own bitwise checksum, own COBS, own packing, so that the file
 * checks both the Java and the C end.
 *
 * <p>To add a vector, add it here and run the test with {@code -Dfirstamp.writeVectors=true}.
 */
final class VectorWriter {
  private static final String HEADER =
      """
      # Frames of wire format version 2, both directions. One a line:
      # name | hex before COBS | hex on the line with delimiter | key=value ...
      # Keys are the field names of wire-format.md; numbers are decimal; a field that repeats is a comma list;
      # reserved fields (0) are left out. "-low", "-ordinary" and "-high" hold the edges and distinct values between.
      # Written by VectorWriter (test scope) with a checksum, COBS and packing of its own.
      """;
  static final int VERSION = 2;
  private static final long U32_HIGH = 4_294_967_295L;
  private static final long I32_LOW = Integer.MIN_VALUE;
  private static final long I32_HIGH = Integer.MAX_VALUE;
  private static final String[] CASES = {"low", "ordinary", "high"};
  private static final long[] TICKS = {0, 1_234_567_890L, U32_HIGH};
  private static final int[] SEQUENCES = {0, 4660, 65535};

  /** One field; {@code repeat} elements of an ordinary vector count up from the ordinary value. */
  private record Field(String key, int width, long low, long ordinary, long high) {
    long value(int which, int element) {
      return which == 0 ? low : which == 1 ? ordinary + element : high;
    }
  }

  /** Fields that stand one after the other and repeat together. */
  private record Group(int repeat, List<Field> fields) {}

  private final StringBuilder text = new StringBuilder(HEADER);

  static String write() {
    VectorWriter writer = new VectorWriter();
    writer.fromProbe();
    writer.rawBlocks();
    writer.fromHost();
    return writer.text.toString();
  }

  private void fromProbe() {
    Group scale =
        group(
            8,
            f("zero", 4, I32_LOW, -20_000_000, I32_HIGH),
            f("full", 4, I32_HIGH, 12_500_000, I32_LOW));
    message(
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
    message(
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
    message(
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
    message(
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
    message(
        "capture",
        0x06,
        one(f("number", 2, 0, 258, 65535)),
        one(f("first", 2, -127, -15, 113)),
        one(f("count", 1, 16, 16, 16)),
        one(f("missing", 1, 0, 5, 16)),
        reserved(2),
        group(16, f("counts", 2, 0, 250, 1023)));
    message(
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
    message(
        "accepted",
        0x08,
        one(f("type", 1, 0x42, 0x45, 0x51)),
        one(f("sequence", 2, 0, 770, 65535)));
    message(
        "refused",
        0x09,
        one(f("type", 1, 0x42, 0x43, 0x51)),
        one(f("sequence", 2, 0, 770, 65535)),
        one(f("reason", 1, 1, 3, 16)),
        one(f("detail", 2, 0, 1027, 65535)));
    message("switch", 0x0A, one(f("state", 1, 0, 3, 4)), one(f("by", 1, 0, 1, 10)));
    message("press", 0x0B, one(f("which", 1, 1, 2, 2)), one(f("kind", 1, 1, 2, 3)));
    message("calibration", 0x0C, calibration());
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

  private void rawBlocks() {
    raw("raw-1", 31, 1, i -> 1023);
    raw("raw-2", 0, 2, i -> 512 + i);
    raw("raw-3", 7, 3, i -> 341 * (i + 1));
    raw("raw-5", 30, 5, i -> 1 << 2 * i);
    raw("raw-127", 16, 127, i -> (i * 37 + 5) % 1024);
    raw("raw-128-zeros", 0, 128, i -> 0);
    raw("raw-128-full", 0, 128, i -> 1023);
    raw("raw-128-mixed", 8, 128, i -> (i * 613 + 77) % 1024);
  }

  private void fromHost() {
    message("hello-request", 0x41, one(f("speed", 1, 0, 1, 1)));
    message("stream", 0x42, one(f("kind", 1, 0, 1, 2)));
    message(
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
    message(
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
    message("look", 0x44, look());
    message("switch-on", 0x45, look());
    message("switch-off", 0x46, one(f("by", 1, 1, 2, 4)));
    Group[] look = look();
    Group[] restore = new Group[look.length + 1];
    restore[0] = one(f("number", 2, 0, 258, 65535));
    System.arraycopy(look, 0, restore, 1, look.length);
    message("restore", 0x47, restore);
    message("heartbeat", 0x48);
    message("send-again", 0x49, one(f("what", 1, 5, 5, 6)), one(f("number", 2, 0, 258, 65535)));
    message("calibration-read", 0x4A);
    message("calibration-write", 0x4B, calibration());
    message("status-request", 0x4C);
    message("self-test", 0x4D);
    message("sound", 0x4E, one(f("pattern", 1, 0, 2, 3)));
    message("clear-trip", 0x4F, one(f("number", 2, 0, 258, 65535)));
    message("pedal", 0x50, one(f("duty", 1, 0, 1, 2)));
    message("clips", 0x51);
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

  private void message(String name, int type, Group... groups) {
    for (int which = 0; which < CASES.length; which++) {
      Bytes payload = new Bytes();
      StringBuilder keys = new StringBuilder();
      for (Group group : groups) {
        List<List<String>> values = new ArrayList<>();
        group.fields().forEach(field -> values.add(new ArrayList<>()));
        for (int element = 0; element < group.repeat(); element++) {
          for (int index = 0; index < group.fields().size(); index++) {
            Field field = group.fields().get(index);
            long value = field.value(which, element);
            payload.little(value, field.width());
            values.get(index).add(Long.toString(value));
          }
        }
        for (int index = 0; index < values.size(); index++) {
          if (!group.fields().get(index).key().isEmpty()) {
            keys.append(' ').append(group.fields().get(index).key()).append('=');
            keys.append(String.join(",", values.get(index)));
          }
        }
      }
      line(
          name + "-" + CASES[which],
          type,
          SEQUENCES[which],
          TICKS[which],
          payload,
          keys.toString());
    }
  }

  private void raw(String name, int firstSlot, int count, IntUnaryOperator counts) {
    Bytes payload = new Bytes();
    payload.little(firstSlot, 1);
    payload.little(count, 1);
    payload.little(42, 2);
    int[] packed = new int[(count * 10 + 7) / 8];
    List<String> values = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      int value = counts.applyAsInt(i);
      values.add(Integer.toString(value));
      for (int bit = 0; bit < 10; bit++) {
        int place = i * 10 + bit;
        packed[place / 8] |= (value >> bit & 1) << place % 8;
      }
    }
    for (int value : packed) {
      payload.little(value, 1);
    }
    String keys =
        " first_slot="
            + firstSlot
            + " count="
            + count
            + " dropped=42 packed="
            + String.join(",", values);
    line(name, 0x02, 4660, 1_234_567_890L, payload, keys);
  }

  private void line(String name, int type, int sequence, long tick, Bytes payload, String keys) {
    // The host's tick is 0.
    long sent = type < 0x40 ? tick : 0;
    byte[] plain = frame(VERSION, type, sequence, sent, payload.array());
    HexFormat hex = HexFormat.of().withUpperCase();
    text.append(name).append(" | ").append(hex.formatHex(plain)).append(" | ");
    text.append(hex.formatHex(cobs(plain))).append("00 | frame.type=").append(type);
    text.append(" frame.sequence=")
        .append(sequence)
        .append(" frame.tick=")
        .append(sent)
        .append(keys)
        .append('\n');
  }

  /** A frame before COBS, checksum included. */
  static byte[] frame(int version, int type, int sequence, long tick, byte[] payload) {
    Bytes bytes = new Bytes();
    bytes.little(version, 1);
    bytes.little(type, 1);
    bytes.little(sequence, 2);
    bytes.little(tick, 4);
    for (byte value : payload) {
      bytes.little(value, 1);
    }
    bytes.little(crc(bytes.array()), 2);
    return bytes.array();
  }

  /** CRC-16 1021/FFFF, bit by bit from its definition. */
  static int crc(byte[] bytes) {
    int remainder = 0xFFFF;
    for (byte value : bytes) {
      for (int bit = 7; bit >= 0; bit--) {
        boolean high = (remainder >> 15 & 1) != (value >> bit & 1);
        remainder = remainder << 1 & 0xFFFF;
        if (high) {
          remainder ^= 0x1021;
        }
      }
    }
    return remainder;
  }

  /** COBS by its definition: cut at zeros, and after runs of 254. */
  static byte[] cobs(byte[] plain) {
    Bytes out = new Bytes();
    int at = 0;
    do {
      int end = at;
      while (end < plain.length && plain[end] != 0 && end - at < 254) {
        end++;
      }
      out.little(end - at + 1, 1);
      for (int i = at; i < end; i++) {
        out.little(plain[i], 1);
      }
      boolean zeroTaken = end < plain.length && end - at < 254;
      at = zeroTaken ? end + 1 : end;
      if (zeroTaken && at == plain.length) {
        out.little(1, 1);
      }
    } while (at < plain.length);
    return out.array();
  }

  static void store(Path file, String text) {
    try {
      Files.writeString(file, text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static final class Bytes {
    private final List<Byte> list = new ArrayList<>();

    void little(long value, int width) {
      for (int i = 0; i < width; i++) {
        list.add((byte) (value >> 8 * i));
      }
    }

    byte[] array() {
      byte[] bytes = new byte[list.size()];
      for (int i = 0; i < bytes.length; i++) {
        bytes[i] = list.get(i);
      }
      return bytes;
    }
  }
}
