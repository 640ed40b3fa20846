package firstamp.emulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import firstamp.emulate.box.Box;
import firstamp.emulate.box.BoxKind;
import firstamp.emulate.line.Pace;
import firstamp.model.samples.Channel;
import firstamp.protocol.codes.LookOutcome;
import firstamp.protocol.codes.ProbeState;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.ChannelScale;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** The healthy demo keeps within its own job sheet, with margin. */
final class DemoFiguresTest {

  @Test
  void healthySetStaysWithinItsSheet() throws Exception {
    TestHost host = new TestHost(Scenarios.open("healthy", 1, Pace.MAX));
    host.switchOn(TestHost.limits().build(), TestHost.LOOK);
    double closed = host.tickOf(ProbeState.ON) / 1e6;
    host.runUntil(closed + 6);

    ProbeMessage.LookResult look = host.last(ProbeMessage.LookResult.class).orElseThrow();
    Box box = Box.of(BoxKind.SOLDERED, 1);
    double v = perCount(box, Channel.V);
    double j = perCount(box, Channel.J);
    double endV = (look.endVSixteenths() - look.zeroVSixteenths()) / 16.0 * v;
    double endA = (look.endJSixteenths() - look.zeroJSixteenths()) / 16.0 * j;
    double ohm = endV / endA;
    double sumV = (look.sumVCounts() - look.pairs() * look.zeroVSixteenths() / 16.0) * v;
    double sumA = (look.sumJCounts() - look.pairs() * look.zeroJSixteenths() / 16.0) * j;
    double microfarad = (sumA - sumV / ohm) * 0.002 / endV * 1e6;
    double peakA =
        (Arrays.stream(host.of(Channel.I, closed, closed + 0.1)).max().orElseThrow()
                - look.zeroISixteenths() / 16.0)
            * perCount(box, Channel.I);
    double steadyA =
        (host.mean(Channel.J, closed + 4, closed + 6) - look.zeroJSixteenths() / 16.0) * j;
    double railV =
        kept(box, Channel.R1).valueAt(host.mean(Channel.R1, closed + 4, closed + 6)) / 1e6;
    double supplyV =
        (host.mean(Channel.V, closed + 4, closed + 6) - look.zeroVSixteenths() / 16.0) * v;
    double head = rms(host.of(Channel.H, closed + 4, closed + 6)) * 0.02 / 1024;
    double meter = rms(host.of(Channel.M, closed + 4, closed + 6)) * 5 / 1024;
    String figures =
        String.format(
            "look %.1f ohm %.0f uF; peak %.2f A, steady %.4f A, %.2f V, B1 %.3f V, within 5 %% at"
                + " %.0f ms, head %.1f dB under meter at %.1f dBV",
            ohm,
            microfarad,
            peakA,
            steadyA,
            supplyV,
            railV,
            settled5Ms(host, closed, railV),
            20 * Math.log10(meter / head),
            20 * Math.log10(meter));
    System.out.println(figures);
    assertEquals(LookOutcome.CLEAR, look.outcome());
    assertTrue(host.all(ProbeMessage.Trip.class).isEmpty(), "a trip");
    assertEquals(202, ohm, 10, figures);
    assertEquals(3200, microfarad, 300, figures);
    assertEquals(1.8, peakA, 0.3, figures);
    assertEquals(0.118, steadyA, 0.003, figures);
    assertEquals(11.984, supplyV, 0.008 * 11.984 + 0.06, figures);
    assertEquals(8.205, railV, 0.008 * 8.205 + 0.04, figures);
    assertTrue(settled5Ms(host, closed, 8.2) < 280, figures);
    assertEquals(38, 20 * Math.log10(meter / head), 2.5, figures);
    assertEquals(-18, 20 * Math.log10(meter), 0.5, figures);
  }

  private static ChannelScale kept(Box box, Channel channel) {
    return box.kept().scales().get(channel.ordinal());
  }

  private static double perCount(Box box, Channel channel) {
    return kept(box, channel).valuePerCount() / 1e6;
  }

  /** Last time at which the mean of 10 ms was further than 5 % from a value. */
  private static double settled5Ms(TestHost host, double closed, double finalV) {
    double last = 0;
    for (int reading = 0; reading < 150; reading++) {
      double from = closed + reading / 100.0;
      double volts = host.mean(Channel.R1, from, from + 0.01) * 40 / 1024 - 20;
      if (Math.abs(volts - finalV) > 0.05 * finalV) {
        last = (reading + 1) * 10;
      }
    }
    return last;
  }

  private static double rms(int[] counts) {
    double mean = Arrays.stream(counts).average().orElseThrow();
    return Math.sqrt(
        Arrays.stream(counts).mapToDouble(c -> (c - mean) * (c - mean)).average().orElseThrow());
  }
}
