package firstamp.worlds;

import java.nio.file.Path;
import java.util.Set;

/** Someone speaks into the microphone; meter and head hear it. */
final class SpeechKinds {
  private SpeechKinds() {}

  private static World recorder(
      Draw draw,
      String name,
      double[] meter,
      double[] head,
      double expectedDb,
      double loss,
      double fromS) {
    double volts = draw.oneOf(9.0, 12.0, 18.0);
    double amperes = draw.decades(0.02, 0.08);
    double farad = draw.decades(100e-6, 1000e-6);
    Trace trace = new Trace((meter.length - 1) * Trace.STEP_S);
    Feed feed = Sources.feed(draw, volts, amperes, farad);
    feed.loads.add(Feed.steady(amperes));
    feed.run(trace);
    System.arraycopy(meter, 0, trace.column("meter_V"), 0, meter.length);
    System.arraycopy(head, 0, trace.column("head_V"), 0, head.length);
    SheetWords sheet =
        new SheetWords("Recorder", volts)
            .set("\"kind\":\"recorder\"")
            .supply("fuseA", Sources.fuse(feed, volts, 0.5))
            .level("toneHz", 400)
            .level("expectedDb", expectedDb);
    boolean healthy = loss == 0;
    return new World(
        name,
        healthy,
        healthy ? 0 : Math.pow(10, (loss - 6) / 20),
        sheet.json(),
        Sources.look(draw, volts, volts / amperes, farad),
        trace,
        healthy ? Set.of() : Set.of("head-below-meter"),
        Set.of(),
        fromS,
        talked(meter, fromS, loss >= 9 ? 1 : 2.5) - fromS + 0.3);
  }

  /**
   * When so many seconds of speech were heard: slices of 20 ms less than 20 dB under the loudest
   * tenth.
   */
  private static double talked(double[] meter, double fromS, double wantedS) {
    int slice = 160;
    double[] level = new double[meter.length / slice];
    for (int k = 0; k < level.length; k++) {
      for (int n = 0; n < slice; n++) {
        level[k] += meter[k * slice + n] * meter[k * slice + n] / slice;
      }
    }
    double[] sorted = level.clone();
    java.util.Arrays.sort(sorted);
    double least = sorted[sorted.length * 9 / 10] / 100;
    double heard = 0;
    for (int k = (int) (fromS / 0.02); k < level.length; k++) {
      if (level[k] > least) {
        heard += 0.02;
      }
      if (heard >= wantedS) {
        return (k + 1) * 0.02;
      }
    }
    return meter.length * Trace.STEP_S;
  }

  /** Speech at the meter; the head hears it through a treble lift and a resistor. */
  static World speech(Draw draw, Path folder, double loss) throws Exception {
    double seconds = 12;
    double[] voice = Speech.voice(draw, seconds, 3, folder);
    double meterV = draw.decades(0.08, 0.25);
    double headV = draw.decades(0.3e-3, 0.8e-3);
    double[] meter = new double[voice.length];
    double[] head = new double[voice.length];
    Lift lift = new Lift(draw.between(0, 12), draw.between(1000, 3000));
    double through = Math.pow(10, -loss / 20);
    double room = draw.decades(0.001, 0.01);
    for (int k = 0; k < voice.length; k++) {
      double sound = voice[k] + room * draw.normal();
      meter[k] = meterV * sound;
      head[k] = headV * through * lift.next(sound) + 2e-6 * draw.normal();
    }
    double expected = 20 * Math.log10(meterV / (headV * lift.at(400)));
    return recorder(
        draw,
        loss == 0 ? "speech healthy" : loss == 60 ? "speech open" : "speech loss-" + (int) loss,
        meter,
        head,
        expected,
        loss,
        1.5);
  }

  /** The gain falls by itself while the voice is loud: head and meter alike. */
  static World levelControl(Draw draw, Path folder) throws Exception {
    double[] voice = Speech.voice(draw, 12, 2, folder);
    double meterV = draw.decades(0.08, 0.3);
    double headV = draw.decades(0.3e-3, 0.8e-3);
    double[] meter = new double[voice.length];
    double[] head = new double[voice.length];
    Lift lift = new Lift(draw.between(0, 9), 2000);
    double level = 0;
    double release = draw.between(0.3, 2);
    for (int k = 0; k < voice.length; k++) {
      double size = Math.abs(voice[k]);
      level += (size > level ? (size - level) / 80 : (size - level) * Trace.STEP_S / release);
      double sound = voice[k] / Math.max(0.3, level) * 0.5 + 0.002 * draw.normal();
      meter[k] = meterV * sound;
      head[k] = headV * lift.next(sound) + 2e-6 * draw.normal();
    }
    double expected = 20 * Math.log10(meterV / (headV * lift.at(400)));
    return recorder(draw, "speech level-control healthy", meter, head, expected, 0, 1.5);
  }

  /** A contact at the head that comes and goes. */
  static World contact(Draw draw, Path folder) throws Exception {
    double[] voice = Speech.voice(draw, 12, 0.6, folder);
    double meterV = draw.decades(0.08, 0.25);
    double headV = draw.decades(0.3e-3, 0.8e-3);
    double[] meter = new double[voice.length];
    double[] head = new double[voice.length];
    Lift lift = new Lift(draw.between(0, 9), 2000);
    boolean made = true;
    double until = 3;
    for (int k = 0; k < voice.length; k++) {
      double t = k * Trace.STEP_S;
      if (t > until) {
        made = !made;
        until = t + draw.between(0.05, made ? 0.5 : 0.3);
      }
      double sound = voice[k] + 0.003 * draw.normal();
      meter[k] = meterV * sound;
      head[k] = (made ? headV * lift.next(sound) : 0) + 2e-6 * draw.normal();
    }
    double expected = 20 * Math.log10(meterV / (headV * lift.at(400)));
    return recorder(draw, "speech contact", meter, head, expected, 8, 3);
  }
}
