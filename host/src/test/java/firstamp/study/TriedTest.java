package firstamp.study;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.locate.wire.TriedWire;
import firstamp.model.JobSheet;
import firstamp.sheet.Defaults;
import firstamp.sheet.SheetReader;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which wire and place a label names where nobody named them otherwise. */
class TriedTest {
  private static JobSheet sheet() throws Exception {
    String json =
        "{\"sheet\":1,\"set\":{\"name\":\"Set\"},\"supply\":{\"nominalV\":12},\"unknownWires\":["
            + "{\"name\":\"W3\",\"places\":[{\"name\":\"tag 1\"},{\"name\":\"tag 10\"}]},"
            + "{\"name\":\"W3 b\",\"places\":[{\"name\":\"tag 1\"},{\"name\":\"tag 1 left\"}]}]}";
    return Defaults.fill(SheetReader.parse("set.json", json).sheet());
  }

  @ParameterizedTest
  @CsvSource({
    "W3 at tag 1, W3, tag 1",
    "W3 at tag 10, W3, tag 10",
    "'W3 at tag 10, through 1 kohm', W3, tag 10",
    "'W3 at tag 1: second try', W3, tag 1",
    "W3 b at tag 1 left, W3 b, tag 1 left",
  })
  void theLongestPlaceThatFitsIsMeant(String label, String wire, String place) throws Exception {
    assertThat(Thinking.tried(sheet(), label)).isEqualTo(new TriedWire(wire, place));
  }

  @ParameterizedTest
  @CsvSource({"W3 at tag 100", "W3 at tag 1a", "W33 at tag 1", "before W3 at tag 1", "W3"})
  void aPartOfAWordIsNoPlace(String label) throws Exception {
    assertThat(Thinking.tried(sheet(), label)).isNull();
  }
}
