package firstamp.sound;

import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.SourceDataLine;

/** The computer's sound device. */
final class SystemAudio implements AudioOut {
  private static final int BYTES_PER_SAMPLE = 2;
  private static final int BUFFER_BYTES = Tune.RATE_HERTZ / 10 * BYTES_PER_SAMPLE;

  private SourceDataLine line;

  @Override
  public String open() {
    AudioFormat format = new AudioFormat(Tune.RATE_HERTZ, 8 * BYTES_PER_SAMPLE, 1, true, false);
    try {
      line = AudioSystem.getSourceDataLine(format);
      line.open(format, BUFFER_BYTES);
      line.start();
      return null;
    } catch (LineUnavailableException | IllegalArgumentException | SecurityException none) {
      // IllegalArgumentException is how the JDK says that there is no device for this format.
      line = null;
      return "this computer has no sound device for alarms";
    }
  }

  @Override
  public void write(short[] pcm) {
    byte[] bytes = new byte[pcm.length * BYTES_PER_SAMPLE];
    for (int n = 0; n < pcm.length; n++) {
      bytes[2 * n] = (byte) pcm[n];
      bytes[2 * n + 1] = (byte) (pcm[n] >> 8);
    }
    line.write(bytes, 0, bytes.length);
  }

  @Override
  public void close() {
    if (line != null) {
      line.drain();
      line.close();
    }
  }
}
