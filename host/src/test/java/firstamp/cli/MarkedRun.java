package firstamp.cli;

import firstamp.emulate.Scenarios;
import firstamp.log.BenchLog;
import firstamp.log.PowerUpHeader;
import firstamp.log.PowerUpWriter;
import firstamp.model.Happening;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.ProbeHello;
import firstamp.model.SwitchState;
import firstamp.model.TimeSource;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.SamplePlan;
import firstamp.sheet.Defaults;
import firstamp.sheet.SheetReader;
import firstamp.sheet.SheetWriter;
import java.nio.file.Path;
import java.util.Random;

/**
 * A logged power-up with marks: 12 s on, 100 mA; a lamp draws 30 mA from 4 to 8 s; marked at both.
 */
final class MarkedRun {
  private static final long CLOSED_S = 2;

  private MarkedRun() {}

  static void make(Path file) throws Exception {
    String json = Scenarios.sheetJson("healthy");
    ProbeHello hello =
        new ProbeHello(
            1,
            1,
            0,
            1,
            1,
            SwitchState.OFF,
            3,
            0,
            0,
            null,
            Calibration.nominal(),
            10,
            330,
            "emulated probe");
    PowerUpHeader header =
        new PowerUpHeader(
            "5a4bb0a6-0000-4000-8000-000000000001",
            null,
            "Set with a lamp (invented)",
            1000,
            PowerUpHeader.Stream.RAW,
            hello,
            json,
            SheetWriter.write(Defaults.fill(SheetReader.parse("sheet", json).sheet())),
            "{}",
            null);
    Random random = new Random(6);
    try (BenchLog log = BenchLog.open(file, TimeSource.system());
        PowerUpWriter writer = log.begin(header, state -> {})) {
      for (long second = 0; second < CLOSED_S + 12; second++) {
        if (second == CLOSED_S) {
          writer.append(
              new ProbeEvent.SwitchChanged(second * 1_000_000, SwitchState.ON, OffCause.USER));
        } else if (second == CLOSED_S + 4) {
          writer.append(
              new ProbeEvent.Happened(second * 1_000_000, new Happening.SetChanged("lamp on")));
        } else if (second == CLOSED_S + 8) {
          writer.append(
              new ProbeEvent.Happened(second * 1_000_000, new Happening.SetChanged("lamp off")));
        }
        writer.append(new ConversionBlock(second * 16_000, second(second, random)));
      }
      writer.append(
          new ProbeEvent.SwitchChanged(
              (CLOSED_S + 12) * 1_000_000, SwitchState.OFF, OffCause.TIME));
      writer.append(new ProbeEvent.RunEnded((CLOSED_S + 12) * 1_000_000, "time"));
      writer.finish("{\"type\":\"summary\"}", "normal", "time");
    }
  }

  private static short[] second(long second, Random random) {
    short[] counts = new short[16_000];
    boolean on = second >= CLOSED_S;
    double amps = !on ? 0 : second - CLOSED_S >= 4 && second - CLOSED_S < 8 ? 0.13 : 0.1;
    for (int k = 0; k < counts.length; k++) {
      Channel channel = SamplePlan.channelAt(k);
      double value =
          switch (channel) {
            case I, J -> amps;
            case V -> on ? 12 : 0;
            case R1 -> on ? 8.2 : 0;
            default -> 0;
          };
      double exact =
          Calibration.nominal().scale(channel).counts(value) + 0.7 * random.nextGaussian();
      counts[k] = (short) Math.max(0, Math.min(1023, Math.floor(exact + 0.5)));
    }
    return counts;
  }
}
