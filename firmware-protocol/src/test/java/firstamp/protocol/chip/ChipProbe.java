package firstamp.protocol.chip;

import firstamp.protocol.codes.LineSpeed;
import firstamp.protocol.codes.RefusalReason;
import firstamp.protocol.frame.Frame;
import firstamp.protocol.frame.FrameDecoder;
import firstamp.protocol.frame.FrameEncoder;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.Message;
import firstamp.protocol.message.ProbeMessage;
import java.io.BufferedReader;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;

/**
 * One run of the firmware in the simulated chip with a plain host of its own: a reader thread, a
 * heartbeat thread, and questions that wait for their answer. Closing it ends the run.
 */
final class ChipProbe implements AutoCloseable {
  private static final Path BUILD = Path.of("firmware/build");
  private static final long ANSWER_SECONDS = 60;
  private static final long HEARTBEAT_MILLIS = 10;

  private final Path folder;
  private final Process process;
  private final FileInputStream in;
  private final OutputStream out;
  private final FrameEncoder encoder = new FrameEncoder();
  private volatile int repeated;
  private final Thread reader;
  private final Thread heart;
  private final ChipRecord record = new ChipRecord(this::repeated);
  private volatile boolean ended;

  private ChipProbe(Path folder, Process process, String port) throws IOException {
    this.folder = folder;
    this.process = process;
    this.in = new FileInputStream(port);
    this.out = new FileOutputStream(port);
    this.reader = new Thread(this::read, "chip-reader");
    this.heart = new Thread(this::beat, "chip-heartbeat");
    reader.setDaemon(true);
    heart.setDaemon(true);
  }

  /** Starts the chip on a waveform; more are further options of probe-sim. Answers hello first. */
  static ChipProbe start(Path folder, String waveform, List<String> more)
      throws IOException, InterruptedException {
    Files.writeString(folder.resolve("waveform.csv"), waveform);
    List<String> command = new ArrayList<>();
    command.add(BUILD.resolve("probe-sim").toString());
    command.addAll(List.of("--elf", BUILD.resolve("probe.elf").toString()));
    command.addAll(List.of("--waveform", folder.resolve("waveform.csv").toString()));
    command.addAll(List.of("--events", folder.resolve("events").toString()));
    command.addAll(more);
    Process process =
        new ProcessBuilder(command).redirectError(folder.resolve("stderr").toFile()).start();
    BufferedReader lines = process.inputReader();
    String first = lines.readLine();
    if (first == null || !first.startsWith("pty ")) {
      throw new IOException(
          command + " printed " + first + ": " + Files.readString(folder.resolve("stderr")));
    }
    ChipProbe probe = new ChipProbe(folder, process, first.substring("pty ".length()));
    probe.reader.start();
    probe.heart.start();
    return probe;
  }

  /** Asks until the probe answers, as a host does. */
  ProbeMessage.Hello hello() throws InterruptedException {
    for (int attempt = 0; attempt < 100; attempt++) {
      repeated += attempt > 0 ? 1 : 0;
      send(new HostMessage.HelloRequest(LineSpeed.FAST));
      ProbeMessage.Hello hello = poll(ProbeMessage.Hello.class, m -> true, 200);
      if (hello != null) {
        return hello;
      }
    }
    throw new AssertionError("no hello; standard error: " + standardError());
  }

  int send(HostMessage message) {
    synchronized (out) {
      int sequence = encoder.nextSequence();
      try {
        out.write(encoder.encode(message));
      } catch (IOException e) {
        if (!ended) {
          throw new UncheckedIOException(e);
        }
      }
      return sequence;
    }
  }

  /** Sends, unless the run has just ended. */
  void sendQuietly(HostMessage message) {
    try {
      send(message);
    } catch (UncheckedIOException e) {
      if (stillRunning()) {
        throw e;
      }
    }
  }

  /** The port closes a moment before the process is gone. */
  private boolean stillRunning() {
    try {
      return !process.waitFor(2, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  boolean isRunning() {
    return process.isAlive();
  }

  /** Waits for a run that ends by itself. */
  boolean awaitEnd(long millis) throws InterruptedException {
    return process.waitFor(millis, TimeUnit.MILLISECONDS);
  }

  /**
   * Sends until it is accepted, as a host does: a probe that has just changed its speed may miss
   * one.
   */
  void command(HostMessage message) throws InterruptedException {
    Set<Integer> sequences = new HashSet<>();
    for (int attempt = 0; attempt < ANSWER_SECONDS; attempt++) {
      repeated += attempt > 0 ? 1 : 0;
      sequences.add(send(message));
      Message answer = poll(Message.class, m -> answers(m, sequences), 1000);
      if (answer instanceof ProbeMessage.Refused refused) {
        if (attempt > 0 && refused.reason() == RefusalReason.WRONG_STATE) {
          return; // An earlier try was taken, and its answer is what was missed.
        }
        throw new AssertionError(message + " was refused: " + refused);
      }
      if (answer != null) {
        return;
      }
    }
    throw new AssertionError(
        "no answer to " + message + " within " + ANSWER_SECONDS + " s; " + standardError());
  }

  private static boolean answers(Message message, Set<Integer> sequences) {
    return message instanceof ProbeMessage.Accepted accepted
            && sequences.contains(accepted.commandSequence())
        || message instanceof ProbeMessage.Refused refused
            && sequences.contains(refused.commandSequence());
  }

  /** The next message of this kind that fits; others are passed over. */
  <M extends Message> M await(Class<M> kind, Predicate<M> fits) throws InterruptedException {
    M found = poll(kind, fits, TimeUnit.SECONDS.toMillis(ANSWER_SECONDS));
    if (found == null) {
      throw new AssertionError(
          "no " + kind.getSimpleName() + " within " + ANSWER_SECONDS + " s; " + standardError());
    }
    return found;
  }

  <M extends Message> M poll(Class<M> kind, Predicate<M> fits, long millis)
      throws InterruptedException {
    Frame frame = pollFrame(kind, fits, millis);
    return frame == null ? null : kind.cast(frame.message());
  }

  /** The same as it came, with its tick. */
  <M extends Message> Frame pollFrame(Class<M> kind, Predicate<M> fits, long millis)
      throws InterruptedException {
    long end = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(millis);
    for (long left = end - System.nanoTime(); left > 0; left = end - System.nanoTime()) {
      Frame frame = record.frames().poll(left, TimeUnit.NANOSECONDS);
      if (frame != null && kind.isInstance(frame.message())) {
        if (fits.test(kind.cast(frame.message()))) {
          return frame;
        }
      }
    }
    return null;
  }

  /** The next one of this kind, with its tick. */
  <M extends Message> Frame awaitFrame(Class<M> kind, Predicate<M> fits)
      throws InterruptedException {
    Frame found = pollFrame(kind, fits, TimeUnit.SECONDS.toMillis(ANSWER_SECONDS));
    if (found == null) {
      throw new AssertionError("no " + kind.getSimpleName() + "; " + standardError());
    }
    return found;
  }

  /** What the chip has sent so far. */
  ChipRecord record() {
    return record;
  }

  /** How many requests were sent again because no answer came in time. */
  int repeated() {
    return repeated;
  }

  /** Ends the run and gives the simulator's record of it. */
  ChipEvents finish() throws IOException {
    close();
    if (process.exitValue() != 0) {
      throw new AssertionError("probe-sim ended with " + process.exitValue() + standardError());
    }
    return ChipEvents.read(folder.resolve("events"));
  }

  @Override
  public void close() throws IOException {
    ended = true;
    process.destroy();
    try {
      if (!process.waitFor(10, TimeUnit.SECONDS)) {
        process.destroyForcibly().waitFor();
      }
      heart.join(1000);
      reader.join(1000);
    } catch (InterruptedException e) {
      process.destroyForcibly();
      Thread.currentThread().interrupt();
    }
    in.close();
    out.close();
  }

  private String standardError() {
    try {
      return Files.readString(folder.resolve("stderr"));
    } catch (IOException e) {
      return "(not readable: " + e + ")";
    }
  }

  private void beat() {
    try {
      while (!ended) {
        sendQuietly(new HostMessage.Heartbeat());
        Thread.sleep(HEARTBEAT_MILLIS);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void read() {
    FrameDecoder decoder = new FrameDecoder(record);
    byte[] bytes = new byte[4096];
    try {
      for (int n = in.read(bytes); n > 0; n = in.read(bytes)) {
        decoder.push(bytes, 0, n);
      }
    } catch (IOException e) {
      if (!ended && stillRunning()) {
        throw new UncheckedIOException(e);
      }
    }
  }
}
