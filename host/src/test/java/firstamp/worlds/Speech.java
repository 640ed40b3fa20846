package firstamp.worlds;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * Voices of the speech synthesizer espeak-ng (Debian package espeak-ng), brought to 8 kHz by sox,
 * with silence set in between sentences.
 */
final class Speech {
  private static final int HZ = 8000;
  private static final List<String> SENTENCES =
      List.of(
          "This is a trial of the recording stage, one two three four.",
          "Der Pegel steht, aber am Kopf kommt kaum etwas an.",
          "La bande tourne, et le niveau ne monte pas beaucoup.",
          "Uno, dos, tres, probando la cabeza de grabacion.",
          "Please note the level at the meter, and then say it again.",
          "The quick brown fox jumps over the lazy dog.");
  private static final List<String> LANGUAGES =
      List.of("en-gb", "de", "fr-fr", "es", "en-us", "en-gb-scotland");

  private Speech() {}

  /**
   * A voice.
   *
   * @return samples every 125 us, rms 1 while it talks
   */
  static double[] voice(Draw draw, double seconds, double longestPauseS, Path folder)
      throws IOException, InterruptedException {
    int length = (int) Math.round(seconds * HZ) + 1;
    double[] out = new double[length];
    int language = draw.below(SENTENCES.size());
    String variant = draw.oneOf("", "+m1", "+m3", "+m7", "+f1", "+f2", "+f4");
    int rate = (int) draw.between(110, 220);
    int pitch = (int) draw.between(25, 75);
    double sum = 0;
    int talked = 0;
    int at = (int) (draw.between(0.05, 0.3) * HZ);
    double[] said = say(language, variant, rate, pitch, folder);
    while (at < length) {
      for (int k = 0; k < said.length && at < length; k++, at++) {
        out[at] = said[k];
        sum += said[k] * said[k];
        talked++;
      }
      at += (int) (draw.decades(0.1, longestPauseS) * HZ);
      if (draw.chance(0.3)) {
        said = say((language + 4) % SENTENCES.size(), variant, rate, pitch, folder);
      }
    }
    double rms = Math.sqrt(sum / Math.max(1, talked));
    for (int k = 0; k < length; k++) {
      out[k] /= rms;
    }
    return out;
  }

  private static double[] say(int sentence, String variant, int rate, int pitch, Path folder)
      throws IOException, InterruptedException {
    Path wav = folder.resolve("voice-" + sentence + variant + "-" + rate + "-" + pitch + ".wav");
    Path raw = folder.resolve(wav.getFileName() + ".raw");
    if (!Files.exists(raw)) {
      command(
          "espeak-ng",
          "-v",
          LANGUAGES.get(sentence) + variant,
          "-s",
          "" + rate,
          "-p",
          "" + pitch,
          "-w",
          wav.toString(),
          SENTENCES.get(sentence));
      command(
          "sox",
          wav.toString(),
          "-t",
          "raw",
          "-e",
          "floating-point",
          "-b",
          "32",
          "-L",
          "-c",
          "1",
          "-r",
          "" + HZ,
          raw.toString());
    }
    ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(raw)).order(ByteOrder.LITTLE_ENDIAN);
    double[] samples = new double[bytes.remaining() / 4];
    for (int k = 0; k < samples.length; k++) {
      samples[k] = bytes.getFloat();
    }
    return samples;
  }

  private static void command(String... words) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(words).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes());
    if (!process.waitFor(30, TimeUnit.SECONDS) || process.exitValue() != 0) {
      throw new IOException(String.join(" ", words) + ": " + said);
    }
  }
}
