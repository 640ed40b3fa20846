package firstamp.protocol.frame;

import firstamp.protocol.codes.CalibrationState;
import firstamp.protocol.codes.LookOutcome;
import firstamp.protocol.codes.MessageType;
import firstamp.protocol.codes.PedalDuty;
import firstamp.protocol.codes.PressKind;
import firstamp.protocol.codes.PressSource;
import firstamp.protocol.codes.ProbeState;
import firstamp.protocol.codes.RefusalReason;
import firstamp.protocol.codes.StreamKind;
import firstamp.protocol.codes.SwitchCause;
import firstamp.protocol.codes.TripCause;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.message.ProbeMessage.Accepted;
import firstamp.protocol.message.ProbeMessage.Calibration;
import firstamp.protocol.message.ProbeMessage.Capture;
import firstamp.protocol.message.ProbeMessage.Hello;
import firstamp.protocol.message.ProbeMessage.LookResult;
import firstamp.protocol.message.ProbeMessage.Press;
import firstamp.protocol.message.ProbeMessage.Reading;
import firstamp.protocol.message.ProbeMessage.Refused;
import firstamp.protocol.message.ProbeMessage.Status;
import firstamp.protocol.message.ProbeMessage.SwitchChanged;
import firstamp.protocol.message.ProbeMessage.Trip;
import firstamp.protocol.values.ChannelSum;
import firstamp.protocol.values.Check;
import firstamp.protocol.values.Clips;
import firstamp.protocol.values.Fuses;
import firstamp.protocol.values.Inputs;
import firstamp.protocol.values.SelfTest;
import firstamp.protocol.values.SlotPlan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Payloads of the probe's messages, read by type, with the fields in the order of wire-format.md
 * section 3. Reserved bytes are not looked at.
 */
final class ProbePayloadReader {
  private ProbePayloadReader() {}

  /** Reads any message but raw, which {@link RawBlock} does; the length was checked. */
  static ProbeMessage read(MessageType type, PayloadReader in) {
    return switch (type) {
      case HELLO -> readHello(in);
      case READING -> readReading(in);
      case LOOK_RESULT -> readLookResult(in);
      case TRIP -> readTrip(in);
      case CAPTURE -> readCapture(in);
      case STATUS -> readStatus(in);
      case ACCEPTED -> new Accepted(Check.code(1, MessageType.class, in.u8()), in.u16());
      case REFUSED ->
          new Refused(
              Check.code(1, MessageType.class, in.u8()),
              in.u16(),
              Check.code(3, RefusalReason.class, in.u8()),
              in.u16());
      case SWITCH_CHANGED ->
          new SwitchChanged(
              Check.code(1, ProbeState.class, in.u8()), Check.code(2, SwitchCause.class, in.u8()));
      case PRESS ->
          new Press(
              Check.code(1, PressSource.class, in.u8()), Check.code(2, PressKind.class, in.u8()));
      case CALIBRATION -> new Calibration(CalibrationFields.read(in));
      default ->
          throw new IllegalArgumentException(
              type + " is no message with a fixed payload from the probe");
    };
  }

  private static Hello readHello(PayloadReader in) {
    return new Hello(
        in.u16(),
        in.u32(),
        in.u8(),
        Check.code(4, ProbeState.class, in.u8()),
        new Inputs(in.u8()),
        Check.code(6, StreamKind.class, in.u8()),
        new SelfTest(in.u16()),
        in.u16(),
        readCauseOrNone(in.u8()),
        Check.code(10, CalibrationState.class, in.u8()),
        CalibrationFields.readScales(in),
        in.u32(),
        in.u32(),
        in.u32(),
        in.u16(),
        Check.code(16, PedalDuty.class, in.u8()),
        new Fuses(in.u8(), in.u8(), in.u8()));
  }

  private static Optional<TripCause> readCauseOrNone(int code) {
    return code == 0 ? Optional.empty() : Optional.of(Check.code(9, TripCause.class, code));
  }

  private static Reading readReading(PayloadReader in) {
    int dropped = in.u16();
    boolean conversionLost = (in.u16() & ProbePayloads.CONVERSION_LOST) != 0;
    List<ChannelSum> channels = new ArrayList<>(SlotPlan.CHANNELS);
    for (int channel = 0; channel < SlotPlan.CHANNELS; channel++) {
      channels.add(new ChannelSum(in.u16(), in.u16(), in.u16(), in.u32()));
    }
    return new Reading(dropped, conversionLost, channels);
  }

  private static LookResult readLookResult(PayloadReader in) {
    return new LookResult(
        Check.code(1, LookOutcome.class, in.u8()),
        in.flag(2, "closes"),
        in.u16(),
        in.u16(),
        in.u16(),
        in.u16(),
        in.u16(),
        in.u16(),
        in.u16(),
        in.u32(),
        in.u32(),
        new Clips(in.u8()));
  }

  private static Trip readTrip(PayloadReader in) {
    int number = in.u16();
    TripCause cause = Check.code(2, TripCause.class, in.u8());
    int channel = in.u8();
    int confirmed = in.u8();
    in.skip(1);
    return new Trip(
        number, cause, channel, confirmed, in.u32(), in.u32(), in.u16(), in.u16(), in.u32(),
        in.u32(), in.u16(), in.u16(), in.u16());
  }

  private static Capture readCapture(PayloadReader in) {
    int number = in.u16();
    int first = in.i16();
    Check.range(3, "count", in.u8(), Capture.CONVERSIONS, Capture.CONVERSIONS);
    int missing = in.u8();
    in.skip(2);
    List<Integer> counts = new ArrayList<>(Capture.CONVERSIONS);
    for (int i = 0; i < Capture.CONVERSIONS; i++) {
      counts.add(in.u16());
    }
    return new Capture(number, first, missing, counts);
  }

  private static Status readStatus(PayloadReader in) {
    return new Status(
        Check.code(1, ProbeState.class, in.u8()),
        new Inputs(in.u8()),
        new SelfTest(in.u16()),
        in.u16(),
        in.u16(),
        in.u16(),
        in.u16(),
        in.u8(),
        in.u8(),
        in.u16(),
        in.u16(),
        in.u16(),
        in.u16(),
        in.u16(),
        in.u32(),
        new Clips(in.u8()),
        Check.code(17, PedalDuty.class, in.u8()));
  }
}
