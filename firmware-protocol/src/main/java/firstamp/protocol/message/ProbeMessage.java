package firstamp.protocol.message;

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
import firstamp.protocol.values.CalibrationData;
import firstamp.protocol.values.ChannelScale;
import firstamp.protocol.values.ChannelSum;
import firstamp.protocol.values.Check;
import firstamp.protocol.values.Clips;
import firstamp.protocol.values.Fuses;
import firstamp.protocol.values.Inputs;
import firstamp.protocol.values.SelfTest;
import firstamp.protocol.values.SlotPlan;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What the probe says; one record per message of wire-format.md section 3. A tick in a field is the
 * probe's 32-bit microsecond tick as it stands on the wire; {@code TickUnwrapper} widens it.
 * Sixteenths are 1/16 count.
 */
public sealed interface ProbeMessage extends Message {
  /** Calls the visitor's method for this message. */
  <R> R accept(ProbeMessageVisitor<R> visitor);

  /**
   * Who the probe is and how it stands; after every start, and when asked.
   *
   * @param firmware major * 256 + minor
   * @param bootId counts the probe's starts: another one means that it was restarted
   * @param resetCauseBits bit 0 power-on, 1 external, 2 brown-out, 3 watchdog
   * @param latchedTrip number of the latched trip, 0 = none
   * @param latchedCause its cause, absent if none is latched
   * @param scales eight, in channel order
   * @param calibratedEpochSeconds seconds since 1970, 0 = never
   * @param hardShortMilliamps above which the limiter holds the current
   * @param lookMilliohms the look resistor
   * @param silenceMillis host silence that opens the switch, now in force
   * @param pedal what the pedal does
   * @param fuses of the chip
   */
  record Hello(
      int firmware,
      long bootId,
      int resetCauseBits,
      ProbeState state,
      Inputs inputs,
      StreamKind stream,
      SelfTest selfTest,
      int latchedTrip,
      Optional<TripCause> latchedCause,
      CalibrationState calibration,
      List<ChannelScale> scales,
      long calibratedEpochSeconds,
      long hardShortMilliamps,
      long lookMilliohms,
      int silenceMillis,
      PedalDuty pedal,
      Fuses fuses)
      implements ProbeMessage {
    public Hello {
      Check.range(1, "firmware", firmware, 0, Check.U16);
      Check.range(2, "bootId", bootId, 0, Check.U32);
      Check.range(3, "resetCauseBits", resetCauseBits, 0, Check.U8);
      Check.range(8, "latchedTrip", latchedTrip, 0, Check.U16);
      scales = Check.size(11, "scales", scales, SlotPlan.CHANNELS);
      Check.range(12, "calibratedEpochSeconds", calibratedEpochSeconds, 0, Check.U32);
      Check.range(13, "hardShortMilliamps", hardShortMilliamps, 0, Check.U32);
      Check.range(14, "lookMilliohms", lookMilliohms, 0, Check.U32);
      Check.range(15, "silenceMillis", silenceMillis, 0, Check.U16);
    }

    @Override
    public MessageType type() {
      return MessageType.HELLO;
    }

    @Override
    public <R> R accept(ProbeMessageVisitor<R> visitor) {
      return visitor.hello(this);
    }
  }

  /**
   * A block of consecutive conversions.
   *
   * @param firstSlot slot of the first, 0 to 31
   * @param dropped conversions the probe lost since its start, modulo 65536
   * @param counts 1 to 128 values, 0 to 1023
   */
  record Raw(int firstSlot, int dropped, short[] counts) implements ProbeMessage {
    /** Most conversions of one block. */
    public static final int MOST_CONVERSIONS = 128;

    public Raw {
      Check.range(1, "firstSlot", firstSlot, 0, SlotPlan.SLOTS - 1);
      Check.range(2, "number of conversions", counts.length, 1, MOST_CONVERSIONS);
      Check.range(3, "dropped", dropped, 0, Check.U16);
      for (short conversion : counts) {
        Check.range(4, "counts", conversion, 0, Check.HIGHEST_COUNT);
      }
      counts = counts.clone();
    }

    /** A copy of the conversions. */
    @Override
    public short[] counts() {
      return counts.clone();
    }

    @Override
    public MessageType type() {
      return MessageType.RAW;
    }

    @Override
    public <R> R accept(ProbeMessageVisitor<R> visitor) {
      return visitor.raw(this);
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof Raw raw
          && raw.firstSlot == firstSlot
          && raw.dropped == dropped
          && Arrays.equals(raw.counts, counts);
    }

    @Override
    public int hashCode() {
      return 31 * (31 * firstSlot + dropped) + Arrays.hashCode(counts);
    }

    @Override
    public String toString() {
      return "Raw[firstSlot="
          + firstSlot
          + ", dropped="
          + dropped
          + ", counts="
          + Arrays.toString(counts)
          + "]";
    }
  }

  /**
   * All channels reduced over 10 ms.
   *
   * @param dropped as in {@link Raw}
   * @param conversionLost whether a conversion of this reading was lost: it is a gap then
   * @param channels eight, in channel order
   */
  record Reading(int dropped, boolean conversionLost, List<ChannelSum> channels)
      implements ProbeMessage {
    public Reading {
      Check.range(1, "dropped", dropped, 0, Check.U16);
      channels = Check.size(3, "channels", channels, SlotPlan.CHANNELS);
    }

    @Override
    public MessageType type() {
      return MessageType.READING;
    }

    @Override
    public <R> R accept(ProbeMessageVisitor<R> visitor) {
      return visitor.reading(this);
    }
  }

  /**
   * What the first look, or the check before it, found.
   *
   * @param closes whether the switch closes next
   * @param durationMillis of the look; of the check where that is what failed
   * @param zeroISixteenths zero of I
   * @param zeroJSixteenths zero of J
   * @param zeroVSixteenths zero of V
   * @param pairs pairs of V and J conversions taken
   * @param endVSixteenths mean of the last V conversions, zero not taken off
   * @param endJSixteenths the same of J
   * @param sumVCounts sum of all V conversions of the look
   * @param sumJCounts the same of J
   * @param clips as read back before the look
   */
  record LookResult(
      LookOutcome outcome,
      boolean closes,
      int durationMillis,
      int zeroISixteenths,
      int zeroJSixteenths,
      int zeroVSixteenths,
      int pairs,
      int endVSixteenths,
      int endJSixteenths,
      long sumVCounts,
      long sumJCounts,
      Clips clips)
      implements ProbeMessage {
    public LookResult {
      Check.range(3, "durationMillis", durationMillis, 0, Check.U16);
      Check.range(4, "zeroISixteenths", zeroISixteenths, 0, Check.U16);
      Check.range(5, "zeroJSixteenths", zeroJSixteenths, 0, Check.U16);
      Check.range(6, "zeroVSixteenths", zeroVSixteenths, 0, Check.U16);
      Check.range(7, "pairs", pairs, 0, Check.U16);
      Check.range(8, "endVSixteenths", endVSixteenths, 0, Check.U16);
      Check.range(9, "endJSixteenths", endJSixteenths, 0, Check.U16);
      Check.range(10, "sumVCounts", sumVCounts, 0, Check.U32);
      Check.range(11, "sumJCounts", sumJCounts, 0, Check.U32);
    }

    @Override
    public MessageType type() {
      return MessageType.LOOK_RESULT;
    }

    @Override
    public <R> R accept(ProbeMessageVisitor<R> visitor) {
      return visitor.lookResult(this);
    }
  }

  /**
   * The probe has opened the switch by itself. The frame's tick is when the pin went low.
   *
   * @param number 1.., kept over a reset
   * @param channel that decided, 0 to 7; 255 none
   * @param confirmed conversions in a row that were over the limit
   * @param crossedTickMicros when the limit was crossed
   * @param decidedTickMicros start of the conversion that decided
   * @param value of the deciding conversion in counts; in 1/16 count where the cause is {@link
   *     TripCause#MEAN}; of {@link TripCause#SELF_TEST} without a channel its bits
   * @param limit in the same unit, absolute
   * @param i2tCounts2 inrush I2t sum, counts squared times conversions
   * @param i2tLimitCounts2 its budget, 0 = not watched
   * @param bootLow low 16 bits of the boot id in which it happened
   * @param limitedConversions how many in a row, to the last, had seen the limiter hold
   * @param lastVCounts the last conversion of V before the opening
   */
  record Trip(
      int number,
      TripCause cause,
      int channel,
      int confirmed,
      long crossedTickMicros,
      long decidedTickMicros,
      int value,
      int limit,
      long i2tCounts2,
      long i2tLimitCounts2,
      int bootLow,
      int limitedConversions,
      int lastVCounts)
      implements ProbeMessage {
    /** The channel of a trip that no channel decided. */
    public static final int NO_CHANNEL = 255;

    public Trip {
      Check.range(1, "number", number, 0, Check.U16);
      if (channel != NO_CHANNEL) {
        Check.range(3, "channel", channel, 0, SlotPlan.CHANNELS - 1);
      }
      Check.range(4, "confirmed", confirmed, 0, Check.U8);
      Check.range(6, "crossedTickMicros", crossedTickMicros, 0, Check.U32);
      Check.range(7, "decidedTickMicros", decidedTickMicros, 0, Check.U32);
      Check.range(8, "value", value, 0, Check.U16);
      Check.range(9, "limit", limit, 0, Check.U16);
      Check.range(10, "i2tCounts2", i2tCounts2, 0, Check.U32);
      Check.range(11, "i2tLimitCounts2", i2tLimitCounts2, 0, Check.U32);
      Check.range(12, "bootLow", bootLow, 0, Check.U16);
      Check.range(13, "limitedConversions", limitedConversions, 0, Check.U16);
      Check.range(14, "lastVCounts", lastVCounts, 0, Check.U16);
    }

    /** The value in counts, whatever the cause. */
    public double valueCounts() {
      return cause == TripCause.MEAN ? value / 16.0 : value;
    }

    /** The limit in counts, whatever the cause. */
    public double limitCounts() {
      return cause == TripCause.MEAN ? limit / 16.0 : limit;
    }

    @Override
    public MessageType type() {
      return MessageType.TRIP;
    }

    @Override
    public <R> R accept(ProbeMessageVisitor<R> visitor) {
      return visitor.trip(this);
    }
  }

  /**
   * Sixteen conversions of I around a trip, 250 us apart.
   *
   * @param number of the trip
   * @param first place of the first value, -127 to 113: 0 = the deciding conversion
   * @param missing how many values at the start are void because the probe had not started yet, 0
   *     to 16
   * @param counts sixteen values, 0 to 1023
   */
  record Capture(int number, int first, int missing, List<Integer> counts) implements ProbeMessage {
    /** Conversions of one block. */
    public static final int CONVERSIONS = 16;

    public Capture {
      Check.range(1, "number", number, 0, Check.U16);
      Check.range(2, "first", first, -127, 113);
      Check.range(4, "missing", missing, 0, CONVERSIONS);
      counts = Check.size(6, "counts", counts, CONVERSIONS);
      for (int conversion : counts) {
        Check.range(6, "counts", conversion, 0, Check.HIGHEST_COUNT);
      }
    }

    @Override
    public MessageType type() {
      return MessageType.CAPTURE;
    }

    @Override
    public <R> R accept(ProbeMessageVisitor<R> visitor) {
      return visitor.capture(this);
    }
  }

  /**
   * How the probe is doing, every 200 ms.
   *
   * @param latchedTrip 0 = none
   * @param dropped conversions lost, modulo 65536
   * @param rejected received frames dropped, modulo 65536
   * @param overruns received bytes lost
   * @param queueHighest fullest the queue of conversions has been
   * @param busyPercent share of time not asleep in the last 200 ms
   * @param stackFreeBytes bytes never touched between data and stack
   * @param lateStarts conversion starts that found the converter busy
   * @param zeroISixteenths last zero of I, {@link #NO_ZERO} = none yet
   * @param zeroJSixteenths of J
   * @param zeroVSixteenths of V
   * @param conversionsSent put into the stream since it was accepted (a reading counts 160)
   * @param clips as last read back
   * @param pedal what the pedal does
   */
  record Status(
      ProbeState state,
      Inputs inputs,
      SelfTest selfTest,
      int latchedTrip,
      int dropped,
      int rejected,
      int overruns,
      int queueHighest,
      int busyPercent,
      int stackFreeBytes,
      int lateStarts,
      int zeroISixteenths,
      int zeroJSixteenths,
      int zeroVSixteenths,
      long conversionsSent,
      Clips clips,
      PedalDuty pedal)
      implements ProbeMessage {
    /** No zero was taken yet. */
    public static final int NO_ZERO = 0xFFFF;

    public Status {
      Check.range(4, "latchedTrip", latchedTrip, 0, Check.U16);
      Check.range(5, "dropped", dropped, 0, Check.U16);
      Check.range(6, "rejected", rejected, 0, Check.U16);
      Check.range(7, "overruns", overruns, 0, Check.U16);
      Check.range(8, "queueHighest", queueHighest, 0, Check.U8);
      Check.range(9, "busyPercent", busyPercent, 0, Check.U8);
      Check.range(10, "stackFreeBytes", stackFreeBytes, 0, Check.U16);
      Check.range(11, "lateStarts", lateStarts, 0, Check.U16);
      Check.range(12, "zeroISixteenths", zeroISixteenths, 0, Check.U16);
      Check.range(13, "zeroJSixteenths", zeroJSixteenths, 0, Check.U16);
      Check.range(14, "zeroVSixteenths", zeroVSixteenths, 0, Check.U16);
      Check.range(15, "conversionsSent", conversionsSent, 0, Check.U32);
    }

    @Override
    public MessageType type() {
      return MessageType.STATUS;
    }

    @Override
    public <R> R accept(ProbeMessageVisitor<R> visitor) {
      return visitor.status(this);
    }
  }

  /**
   * A command was taken.
   *
   * @param command type of the host's frame
   * @param commandSequence its sequence
   */
  record Accepted(MessageType command, int commandSequence) implements ProbeMessage {
    public Accepted {
      Check.range(2, "commandSequence", commandSequence, 0, Check.U16);
    }

    @Override
    public MessageType type() {
      return MessageType.ACCEPTED;
    }

    @Override
    public <R> R accept(ProbeMessageVisitor<R> visitor) {
      return visitor.accepted(this);
    }
  }

  /**
   * A command was refused and has changed nothing.
   *
   * @param command type of the host's frame
   * @param commandSequence its sequence
   * @param detail what stood against it, see {@link RefusalReason}
   */
  record Refused(MessageType command, int commandSequence, RefusalReason reason, int detail)
      implements ProbeMessage {
    public Refused {
      Check.range(2, "commandSequence", commandSequence, 0, Check.U16);
      Check.range(4, "detail", detail, 0, Check.U16);
    }

    @Override
    public MessageType type() {
      return MessageType.REFUSED;
    }

    @Override
    public <R> R accept(ProbeMessageVisitor<R> visitor) {
      return visitor.refused(this);
    }
  }

  /** The state has changed, and who changed it. */
  record SwitchChanged(ProbeState state, SwitchCause by) implements ProbeMessage {
    @Override
    public MessageType type() {
      return MessageType.SWITCH_CHANGED;
    }

    @Override
    public <R> R accept(ProbeMessageVisitor<R> visitor) {
      return visitor.switchChanged(this);
    }
  }

  /** Button or pedal was pressed. */
  record Press(PressSource source, PressKind kind) implements ProbeMessage {
    @Override
    public MessageType type() {
      return MessageType.PRESS;
    }

    @Override
    public <R> R accept(ProbeMessageVisitor<R> visitor) {
      return visitor.press(this);
    }
  }

  /** The calibration that the probe keeps. */
  record Calibration(CalibrationData data) implements ProbeMessage {
    @Override
    public MessageType type() {
      return MessageType.CALIBRATION;
    }

    @Override
    public <R> R accept(ProbeMessageVisitor<R> visitor) {
      return visitor.calibration(this);
    }
  }
}
