package firstamp.protocol.frame;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.protocol.frame.Vectors.Vector;
import firstamp.protocol.message.HostMessage;
import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Both ends against the shared vectors. */
final class VectorDecodingTest {
  private final Recorder recorder = new Recorder();
  private final FrameDecoder decoder = new FrameDecoder(recorder);

  static Stream<Vector> messages() {
    return Vectors.messages().stream();
  }

  static Stream<Vector> bad() {
    return Vectors.bad().stream();
  }

  @ParameterizedTest
  @MethodSource("messages")
  void decodesToTheValuesWrittenDown(Vector vector) {
    push(vector.lineBytes());

    assertThat(recorder.texts()).containsExactly(vector.keys());
    assertThat(recorder.rejects).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("messages")
  void encodesToTheBytesWrittenDown(Vector vector) {
    push(vector.lineBytes());
    Frame frame = recorder.frames.get(0);

    byte[] line = new FrameEncoder(frame.sequence()).encode(frame.message(), frame.tickMicros());

    assertThat(HexFormat.of().withUpperCase().formatHex(line)).isEqualTo(vector.line());
  }

  @ParameterizedTest
  @MethodSource("bad")
  void dropsBadFramesUnderTheirReason(Vector vector) {
    push(vector.lineBytes());

    assertThat(recorder.frames).isEmpty();
    assertThat(recorder.rejects).hasSize(1);
    Rejected rejected = recorder.rejects.get(0);
    assertThat(rejected.reason().word()).isEqualTo(vector.key("expect"));
    assertThat(decoder.counts().rejected(rejected.reason())).isEqualTo(1);
    if (vector.keys().contains("answer=")) {
      assertThat(rejected.field()).isEqualTo(Integer.parseInt(vector.key("field")));
      assertThat(rejected.refusal().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'))
          .isEqualTo(vector.key("answer"));
      assertThat(rejected.sequence()).isEqualTo(4660);
      assertThat(rejected.typeCode()).isEqualTo(vector.plainBytes()[1] & 0xFF);
    }
    if (vector.keys().contains("version=")) {
      assertThat(decoder.counts().foreignVersion())
          .hasValue(Integer.parseInt(vector.key("version")));
    }
  }

  @ParameterizedTest
  @MethodSource("bad")
  void goesOnAfterABadFrame(Vector vector) {
    push(vector.lineBytes());
    push(new FrameEncoder().encode(new HostMessage.Heartbeat()));

    assertThat(recorder.texts()).containsExactly("frame.type=72 frame.sequence=0 frame.tick=0");
  }

  @ParameterizedTest
  @MethodSource("messages")
  void everyTruncationIsDropped(Vector vector) {
    byte[] line = vector.lineBytes();
    for (int kept = 1; kept < line.length - 1; kept++) {
      byte[] cut = Arrays.copyOf(line, kept + 1);
      cut[kept] = 0;
      push(cut);
    }

    assertThat(recorder.frames).isEmpty();
    assertThat(recorder.rejects).hasSize(line.length - 2);
  }

  @Test
  void piecesOfAnySizeGiveTheSame() {
    byte[] stream = allLines();
    List<String> expected = Vectors.messages().stream().map(Vector::keys).toList();
    Random random = new Random(5);
    for (int round = 0; round < 4; round++) {
      Recorder pieces = new Recorder();
      FrameDecoder pieceDecoder = new FrameDecoder(pieces);
      for (int at = 0; at < stream.length; ) {
        int size =
            round == 0 ? stream.length : round == 1 ? 1 : 1 + random.nextInt(round == 2 ? 9 : 300);
        size = Math.min(size, stream.length - at);
        pieceDecoder.push(stream, at, size);
        at += size;
      }
      assertThat(pieces.texts()).isEqualTo(expected);
      assertThat(pieceDecoder.counts().bytes()).isEqualTo(stream.length);
    }
  }

  @Test
  void noiseInFrontCostsNoFrameAfterTheNextDelimiter() {
    Random random = new Random(6);
    for (int length = 1; length < 600; length += 13) {
      Recorder noisy = new Recorder();
      FrameDecoder noisyDecoder = new FrameDecoder(noisy);
      byte[] noise = new byte[length];
      random.nextBytes(noise);
      noise[length - 1] = 0;
      noisyDecoder.push(noise, 0, length);
      byte[] stream = allLines();
      noisyDecoder.push(stream, 0, stream.length);
      assertThat(noisy.frames).as("noise of %d bytes", length).hasSize(Vectors.messages().size());
    }
  }

  private static byte[] allLines() {
    ByteArrayOutputStream stream = new ByteArrayOutputStream();
    Vectors.messages().forEach(vector -> stream.writeBytes(vector.lineBytes()));
    return stream.toByteArray();
  }

  private void push(byte[] line) {
    decoder.push(line, 0, line.length);
  }
}
