package firstamp.protocol.message;

import firstamp.protocol.codes.LineSpeed;
import firstamp.protocol.codes.MessageType;
import firstamp.protocol.codes.PedalDuty;
import firstamp.protocol.codes.RefusalReason;
import firstamp.protocol.codes.Resend;
import firstamp.protocol.codes.SoundPattern;
import firstamp.protocol.codes.StreamKind;
import firstamp.protocol.codes.SwitchCause;
import firstamp.protocol.values.CalibrationData;
import firstamp.protocol.values.ChannelScale;
import firstamp.protocol.values.Check;
import firstamp.protocol.values.FieldException;
import firstamp.protocol.values.LookParameters;
import firstamp.protocol.values.TripLimits;

/** What the host says; one record per message of wire-format.md section 4. */
public sealed interface HostMessage extends Message {
  /** Calls the visitor's method for this message. */
  <R> R accept(HostMessageVisitor<R> visitor);

  /**
   * Asks who the probe is and says which speed it then keeps; answered by {@link
   * ProbeMessage.Hello}.
   */
  record HelloRequest(LineSpeed speed) implements HostMessage {
    @Override
    public MessageType type() {
      return MessageType.HELLO_REQUEST;
    }

    @Override
    public <R> R accept(HostMessageVisitor<R> visitor) {
      return visitor.helloRequest(this);
    }
  }

  /** Starts or stops the stream. */
  record StreamRequest(StreamKind kind) implements HostMessage {
    @Override
    public MessageType type() {
      return MessageType.STREAM_REQUEST;
    }

    @Override
    public <R> R accept(HostMessageVisitor<R> visitor) {
      return visitor.streamRequest(this);
    }
  }

  /** Sets what the probe trips on. */
  record SetLimits(TripLimits limits) implements HostMessage {
    @Override
    public MessageType type() {
      return MessageType.SET_LIMITS;
    }

    @Override
    public <R> R accept(HostMessageVisitor<R> visitor) {
      return visitor.setLimits(this);
    }
  }

  /** Check, zero, look, then off. */
  record LookRequest(LookParameters look) implements HostMessage {
    @Override
    public MessageType type() {
      return MessageType.LOOK_REQUEST;
    }

    @Override
    public <R> R accept(HostMessageVisitor<R> visitor) {
      return visitor.lookRequest(this);
    }
  }

  /** Check, zero, look, close. */
  record SwitchOn(LookParameters look) implements HostMessage {
    @Override
    public MessageType type() {
      return MessageType.SWITCH_ON;
    }

    @Override
    public <R> R accept(HostMessageVisitor<R> visitor) {
      return visitor.switchOn(this);
    }
  }

  /** Opens the switch; also ends check and look. Who: user, rule, time or signal. */
  record SwitchOff(SwitchCause by) implements HostMessage {
    public SwitchOff {
      Check.range(1, "by", by.code(), SwitchCause.USER.code(), SwitchCause.SIGNAL.code());
    }

    @Override
    public MessageType type() {
      return MessageType.SWITCH_OFF;
    }

    @Override
    public <R> R accept(HostMessageVisitor<R> visitor) {
      return visitor.switchOff(this);
    }
  }

  /** Switches on again after a trip, which its number names. */
  record Restore(int tripNumber, LookParameters look) implements HostMessage {
    public Restore {
      Check.range(1, "tripNumber", tripNumber, 0, Check.U16);
    }

    @Override
    public MessageType type() {
      return MessageType.RESTORE;
    }

    @Override
    public <R> R accept(HostMessageVisitor<R> visitor) {
      return visitor.restore(this);
    }
  }

  /** The host is alive. */
  record Heartbeat() implements HostMessage {
    @Override
    public MessageType type() {
      return MessageType.HEARTBEAT;
    }

    @Override
    public <R> R accept(HostMessageVisitor<R> visitor) {
      return visitor.heartbeat(this);
    }
  }

  /** Asks for a trip's messages once more. */
  record SendAgain(Resend what, int tripNumber) implements HostMessage {
    public SendAgain {
      Check.range(2, "tripNumber", tripNumber, 0, Check.U16);
    }

    @Override
    public MessageType type() {
      return MessageType.SEND_AGAIN;
    }

    @Override
    public <R> R accept(HostMessageVisitor<R> visitor) {
      return visitor.sendAgain(this);
    }
  }

  /** Asks for the calibration. */
  record CalibrationRead() implements HostMessage {
    @Override
    public MessageType type() {
      return MessageType.CALIBRATION_READ;
    }

    @Override
    public <R> R accept(HostMessageVisitor<R> visitor) {
      return visitor.calibrationRead(this);
    }
  }

  /** Writes the calibration; no channel's full may equal its zero. */
  record CalibrationWrite(CalibrationData data) implements HostMessage {
    public CalibrationWrite {
      for (ChannelScale scale : data.scales()) {
        if (scale.zero() == scale.full()) {
          throw new FieldException(
              2,
              RefusalReason.BAD_VALUE,
              "scale is flat at " + scale.zero() + "; expected full other than zero");
        }
      }
    }

    @Override
    public MessageType type() {
      return MessageType.CALIBRATION_WRITE;
    }

    @Override
    public <R> R accept(HostMessageVisitor<R> visitor) {
      return visitor.calibrationWrite(this);
    }
  }

  /** Asks for a status. */
  record StatusRequest() implements HostMessage {
    @Override
    public MessageType type() {
      return MessageType.STATUS_REQUEST;
    }

    @Override
    public <R> R accept(HostMessageVisitor<R> visitor) {
      return visitor.statusRequest(this);
    }
  }

  /** Repeats the self-test; answered by a hello. */
  record SelfTestRequest() implements HostMessage {
    @Override
    public MessageType type() {
      return MessageType.SELF_TEST_REQUEST;
    }

    @Override
    public <R> R accept(HostMessageVisitor<R> visitor) {
      return visitor.selfTestRequest(this);
    }
  }

  /** Plays a pattern on the beeper. */
  record Sound(SoundPattern pattern) implements HostMessage {
    @Override
    public MessageType type() {
      return MessageType.SOUND;
    }

    @Override
    public <R> R accept(HostMessageVisitor<R> visitor) {
      return visitor.sound(this);
    }
  }

  /** Clears the latch of a trip; nothing closes. */
  record ClearTrip(int tripNumber) implements HostMessage {
    public ClearTrip {
      Check.range(1, "tripNumber", tripNumber, 0, Check.U16);
    }

    @Override
    public MessageType type() {
      return MessageType.CLEAR_TRIP;
    }

    @Override
    public <R> R accept(HostMessageVisitor<R> visitor) {
      return visitor.clearTrip(this);
    }
  }

  /** Says what the pedal in the probe's jack does. */
  record SetPedal(PedalDuty duty) implements HostMessage {
    @Override
    public MessageType type() {
      return MessageType.SET_PEDAL;
    }

    @Override
    public <R> R accept(HostMessageVisitor<R> visitor) {
      return visitor.setPedal(this);
    }
  }

  /** Asks which clips are joined to something; answered by a status once they were read back. */
  record ReadClips() implements HostMessage {
    @Override
    public MessageType type() {
      return MessageType.READ_CLIPS;
    }

    @Override
    public <R> R accept(HostMessageVisitor<R> visitor) {
      return visitor.readClips(this);
    }
  }
}
