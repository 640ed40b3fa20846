package firstamp.window;

import firstamp.emulate.ProbeOptions;
import firstamp.emulate.Scenarios;
import firstamp.emulate.line.Pace;
import firstamp.log.BenchLog;
import firstamp.log.PowerUpHeader;
import firstamp.log.PowerUpReader;
import firstamp.log.PowerUpWriter;
import firstamp.log.stream.StreamSink;
import firstamp.model.JobSheet;
import firstamp.model.ProbeEvent;
import firstamp.model.SwitchState;
import firstamp.model.TimeSource;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import firstamp.model.samples.SamplePlan;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.ProbeSettings;
import firstamp.run.LivePowerUp;
import firstamp.run.RunProgress;
import firstamp.run.RunSetup;
import firstamp.run.SheetTexts;
import firstamp.run.questions.ArmGate;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.UUID;

/**
 * A raw power-up of hours in a log: a short one of the emulated probe, its steady second given
 * again and again with fresh noise.
 */
final class LongLog {
  private static final int NOISE_ONE_IN = 3;

  private final BenchLog log;
  private final List<ConversionBlock> blocks = new ArrayList<>();
  private final List<ProbeEvent> events = new ArrayList<>();

  LongLog(Path file) throws Exception {
    log = BenchLog.open(file, TimeSource.system());
  }

  /** Writes it. */
  void write(double hours) throws Exception {
    JobSheet sheet = WindowBenchmark.sheet("healthy");
    RunSetup setup =
        new RunSetup(
            sheet,
            new ProbeSettings(sheet),
            null,
            true,
            4_000_000L,
            0,
            false,
            2_000_000,
            false,
            ArmGate.alwaysOpen());
    new LivePowerUp(
            log,
            new SheetTexts(
                sheet.set().name(), Scenarios.sheetJson("healthy"), Scenarios.sheetJson("healthy")),
            setup,
            () -> Scenarios.open("healthy", ProbeOptions.of(1, Pace.MAX)),
            TimeSource.system(),
            new ChainListener() {},
            new RunProgress() {})
        .run();
    PowerUpReader shortOne = log.find("last");
    read(shortOne);
    PowerUpHeader header = shortOne.header();
    try (PowerUpWriter writer =
        log.begin(
            new PowerUpHeader(
                UUID.randomUUID().toString(),
                "hours",
                header.setName(),
                header.startedEpochMs(),
                header.stream(),
                header.hello(),
                header.sheetJson(),
                header.effectiveSheetJson(),
                header.limitsJson(),
                null),
            state -> {})) {
      write(writer, hours);
      writer.finish(shortOne.entry().summaryJson(), "normal", "time");
    }
  }

  private void read(PowerUpReader reader) throws Exception {
    reader.replay(
        new StreamSink() {
          @Override
          public void conversions(ConversionBlock block) {
            blocks.add(block);
          }

          @Override
          public void reading(Reading reading) {}

          @Override
          public void event(ProbeEvent event) {
            events.add(event);
          }
        });
  }

  private void write(PowerUpWriter writer, double hours) throws Exception {
    long closedIndex = 0;
    for (ProbeEvent event : events) {
      if (event instanceof ProbeEvent.SwitchChanged changed && changed.state() == SwitchState.ON) {
        closedIndex = SamplePlan.indexAt(changed.micros());
      }
    }
    // The start as it was, up to two seconds after closing; then its last second for hours.
    long steadyFrom = (closedIndex + 2 * SamplePlan.CONVERSIONS_PER_SECOND) / 32 * 32;
    short[] steady = new short[SamplePlan.CONVERSIONS_PER_SECOND];
    int event = 0;
    for (ConversionBlock block : blocks) {
      while (event < events.size()
          && SamplePlan.indexAt(events.get(event).micros()) <= block.firstIndex()
          && SamplePlan.indexAt(events.get(event).micros()) < steadyFrom) {
        writer.append(events.get(event++));
      }
      for (int k = 0; k < block.counts().length; k++) {
        long at = block.firstIndex() + k - steadyFrom;
        if (at >= 0 && at < steady.length) {
          steady[(int) at] = block.counts()[k];
        }
      }
      if (block.endIndex() <= steadyFrom) {
        writer.append(block);
      }
    }
    long index = steadyFrom;
    Random random = new Random(1);
    for (long second = 0; second < hours * 3600; second++) {
      short[] counts = steady.clone();
      for (int k = random.nextInt(NOISE_ONE_IN); k < counts.length; k += NOISE_ONE_IN) {
        int noisy = counts[k] + (random.nextBoolean() ? 1 : -1);
        counts[k] = (short) Math.max(0, Math.min(1023, noisy));
      }
      writer.append(new ConversionBlock(index, counts));
      writer.awaitRoom();
      index += counts.length;
    }
    writer.append(new ProbeEvent.RunEnded(SamplePlan.microsOf(index), "time"));
  }
}
