package firstamp.protocol.frame;

import firstamp.protocol.codes.LineSpeed;
import firstamp.protocol.codes.MessageType;
import firstamp.protocol.codes.PedalDuty;
import firstamp.protocol.codes.Resend;
import firstamp.protocol.codes.SoundPattern;
import firstamp.protocol.codes.StreamKind;
import firstamp.protocol.codes.SwitchCause;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.HostMessage.CalibrationRead;
import firstamp.protocol.message.HostMessage.CalibrationWrite;
import firstamp.protocol.message.HostMessage.ClearTrip;
import firstamp.protocol.message.HostMessage.Heartbeat;
import firstamp.protocol.message.HostMessage.HelloRequest;
import firstamp.protocol.message.HostMessage.LookRequest;
import firstamp.protocol.message.HostMessage.ReadClips;
import firstamp.protocol.message.HostMessage.Restore;
import firstamp.protocol.message.HostMessage.SelfTestRequest;
import firstamp.protocol.message.HostMessage.SendAgain;
import firstamp.protocol.message.HostMessage.SetLimits;
import firstamp.protocol.message.HostMessage.SetPedal;
import firstamp.protocol.message.HostMessage.Sound;
import firstamp.protocol.message.HostMessage.StatusRequest;
import firstamp.protocol.message.HostMessage.StreamRequest;
import firstamp.protocol.message.HostMessage.SwitchOff;
import firstamp.protocol.message.HostMessage.SwitchOn;
import firstamp.protocol.message.HostMessageVisitor;
import firstamp.protocol.values.Check;
import firstamp.protocol.values.LookParameters;
import firstamp.protocol.values.RailWindow;
import firstamp.protocol.values.TripLimits;

/**
 * Payloads of the host's messages, written by visiting and read by type, with the fields in the
 * order of wire-format.md section 4. Reserved bytes must be 0.
 */
final class HostPayloads implements HostMessageVisitor<PayloadWriter> {
  private static final int LIMITS_RESERVED_BYTES = 2;
  private static final int LIMITS_RESERVED_FIELD = 21;
  private static final int LOOK_RESERVED_FIELD = 2;

  private final PayloadWriter out;

  HostPayloads(PayloadWriter out) {
    this.out = out;
  }

  /** Reads a payload whose length was checked. */
  static HostMessage read(MessageType type, PayloadReader in) {
    return switch (type) {
      case HELLO_REQUEST -> new HelloRequest(Check.code(1, LineSpeed.class, in.u8()));
      case STREAM_REQUEST -> new StreamRequest(Check.code(1, StreamKind.class, in.u8()));
      case SET_LIMITS -> new SetLimits(readLimits(in));
      case LOOK_REQUEST -> new LookRequest(readLook(in));
      case SWITCH_ON -> new SwitchOn(readLook(in));
      case SWITCH_OFF -> new SwitchOff(Check.code(1, SwitchCause.class, in.u8()));
      case RESTORE -> new Restore(in.u16(), readLook(in));
      case HEARTBEAT -> new Heartbeat();
      case SEND_AGAIN -> new SendAgain(Check.code(1, Resend.class, in.u8()), in.u16());
      case CALIBRATION_READ -> new CalibrationRead();
      case CALIBRATION_WRITE -> new CalibrationWrite(CalibrationFields.read(in));
      case STATUS_REQUEST -> new StatusRequest();
      case SELF_TEST_REQUEST -> new SelfTestRequest();
      case SOUND -> new Sound(Check.code(1, SoundPattern.class, in.u8()));
      case CLEAR_TRIP -> new ClearTrip(in.u16());
      case SET_PEDAL -> new SetPedal(Check.code(1, PedalDuty.class, in.u8()));
      case READ_CLIPS -> new ReadClips();
      default -> throw new IllegalArgumentException(type + " is no message from the host");
    };
  }

  @Override
  public PayloadWriter helloRequest(HelloRequest message) {
    return out.code(message.speed());
  }

  @Override
  public PayloadWriter streamRequest(StreamRequest message) {
    return out.code(message.kind());
  }

  /** In the order of the wire; Java evaluates arguments from left to right. */
  private static TripLimits readLimits(PayloadReader in) {
    TripLimits.Builder limits =
        TripLimits.builder()
            .inrush(in.u16(), in.u16())
            .running(in.u16(), in.u16())
            .peak(in.u16())
            .mean(in.u16(), in.u16())
            .confirmCurrent(in.u8(), in.u8())
            .confirmVolts(in.u8(), in.u8())
            .i2t(in.u32(), in.u16());
    int[] lows = {in.u16(), in.u16(), in.u16()};
    int[] highs = {in.u16(), in.u16(), in.u16()};
    for (int rail = 1; rail <= TripLimits.RAILS; rail++) {
      limits.rail(rail, new RailWindow(lows[rail - 1], highs[rail - 1]));
    }
    TripLimits read =
        limits
            .overV(in.u16())
            .silenceMillis(in.u16())
            .lookOverJ(in.u16())
            .start(in.u16(), in.u16())
            .build();
    in.zeros(LIMITS_RESERVED_FIELD, LIMITS_RESERVED_BYTES);
    return read;
  }

  @Override
  public PayloadWriter setLimits(SetLimits message) {
    TripLimits limits = message.limits();
    out.u16(limits.inrushMillis())
        .u16(limits.inrushICounts())
        .u16(limits.runningICounts())
        .u16(limits.runningJCounts())
        .u16(limits.peakICounts())
        .u16(limits.meanISixteenths())
        .u16(limits.meanJSixteenths())
        .u8(limits.confirmI())
        .u8(limits.confirmJ())
        .u8(limits.confirmRail())
        .u8(limits.confirmV())
        .u32(limits.i2tBudgetCounts2())
        .u16(limits.i2tRunningICounts());
    limits.rails().forEach(rail -> out.u16(rail.lowCounts()));
    limits.rails().forEach(rail -> out.u16(rail.highCounts()));
    return out.u16(limits.overVCounts())
        .u16(limits.silenceMillis())
        .u16(limits.lookOverJCounts())
        .u16(limits.startICounts())
        .u16(limits.startMillis())
        .zeros(LIMITS_RESERVED_BYTES);
  }

  private static LookParameters readLook(PayloadReader in) {
    boolean skip = in.flag(1, "skip");
    in.zeros(LOOK_RESERVED_FIELD, 1);
    return new LookParameters(
        skip, in.u16(), in.u16(), in.u16(), in.u16(), in.u16(), in.u16(), in.u32());
  }

  private PayloadWriter writeLook(LookParameters look) {
    return out.u8(look.skip() ? 1 : 0)
        .u8(0)
        .u16(look.longestMillis())
        .u16(look.vPerJ256ths())
        .u16(look.shortVPerJ256ths())
        .u16(look.lowVPerJ256ths())
        .u16(look.supplyLowestCounts())
        .u16(look.supplyHighestCounts())
        .u32(look.chargeLimit());
  }

  @Override
  public PayloadWriter lookRequest(LookRequest message) {
    return writeLook(message.look());
  }

  @Override
  public PayloadWriter switchOn(SwitchOn message) {
    return writeLook(message.look());
  }

  @Override
  public PayloadWriter switchOff(SwitchOff message) {
    return out.code(message.by());
  }

  @Override
  public PayloadWriter restore(Restore message) {
    out.u16(message.tripNumber());
    return writeLook(message.look());
  }

  @Override
  public PayloadWriter heartbeat(Heartbeat message) {
    return out;
  }

  @Override
  public PayloadWriter sendAgain(SendAgain message) {
    return out.code(message.what()).u16(message.tripNumber());
  }

  @Override
  public PayloadWriter calibrationRead(CalibrationRead message) {
    return out;
  }

  @Override
  public PayloadWriter calibrationWrite(CalibrationWrite message) {
    return CalibrationFields.write(out, message.data());
  }

  @Override
  public PayloadWriter statusRequest(StatusRequest message) {
    return out;
  }

  @Override
  public PayloadWriter selfTestRequest(SelfTestRequest message) {
    return out;
  }

  @Override
  public PayloadWriter sound(Sound message) {
    return out.code(message.pattern());
  }

  @Override
  public PayloadWriter clearTrip(ClearTrip message) {
    return out.u16(message.tripNumber());
  }

  @Override
  public PayloadWriter setPedal(SetPedal message) {
    return out.code(message.duty());
  }

  @Override
  public PayloadWriter readClips(ReadClips message) {
    return out;
  }
}
