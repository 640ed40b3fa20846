package firstamp.protocol.frame;

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
  private static final String[] CASES = {"low", "ordinary", "high"};
  private static final long[] TICKS = {0, 1_234_567_890L, 4_294_967_295L};
  private static final int[] SEQUENCES = {0, 4660, 65535};

  private final StringBuilder text = new StringBuilder(HEADER);

  static String write() {
    VectorWriter writer = new VectorWriter();
    MessageLayouts layouts = new MessageLayouts(writer::message);
    layouts.fromProbe();
    writer.rawBlocks();
    layouts.fromHost();
    return writer.text.toString();
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

  private void message(String name, int type, MessageLayouts.Group... groups) {
    for (int which = 0; which < CASES.length; which++) {
      Bytes payload = new Bytes();
      StringBuilder keys = new StringBuilder();
      for (MessageLayouts.Group group : groups) {
        List<List<String>> values = new ArrayList<>();
        group.fields().forEach(field -> values.add(new ArrayList<>()));
        for (int element = 0; element < group.repeat(); element++) {
          for (int index = 0; index < group.fields().size(); index++) {
            MessageLayouts.Field field = group.fields().get(index);
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
    byte[] plain =
        ReferenceFrames.frame(ReferenceFrames.VERSION, type, sequence, sent, payload.array());
    HexFormat hex = HexFormat.of().withUpperCase();
    text.append(name).append(" | ").append(hex.formatHex(plain)).append(" | ");
    text.append(hex.formatHex(ReferenceFrames.cobs(plain))).append("00 | frame.type=").append(type);
    text.append(" frame.sequence=")
        .append(sequence)
        .append(" frame.tick=")
        .append(sent)
        .append(keys)
        .append('\n');
  }

  static void store(Path file, String text) {
    try {
      Files.writeString(file, text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
