package firstamp.window;

import java.awt.Rectangle;
import java.awt.Robot;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * From starting the launcher until the first live reading of the emulated probe can be read in the
 * window: looked at from outside, in the points of the screen. Arguments: the launcher, how many
 * rounds (the first one is not counted: the files come from the disk).
 */
public final class FirstReading {
  /** Where the first figure's number stands, right of the dash that it is before a reading. */
  private static final Rectangle NUMBER = new Rectangle(60, 185, 110, 60);

  private static final int LEAST_INK = 100;
  private static final long LOOK_NANOS = 10_000_000;
  private static final long LONGEST_S = 120;

  private final Robot robot = new Robot();
  private final Path launcher;
  private final Path folder = Files.createTempDirectory("first-reading");

  private FirstReading(Path launcher) throws Exception {
    this.launcher = launcher;
  }

  /** Prints every round and the middle one. */
  public static void main(String[] arguments) throws Exception {
    FirstReading measured = new FirstReading(Path.of(arguments[0]));
    int rounds = Integer.parseInt(arguments[1]);
    double[] walls = new double[rounds];
    double[] processor = new double[rounds];
    measured.round();
    for (int round = 0; round < rounds; round++) {
      double[] took = measured.round();
      walls[round] = took[0];
      processor[round] = took[1];
      System.out.printf(
          Locale.ROOT, "first reading after %.0f ms, %.0f ms of the processor%n", took[0], took[1]);
    }
    Arrays.sort(walls);
    Arrays.sort(processor);
    System.out.printf(
        Locale.ROOT,
        "middle of %d: %.0f ms, %.0f ms of the processor%n",
        rounds,
        walls[rounds / 2],
        processor[rounds / 2]);
    System.exit(0);
  }

  private double[] round() throws IOException, InterruptedException {
    if (ink()) {
      throw new IllegalStateException("there is a window already; close it and start again");
    }
    Path log = Files.createTempFile(folder, "demo", ".db");
    Files.delete(log);
    long begin = System.nanoTime();
    Process process =
        new ProcessBuilder(
                List.of(launcher.toString(), "demo", "--no-sound", "--log", log.toString()))
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve("output").toFile())
            .start();
    while (!ink()) {
      if (!process.isAlive() || System.nanoTime() - begin > LONGEST_S * 1_000_000_000L) {
        process.destroy();
        throw new IOException("no reading was seen: " + Files.readString(folder.resolve("output")));
      }
      LockSupport.parkNanos(LOOK_NANOS);
    }
    double wallMs = (System.nanoTime() - begin) / 1e6;
    double processorMs = process.info().totalCpuDuration().map(Duration::toMillis).orElse(0L);
    process.destroy();
    if (!process.waitFor(LONGEST_S, TimeUnit.SECONDS)) {
      throw new IOException("the window did not close");
    }
    return new double[] {wallMs, processorMs};
  }

  private boolean ink() {
    BufferedImage image = robot.createScreenCapture(NUMBER);
    int dark = 0;
    for (int x = 0; x < NUMBER.width; x++) {
      for (int y = 0; y < NUMBER.height; y++) {
        int rgb = image.getRGB(x, y);
        dark += (rgb >> 16 & 0xFF) + (rgb >> 8 & 0xFF) + (rgb & 0xFF) < 200 ? 1 : 0;
      }
    }
    // A screen without a window is black all over.
    return dark >= LEAST_INK && dark < NUMBER.width * NUMBER.height / 2;
  }
}
