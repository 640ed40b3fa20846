package firstamp.emulate;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.emulate.box.Box;
import firstamp.emulate.box.DrawnBox;
import firstamp.model.Channel;
import firstamp.protocol.ChannelScale;
import firstamp.protocol.HostMessage;
import firstamp.protocol.LookOutcome;
import firstamp.protocol.ProbeMessage;
import firstamp.protocol.ProbeState;
import firstamp.protocol.StreamKind;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Drawn boxes at 10 to 40 C, up to a year old: all that should arm do, with their zero in place.
 */
final class ArmingTest {
  private static final int BOXES = 200;
  private static final int LEAKING_BOXES = 40;
  private static final String STEADY = "t_s,supply_V,supply_A,rail1_V\n0,12,0.12,8\n60,12,0.12,8\n";

  /** Calibrated at 25 C. */
  private static DrawnBox box(int seed) {
    double kelvin = -15 + 30.0 * (seed - 1) / (BOXES - 1);
    return DrawnBox.of(seed, kelvin, (seed % 11) / 10.0);
  }

  /** A steady set; the switch leaks while it is open. */
  private static Bench bench(double leakA) throws Exception {
    WaveformBench set =
        new WaveformBench(WaveformFile.parse(STEADY, "steady"), FrontEnd.defaults(12));
    return leakA == 0 ? set : new Leaking(set, leakA);
  }

  private static TestHost armed(Box box, double leakA, long seed) throws Exception {
    ProbeOptions options = ProbeOptions.of(seed, Pace.MAX);
    TestHost host = new TestHost(new EmulatedProbe(bench(leakA), "box " + seed, options, box));
    host.open(StreamKind.RAW);
    host.send(new HostMessage.SetLimits(TestHost.limits().build()));
    host.send(new HostMessage.SwitchOn(TestHost.look(12, true)));
    while (host.last(ProbeMessage.LookResult.class).isEmpty() && host.nowS() < 40) {
      host.runFor(0.1);
    }
    host.runFor(0.1);
    return host;
  }

  private static boolean on(TestHost host) {
    return host.all(ProbeMessage.SwitchChanged.class).stream()
        .anyMatch(change -> change.state() == ProbeState.ON);
  }

  private static LookOutcome outcome(TestHost host) {
    return host.last(ProbeMessage.LookResult.class).orElseThrow().outcome();
  }

  @Test
  void everyCalibratedBoxArmsAndItsZeroIsWithinACount() throws Exception {
    double furthest = 0;
    for (int seed = 1; seed <= BOXES; seed++) {
      Box box = box(seed).calibrated();
      TestHost host = armed(box, 0, seed);
      assertThat(on(host)).as("box %d: %s", seed, outcome(host)).isTrue();
      ProbeMessage.LookResult look = host.last(ProbeMessage.LookResult.class).orElseThrow();
      int[] zeros = {look.zeroISixteenths(), look.zeroJSixteenths(), look.zeroVSixteenths()};
      for (Channel channel : new Channel[] {Channel.I, Channel.J, Channel.V}) {
        ChannelScale kept = box.kept().scales().get(channel.ordinal());
        double off = zeros[channel.ordinal()] / 16.0 + kept.zero() / kept.valuePerCount();
        assertThat(Math.abs(off)).as("box %d %s", seed, channel).isLessThanOrEqualTo(1);
        furthest = Math.max(furthest, Math.abs(off));
      }
    }
    System.out.printf(
        Locale.ROOT,
        "calibrated boxes: %d of %d arm, 10 to 40 C; zero of I, J, V within %.2f counts%n",
        BOXES,
        BOXES,
        furthest);
  }

  /** Its zero lies in the band that the parts allow. */
  @Test
  void everyNewBoxArms() throws Exception {
    for (int seed = 1; seed <= BOXES; seed++) {
      TestHost host = armed(box(seed).blank(), 0, seed);
      assertThat(on(host)).as("box %d: %s", seed, outcome(host)).isTrue();
    }
    System.out.printf("new boxes: %d of %d arm%n", BOXES, BOXES);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.005, 0.020, 0.200})
  void aLeakingSwitchIsRefused(double leakA) throws Exception {
    for (int seed = 1; seed <= LEAKING_BOXES; seed++) {
      TestHost host = armed(box(seed * BOXES / LEAKING_BOXES).calibrated(), leakA, seed);
      assertThat(on(host)).as("box " + seed).isFalse();
      assertThat(outcome(host)).isIn(LookOutcome.CURRENT_WHILE_OFF, LookOutcome.NO_ZERO);
    }
    System.out.printf(
        Locale.ROOT,
        "leak of %.0f mA: %d of %d refused%n",
        1000 * leakA,
        LEAKING_BOXES,
        LEAKING_BOXES);
  }

  /** The current of the open switch besides what the set draws. */
  private static final class Leaking implements Bench {
    private final Bench set;
    private final double leakA;
    private boolean open = true;

    Leaking(Bench set, double leakA) {
      this.set = set;
      this.leakA = leakA;
    }

    @Override
    public double advance(double untilS, boolean watchHardShort) {
      return set.advance(untilS, watchHardShort);
    }

    @Override
    public void join(Joined joined) {
      open = joined == Joined.OPEN;
      set.join(joined);
    }

    @Override
    public double value(Channel channel) {
      boolean current = channel == Channel.I || channel == Channel.J;
      return set.value(channel) + (open && current ? leakA : 0);
    }

    @Override
    public int inputBits() {
      return set.inputBits();
    }

    @Override
    public double hardShortA() {
      return set.hardShortA();
    }

    @Override
    public boolean ended() {
      return set.ended();
    }
  }
}
