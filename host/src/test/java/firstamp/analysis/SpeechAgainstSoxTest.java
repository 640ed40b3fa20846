package firstamp.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.analysis.figures.Evidence;
import firstamp.analysis.figures.LevelSums;
import firstamp.analysis.spectrum.Decibels;
import firstamp.analysis.spectrum.LevelDetail;
import firstamp.analysis.spectrum.LevelMeter;
import firstamp.model.JobSheet;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.LevelWindow;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Levels of a voice against {@code sox ... stat} (Debian package sox).
 *
 * <p>The voice is the recording that comes with Debian's alsa-utils (GPL-2), where it is installed;
 * else sox makes noise with the rhythm of speech. Either is cut to the band of the levels and to 4
 * kHz, and repeated until the windows have fallen on it everywhere: a Hann window then weighs all
 * of it alike.
 */
class SpeechAgainstSoxTest {
  private static final Path VOICE = Path.of("/usr/share/sounds/alsa/Front_Center.wav");
  private static final int TIMES = 50;
  private static final double METER_V = 0.5;

  @TempDir static Path folder;
  private static double[] voice;
  private static double rms;

  @BeforeAll
  static void prepare() throws Exception {
    boolean there = true;
    try {
      sox("--version");
    } catch (IOException missing) {
      there = false;
      System.err.println("SKIPPED: levels of a voice against sox: there is no sox");
    }
    Assumptions.assumeTrue(there, "sox");
    String name = folder.resolve("voice.wav").toString();
    List<String> band = List.of("rate", "-v", "4000", "sinc", "-t", "20", "40-1500");
    if (Files.exists(VOICE)) {
      sox(with(List.of(VOICE.toString(), "-b", "32", name), band));
    } else {
      System.err.println("no recorded voice here: noise with the rhythm of speech instead");
      List<String> rhythm = List.of(with(List.of("tremolo", "4", "90"), band));
      sox(
          with(
              List.of("-R", "-n", "-r", "16000", "-b", "32", name, "synth", "1.428", "pinknoise"),
              rhythm));
    }
    String raw = folder.resolve("voice.f32").toString();
    sox(name, "-t", "f32", raw);
    ByteBuffer bytes =
        ByteBuffer.wrap(Files.readAllBytes(Path.of(raw))).order(ByteOrder.LITTLE_ENDIAN);
    voice = new double[bytes.remaining() / 4];
    for (int k = 0; k < voice.length; k++) {
      voice[k] = bytes.getFloat();
    }
    String said = sox(name, "-n", "stat");
    Matcher found = Pattern.compile("RMS +amplitude: +([0-9.]+)").matcher(said);
    assertThat(found.find()).as(said).isTrue();
    rms = Double.parseDouble(found.group(1));
  }

  private static String[] with(List<String> first, List<String> then) {
    List<String> all = new ArrayList<>(first);
    all.addAll(then);
    return all.toArray(String[]::new);
  }

  private static String sox(String... arguments) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(List.of("sox"));
    command.addAll(List.of(arguments));
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    assertThat(process.exitValue()).as(text).isZero();
    return text;
  }

  /** The voice at the meter clip, volt, and so much lower at the head. */
  private List<LevelWindow> windows(LevelSums sums, double belowDb) {
    double gain = METER_V / peak();
    Calibration calibration = Calibration.nominal();
    JobSheet sheet = Sheets.sheet(Sheets.levels(400.0));
    List<LevelWindow> windows = new ArrayList<>();
    LevelDetail[] latest = new LevelDetail[1];
    LevelMeter meter =
        new LevelMeter(
            sheet,
            calibration,
            window -> {
              windows.add(window);
              sums.add(window, latest[0]);
            },
            detail -> latest[0] = detail);
    double down = Math.pow(10, -belowDb / 20);
    for (int block = 0; block * 800 < voice.length * TIMES; block++) {
      short[] counts = new short[3200];
      for (int k = 0; k < 800; k++) {
        double volts = gain * voice[(block * 800 + k) % voice.length];
        counts[4 * k + 1] = counts(calibration, Channel.H, down * volts);
        counts[4 * k + 2] = counts(calibration, Channel.M, volts);
      }
      meter.accept(new ConversionBlock(block * 3200L, counts));
    }
    return windows;
  }

  private static double peak() {
    double peak = 0;
    for (double sample : voice) {
      peak = Math.max(peak, Math.abs(sample));
    }
    return peak;
  }

  private static short counts(Calibration calibration, Channel channel, double volts) {
    return (short) Math.floor(calibration.scale(channel).counts(volts) + 0.5);
  }

  @Test
  void rmsOfAVoiceAgreesWithSox() {
    LevelSums sums = new LevelSums(0.001, null, null);
    List<LevelWindow> windows = windows(sums, 40);
    double squares = 0;
    for (LevelWindow window : windows) {
      squares += window.meterRmsV() * window.meterRmsV();
    }
    double volts = Math.sqrt(squares / windows.size());
    double expected = rms * METER_V / peak();
    System.out.printf(
        Locale.ROOT,
        "voice: %.5f V by the meter, %.5f V by sox, %.3f dB apart%n",
        volts,
        expected,
        Decibels.ratio(volts, expected));
    assertThat(Decibels.ratio(volts, expected)).isCloseTo(0, within(0.05));
  }

  @Test
  void headBelowMeterOnAVoiceIsWhatWasTakenOff() {
    LevelSums sums = new LevelSums(Decibels.voltsOfDbv(-40), null, null);
    windows(sums, 40);
    assertThat(sums.tonal()).isFalse();
    // Weighted by what the meter shows; the head's steps are 20 uV, its voice about 1 mV.
    assertThat(sums.speech().distance().mean()).isCloseTo(40, within(0.1));
    assertThat(sums.speech().distance().plusMinus()).isLessThan(0.1);
    assertThat(sums.speech().curve()).hasSizeGreaterThan(6);
    for (Evidence.CurvePoint point : sums.speech().curve()) {
      if (point.meterShare() > 0.02) {
        assertThat(point.db()).as("%.0f Hz", point.hz()).isCloseTo(40, within(0.5));
      }
    }
  }
}
