package firstamp.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;

/** A headless browser (Debian package chromium) that loads a page of ours. */
public final class Browser {
  private static final String PROGRAM = "chromium";

  private Browser() {}

  /**
   * What it made of a page.
   *
   * @param dom the page as it stands after loading
   * @param console what was written to its console, errors among it
   * @param requests its log of all that went over the network
   * @param screenshot picture of the page
   */
  public record Loaded(String dom, List<String> console, String requests, byte[] screenshot) {}

  /** Skips the test with a warning where there is no browser; fails where tools are required. */
  public static void assume() {
    boolean there = true;
    try {
      there = new ProcessBuilder(PROGRAM, "--version").start().waitFor() == 0;
    } catch (IOException missing) {
      there = false;
    } catch (InterruptedException stop) {
      Thread.currentThread().interrupt();
    }
    if (!there) {
      String text = "SKIPPED: the report in a browser: there is no " + PROGRAM;
      System.err.println(text);
      if (Boolean.getBoolean("firstamp.requireTools")) {
        throw new AssertionError(text);
      }
    }
    Assumptions.assumeTrue(there, PROGRAM);
  }

  /** Loads a page. */
  public static Loaded load(Path folder, Path page) throws IOException, InterruptedException {
    Path requests = folder.resolve("requests.json");
    Path picture = folder.resolve("page.png");
    Path messages = folder.resolve("messages.txt");
    Path dom = folder.resolve("dom.html");
    run(folder, messages, dom, page, "--dump-dom", "--log-net-log=" + requests);
    run(
        folder,
        folder.resolve("m2.txt"),
        folder.resolve("o2.txt"),
        page,
        "--window-size=900,1300",
        "--screenshot=" + picture);
    List<String> console =
        Files.readAllLines(messages, StandardCharsets.UTF_8).stream()
            .filter(line -> line.contains(":CONSOLE"))
            .toList();
    return new Loaded(
        Files.readString(dom), console, Files.readString(requests), Files.readAllBytes(picture));
  }

  private static void run(Path folder, Path messages, Path out, Path page, String... more)
      throws IOException, InterruptedException {
    List<String> command =
        new ArrayList<>(
            List.of(
                PROGRAM,
                "--headless",
                "--no-sandbox",
                "--disable-gpu",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                // Nothing leaves this machine, whatever the browser asks for.
                "--host-resolver-rules=MAP * ~NOTFOUND",
                "--enable-logging=stderr",
                "--user-data-dir=" + folder.resolve("profile")));
    command.addAll(List.of(more));
    command.add(page.toUri().toString());
    Process process =
        new ProcessBuilder(command)
            .redirectError(messages.toFile())
            .redirectOutput(out.toFile())
            .start();
    if (!process.waitFor(120, TimeUnit.SECONDS)) {
      process.destroyForcibly();
      throw new AssertionError("the browser did not end");
    }
    if (process.exitValue() != 0) {
      throw new AssertionError("the browser ended with " + process.exitValue());
    }
  }
}
