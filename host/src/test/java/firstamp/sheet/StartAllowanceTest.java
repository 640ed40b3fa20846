package firstamp.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import firstamp.model.JobSheet;
import firstamp.model.limits.ProbeLimits;
import firstamp.model.samples.Calibration;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the sheet says of a motor's start, up to the counts that go to the probe. */
class StartAllowanceTest {
  private static String sheet(String set, String limits) {
    return "{\"set\":{\"name\":\"S\""
        + set
        + "},\"supply\":{\"nominalV\":12,\"maxV\":13},\"limits\":{\"runningA\":0.5"
        + limits
        + "}}";
  }

  private static JobSheet filled(String set, String limits) throws SheetException {
    return Defaults.fill(SheetReader.parse("s", sheet(set, limits)).sheet());
  }

  /** 13 V / 20 ohm + 0.5 A = 1.15 A; heat (1.15^2 - 0.5^2) x 0.5 s = 0.536 A2s, by hand. */
  @Test
  void theWindingsOhmsSayWhatAStartMayDraw() throws Exception {
    JobSheet.Limits limits = filled(",\"motor\":true,\"motorOhm\":20", "").limits();
    assertThat(limits.startA()).isCloseTo(1.15, within(1e-9));
    assertThat(limits.startMs()).isEqualTo(500);
    double without = filled("", "").limits().i2tA2s();
    assertThat(limits.i2tA2s() - without).isCloseTo(0.53625, within(1e-6));
  }

  @Test
  void aStatedStartGoesBeforeTheOhmsAndTheCoarseRangeIsTheMost() throws Exception {
    assertThat(filled(",\"motor\":true,\"motorOhm\":20", ",\"startA\":2,\"startMs\":300").limits())
        .extracting(JobSheet.Limits::startA, JobSheet.Limits::startMs)
        .containsExactly(2.0, 300.0);
    assertThat(filled(",\"motor\":true,\"motorOhm\":0.5", "").limits().startA()).isEqualTo(12);
  }

  /** Unknown is no: without a motor on the sheet no start is allowed, whatever else it says. */
  @Test
  void noMotorNoAllowance() throws Exception {
    for (String set : new String[] {"", ",\"motor\":false,\"motorOhm\":20", ",\"motorOhm\":20"}) {
      assertThat(filled(set, ",\"startA\":2").limits().startA()).as(set).isNull();
    }
    assertThat(filled(",\"motor\":true", "").limits().startA()).as("ohms not known").isNull();
    assertThat(filled(",\"motor\":true", ",\"startA\":0.4").limits().startA())
        .as("under the running limit")
        .isNull();
  }

  /** 1.15 A / 12.207 mA = 94.2: 94 counts above zero; 500 ms. */
  @Test
  void theProbeGetsCountsAndMilliseconds() throws Exception {
    ProbeLimits plan =
        ProbeLimits.plan(filled(",\"motor\":true,\"motorOhm\":20", ""), Calibration.nominal());
    assertThat(plan.counts().startICounts()).isEqualTo(94);
    assertThat(plan.counts().startMillis()).isEqualTo(500);
    assertThat(plan.planned())
        .anySatisfy(
            one -> {
              assertThat(one.field()).isEqualTo("limits.startA");
              assertThat(one.sheetValue()).isCloseTo(1.15, within(1e-9));
              assertThat(one.usedValue()).isCloseTo(1.1475, within(1e-3));
            });
    ProbeLimits none = ProbeLimits.plan(filled("", ""), Calibration.nominal());
    assertThat(none.counts().startICounts()).isZero();
    assertThat(none.counts().startMillis()).isZero();
  }

  @ParameterizedTest
  @CsvSource({
    "motorOhm, 0.05, 0.1 to 10000 ohm",
    "motorOhm, 20000, 0.1 to 10000 ohm",
    "startA, 0.01, 0.05 to 12 A",
    "startA, 13, 0.05 to 12 A",
    "startMs, 0.5, 1 to 1000 ms",
    "startMs, 1500, 1 to 1000 ms",
  })
  void outOfRangeIsRefusedWithFieldValueAndRange(String key, double value, String range)
      throws Exception {
    String member = String.format(Locale.ROOT, ",\"%s\":%s", key, value);
    boolean ofSet = key.equals("motorOhm");
    String text = sheet(ofSet ? member : "", ofSet ? "" : member);
    assertThatThrownBy(() -> SheetReader.parse("s.json", text))
        .isInstanceOf(SheetException.class)
        .hasMessageContaining((ofSet ? "set." : "limits.") + key)
        .hasMessageContaining(range);
    assertThat(bySchema(text)).as("schema").isFalse();
    assertThat(bySchema(sheet(",\"motor\":true,\"motorOhm\":20", ",\"startA\":2,\"startMs\":300")))
        .isTrue();
  }

  private static boolean bySchema(String text) throws Exception {
    try (InputStream in =
        StartAllowanceTest.class.getResourceAsStream("/schemas/job-sheet.schema.json")) {
      Schema schema =
          SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
              .getSchema(new String(in.readAllBytes(), StandardCharsets.UTF_8), InputFormat.JSON);
      return schema.validate(text, InputFormat.JSON).isEmpty();
    }
  }
}
