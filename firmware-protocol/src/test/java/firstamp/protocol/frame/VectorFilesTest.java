package firstamp.protocol.frame;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.protocol.codes.MessageType;
import java.io.IOException;
import java.nio.file.Files;
import java.util.Arrays;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

final class VectorFilesTest {
  @Test
  void messageFileIsWhatTheWriterWrites() throws IOException {
    assertFile("messages.txt", VectorWriter.write());
  }

  @Test
  void badFileIsWhatTheWriterWrites() throws IOException {
    assertFile("bad.txt", BadVectorWriter.write());
  }

  private static void assertFile(String name, String text) throws IOException {
    if (Boolean.getBoolean("firstamp.writeVectors")) {
      VectorWriter.store(Vectors.FOLDER.resolve(name), text);
    }
    assertThat(Files.readString(Vectors.FOLDER.resolve(name))).isEqualTo(text);
  }

  @Test
  void everyReasonHasVectors() {
    assertThat(Vectors.bad().stream().map(v -> v.key("expect")).collect(Collectors.toSet()))
        .containsExactlyInAnyOrderElementsOf(
            Arrays.stream(RejectReason.values()).map(RejectReason::word).toList());
  }

  @Test
  void everyMessageHasVectors() {
    assertThat(
            Vectors.messages().stream()
                .map(v -> Integer.parseInt(v.key("frame.type")))
                .collect(Collectors.toSet()))
        .containsExactlyInAnyOrderElementsOf(
            Arrays.stream(MessageType.values()).map(MessageType::code).toList());
  }
}
