package firstamp.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

/**
 * No sheet asks for more than what may be touched: 60 V dc, IEC 61010-1 6.3.1, normal condition,
 * dry (the 60 V dc second hand from a mailing list, the clause from memory; also the limit of IEC
 * 60364-4-41 414.4.5 without basic protection, second hand).
 */
class ShockLimitTest {
  private static String sheet(double supplyV, double railV) {
    return "{\"set\":{\"name\":\"Set\"},\"supply\":{\"nominalV\":"
        + supplyV
        + "},\"rails\":[{\"input\":1,\"nominalV\":"
        + railV
        + "}]}";
  }

  @Test
  void sixtyVoltsIsTheHighestThatASheetMayName() throws Exception {
    assertThat(SheetReader.parse("s.json", sheet(60, -60)).sheet().supply().nominalV())
        .isEqualTo(60);
    assertThatThrownBy(() -> SheetReader.parse("s.json", sheet(60.1, 12)))
        .isInstanceOf(SheetException.class)
        .hasMessageContaining("60");
    assertThatThrownBy(() -> SheetReader.parse("s.json", sheet(24, 61)))
        .isInstanceOf(SheetException.class)
        .hasMessageContaining("60");
    assertThatThrownBy(() -> SheetReader.parse("s.json", sheet(24, -61)))
        .isInstanceOf(SheetException.class)
        .hasMessageContaining("60");
  }
}
