package firstamp.run.calibration;

import firstamp.analysis.calibrate.CalibrationLine;
import firstamp.analysis.calibrate.CalibrationPoint;
import firstamp.analysis.calibrate.CalibrationPoints;
import firstamp.analysis.calibrate.CalibrationRefused;
import firstamp.analysis.calibrate.CellDivider;
import firstamp.analysis.calibrate.MeterAccuracy;
import firstamp.analysis.calibrate.SettledSecond;
import firstamp.model.ProbeHello;
import firstamp.model.ProbePort;
import firstamp.model.SwitchState;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.pipeline.RunRefused;
import firstamp.run.talk.Refusals;
import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * The steps of a calibration in any order, with what was measured so far; also the trial of the
 * cut. Command line and window go through it alike.
 *
 * <p>It can be left and taken up again: the points stay when the line is closed. Not thread-safe;
 * every method but the plain ones waits for the probe box.
 */
public final class CalibrationProcedure implements AutoCloseable {
  private static final int MOVED_COUNTS = 5;
  private static final int HIGHEST_COUNTS = 1023;

  /** A fine-range conversion above this may be clipped by noise. */
  private static final int FINE_HIGHEST_COUNTS = 1000;

  private final CalibrationPoints points = new CalibrationPoints();
  private volatile CalibrationTalk talk;
  private ProbeHello hello;
  private Calibration before;
  private SettledSecond.Mean[] zeros;

  /**
   * Takes a line, finds the probe box and reads what it keeps.
   *
   * @param port closed with {@link #close()}
   * @return what it keeps
   * @throws RunRefused nobody answers, or the box is not off
   */
  public Calibration attach(ProbePort port) throws IOException, RunRefused {
    close();
    talk = new CalibrationTalk(port);
    hello = talk.connect();
    before = talk.read();
    return before;
  }

  /**
   * Refuses a box whose switch is not off: something else is under way, or it has switched itself
   * off and nobody has looked why.
   */
  public void requireOff() throws RunRefused {
    if (hello.state() != SwitchState.OFF) {
      throw new RunRefused(
          RunRefused.Kind.ARMING,
          hello.latchedTrip() == 0
              ? Refusals.say("calibration.not-off", hello.state())
              : Refusals.say("calibration.tripped", hello.state(), hello.latchedTrip()));
    }
  }

  /** Whether a line is open. */
  public boolean attached() {
    return talk != null;
  }

  /** Who answered on the line. */
  public ProbeHello hello() {
    return hello;
  }

  /** What each channel read with everything joined; null = not taken yet. */
  public SettledSecond.Mean zeroOf(Channel channel) {
    return zeros == null ? null : zeros[channel.ordinal()];
  }

  /** What the box kept when the line was taken. */
  public Calibration before() {
    return before;
  }

  /**
   * Takes the zeros, everything joined to the chassis clip.
   *
   * @return channels that are joined to nothing and keep what they have
   */
  public List<Channel> zero() throws IOException, RunRefused {
    SettledSecond second = measure(EnumSet.allOf(Channel.class));
    zeros = new SettledSecond.Mean[Channel.values().length];
    List<Channel> leftOut = new ArrayList<>();
    for (Channel channel : Channel.values()) {
      zeros[channel.ordinal()] = second.of(channel);
      if (second.of(channel).lowestCounts() == HIGHEST_COUNTS) {
        leftOut.add(channel);
      } else {
        points.add("zero", channel, new CalibrationPoint(0, second.of(channel)));
      }
    }
    return leftOut;
  }

  /**
   * Takes a point of the supply volts and the rails, all on one battery.
   *
   * @param volts by the person's meter
   * @return channels that are not on it and keep the gain that they have
   */
  public List<Channel> volts(double volts) throws IOException, RunRefused {
    Set<Channel> channels = EnumSet.range(Channel.V, Channel.R3);
    SettledSecond second = measure(channels);
    List<Channel> leftOut = new ArrayList<>();
    for (Channel channel : channels) {
      SettledSecond.Mean mean = second.of(channel);
      boolean moved =
          zeros == null
              || Math.abs(mean.meanCounts() - zeros[channel.ordinal()].meanCounts()) > MOVED_COUNTS;
      if (moved && mean.highestCounts() < HIGHEST_COUNTS) {
        points.add("volts", channel, new CalibrationPoint(volts, mean));
      } else {
        leftOut.add(channel);
      }
    }
    return leftOut;
  }

  /**
   * Lets a current through the resistor flow, and measures it over a second.
   *
   * @param holdNanos how much longer it flows, for the person to read the meter
   */
  public SettledSecond current(long holdNanos) throws IOException, RunRefused {
    talk.connect();
    return new ResistorTrial(talk).current(hello, before, holdNanos);
  }

  /**
   * Takes a point of the supply current.
   *
   * @param step identifies it: taken again it replaces the point before
   * @param amps by the person's meter
   */
  public void current(String step, SettledSecond second, double amps) {
    points.add(step, Channel.I, new CalibrationPoint(amps, second.of(Channel.I)));
    if (second.of(Channel.J).highestCounts() < FINE_HIGHEST_COUNTS) {
      points.add(step, Channel.J, new CalibrationPoint(amps, second.of(Channel.J)));
    }
  }

  /**
   * Takes a point of the meter and one of the head.
   *
   * @param meterV a cell on the meter clip, by the person's meter
   * @param divider across it, with the head clips
   */
  public void levels(double meterV, CellDivider divider) throws IOException, RunRefused {
    SettledSecond second = measure(EnumSet.of(Channel.H, Channel.M));
    points.add("levels", Channel.M, new CalibrationPoint(meterV, second.of(Channel.M)));
    points.add(
        "levels", Channel.H, new CalibrationPoint(meterV * divider.share(), second.of(Channel.H)));
  }

  /** Takes a further point of one channel of volts. */
  public void further(Channel channel, double value) throws IOException, RunRefused {
    SettledSecond second = measure(EnumSet.of(channel));
    points.add("further", channel, new CalibrationPoint(value, second.of(channel)));
  }

  /**
   * The line of every channel that has points.
   *
   * @param ohms accuracy of the person's meter on the two resistors at the head clips
   * @throws CalibrationRefused the points of a channel cannot be
   */
  public List<CalibrationLine> lines(MeterAccuracy volts, MeterAccuracy amps, MeterAccuracy ohms)
      throws CalibrationRefused {
    return points.lines(before, volts, amps, CellDivider.accuracy(volts, ohms));
  }

  /**
   * Writes the lines into the box and reads back what it keeps.
   *
   * @return what it keeps now
   */
  public Calibration write(List<CalibrationLine> lines, long epochSeconds)
      throws IOException, RunRefused {
    talk.write(CalibrationPoints.with(before, lines, epochSeconds));
    before = talk.read();
    return before;
  }

  /** With the resistor on the set terminals: a limit under its current, and it must switch off. */
  public ResistorTrial.Cut tryTheCut() throws IOException, RunRefused {
    talk.connect();
    return new ResistorTrial(talk).tryTheCut(hello, before);
  }

  /** Opens the switch now; from any thread. The step under way ends with a refusal. */
  public void off() {
    CalibrationTalk now = talk;
    if (now != null) {
      now.off();
    }
  }

  private SettledSecond measure(Set<Channel> channels) throws IOException, RunRefused {
    talk.connect();
    return talk.settled(channels);
  }

  /** Closes the line, the switch open; the points stay. */
  @Override
  public void close() {
    if (talk != null) {
      talk.close();
      talk = null;
    }
  }
}
