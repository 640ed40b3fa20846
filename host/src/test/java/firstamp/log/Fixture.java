package firstamp.log;

import firstamp.log.stream.StreamSink;
import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.model.ClipInput;
import firstamp.model.ClipMove;
import firstamp.model.Conditions;
import firstamp.model.Difference;
import firstamp.model.Happening;
import firstamp.model.Look;
import firstamp.model.OffCause;
import firstamp.model.OffReason;
import firstamp.model.Priority;
import firstamp.model.ProbeEvent;
import firstamp.model.ProbeHello;
import firstamp.model.SwitchState;
import firstamp.model.TimeSource;
import firstamp.model.Trip;
import firstamp.model.TripCause;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Capture;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import firstamp.model.samples.ReadingReducer;
import firstamp.model.samples.Zero;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.UUID;

/** Values that the tests of the log write and read back. */
final class Fixture {
  static final TimeSource TIME = TimeSource.system();

  private Fixture() {}

  static PowerUpHeader header(PowerUpHeader.Stream stream) {
    return header(stream, UUID.randomUUID().toString());
  }

  static PowerUpHeader header(PowerUpHeader.Stream stream, String uuid) {
    ProbeHello hello =
        new ProbeHello(
            1,
            0,
            1,
            7,
            1,
            SwitchState.OFF,
            3,
            0,
            0,
            null,
            Calibration.nominal(),
            10.0,
            330.0,
            "emulated probe");
    return new PowerUpHeader(
        uuid,
        "W3 to P7",
        "Larch D2 dictation unit (invented)",
        1_700_000_000_000L,
        stream,
        hello,
        "{\"sheet\":1 }",
        "{\"sheet\":1}",
        "{}",
        21.5);
  }

  /** Conversions of noise about a level of each channel. */
  static ConversionBlock block(long firstIndex, int count, Random random) {
    short[] counts = new short[count];
    for (int k = 0; k < count; k++) {
      int channel = firstamp.model.samples.SamplePlan.channelAt(firstIndex + k).ordinal();
      counts[k] =
          (short)
              Math.max(
                  0, Math.min(1023, Math.round(100 + 90 * channel + 0.7 * random.nextGaussian())));
    }
    return new ConversionBlock(firstIndex, counts);
  }

  static List<Reading> readings(long firstIndex, int count, Random random) {
    List<Reading> readings = new ArrayList<>();
    ReadingReducer reducer = new ReadingReducer(readings::add);
    ConversionBlock block = block(firstIndex, count * 160, random);
    reducer.accept(firstIndex, block.counts(), 0, block.counts().length);
    return readings;
  }

  /** One event of every kind. */
  static List<ProbeEvent> everyKind() {
    short[] capture = new short[Capture.LENGTH];
    for (int k = 0; k < capture.length; k++) {
      capture[k] = (short) (1023 - k);
    }
    Look look =
        new Look(
            Look.Result.LOW,
            true,
            2_000_000,
            2_300_000,
            new Zero(17, 33, -2),
            90,
            3100,
            880,
            27_000,
            8_000);
    Trip trip =
        new Trip(
            41,
            TripCause.MEAN,
            0,
            3,
            5_000_000,
            5_000_750,
            5_000_790,
            900,
            640,
            12,
            999_999,
            17,
            260);
    return List.of(
        new ProbeEvent.SwitchChanged(1, SwitchState.CHECK, OffCause.USER),
        new ProbeEvent.Looked(2_300_000, look),
        new ProbeEvent.Tripped(5_000_790, trip),
        new ProbeEvent.Captured(5_040_000, new Capture(41, 5_000_750, 3, capture)),
        new ProbeEvent.Gap(5_100_000, 81_600, 128),
        new ProbeEvent.Pressed(5_200_000, ProbeEvent.Press.PEDAL_TAP),
        new ProbeEvent.LinkChanged(5_300_000, ProbeEvent.LinkState.LOST, "port \"x\" is gone"),
        new ProbeEvent.LogChanged(5_400_000, false, "no room"),
        new ProbeEvent.Marked(5_500_000, "record on; \u00b5A ="),
        new ProbeEvent.Happened(
            5_510_000, ClipMove.at(ClipMove.Act.HELD, "C4 leg", "record", ClipInput.HEAD)),
        new ProbeEvent.Happened(5_520_000, ClipMove.typed("C4 leg", null, -38.25)),
        new ProbeEvent.Happened(
            5_530_000, ClipMove.at(ClipMove.Act.STROKE, "S2", null, ClipInput.METER)),
        new ProbeEvent.Happened(5_540_000, ClipMove.of(ClipMove.Act.OFF)),
        new ProbeEvent.Happened(5_550_000, new Happening.Recording(Happening.RecordState.UNKNOWN)),
        new ProbeEvent.Happened(5_560_000, new Happening.ModeSet(Happening.Mode.SOAK_OVER)),
        new ProbeEvent.Happened(
            5_570_000, new Happening.Step(2, 4, Happening.StepState.SETTLED, "6 V, 1 mA")),
        new ProbeEvent.Happened(5_580_000, new Happening.SetChanged("C7 off; \u00b5F")),
        new ProbeEvent.Happened(5_590_000, new Happening.LoadStarted("motor")),
        new ProbeEvent.Happened(5_595_000, new Happening.SupplySaid("does not answer")),
        new ProbeEvent.Acknowledged(5_600_000, "hum", 2),
        new ProbeEvent.Answered(5_610_000, "tape-out", 1_700_000_000_123L),
        new ProbeEvent.ConditionsSaid(
            5_620_000,
            new Conditions(
                Conditions.Load.NO_TAPE, Conditions.Volume.DOWN, Conditions.Function.STOP)),
        new ProbeEvent.SwitchedOnAgain(5_630_000, 41, Difference.NOTHING, 1, 820.0, null),
        new ProbeEvent.OffExplained(5_640_000, OffReason.SMELL),
        new ProbeEvent.ProbeCondition(5_700_000, 3, 16),
        new ProbeEvent.RunEnded(5_800_000, "time"));
  }

  static Alarm alarm() {
    return new Alarm(
        1,
        "over-current",
        0,
        null,
        412.3,
        411.6,
        412.3,
        Priority.HIGH,
        AlarmState.UNACKNOWLEDGED,
        8.1,
        true,
        1.0,
        "A",
        "Supply current 8.1 A",
        0);
  }

  /** Keeps what comes, conversions joined where they follow each other. */
  static final class Kept implements StreamSink {
    final List<Object> items = new ArrayList<>();

    @Override
    public void conversions(ConversionBlock block) {
      if (!items.isEmpty() && items.get(items.size() - 1) instanceof Run run) {
        if (run.firstIndex + run.counts.size() == block.firstIndex()) {
          run.add(block);
          return;
        }
      }
      Run run = new Run(block.firstIndex());
      run.add(block);
      items.add(run);
    }

    @Override
    public void reading(Reading reading) {
      items.add(reading);
    }

    @Override
    public void event(ProbeEvent event) {
      items.add(event);
    }
  }

  /** Conversions without a gap or an event between. */
  static final class Run {
    final long firstIndex;
    final List<Short> counts = new ArrayList<>();

    Run(long firstIndex) {
      this.firstIndex = firstIndex;
    }

    void add(ConversionBlock block) {
      for (short count : block.counts()) {
        counts.add(count);
      }
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof Run that
          && firstIndex == that.firstIndex
          && counts.equals(that.counts);
    }

    @Override
    public int hashCode() {
      return Long.hashCode(firstIndex);
    }

    @Override
    public String toString() {
      return "Run[" + firstIndex + ", " + counts.size() + " conversions]";
    }
  }
}
