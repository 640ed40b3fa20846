package firstamp.supply;

import firstamp.model.ProbePort;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.function.BooleanSupplier;

/**
 * Lines to the supply and back. An answer that comes too late must not be taken for the answer to
 * the next question: after a silence everything is discarded until the supply has given its name
 * again.
 *
 * <p>Belongs to the supply's thread; {@link #send} may come from any.
 */
final class Dialogue {
  private static final int SLICE_MILLIS = 20;
  private static final long ANSWER_NANOS = 1_000_000_000L;
  private static final long NAME_NANOS = 2_500_000_000L;
  private static final int LONGEST_LINE = 256;

  private final ProbePort line;
  private final BooleanSupplier overtaken;
  private final byte[] buffer = new byte[LONGEST_LINE];
  private final StringBuilder pending = new StringBuilder();
  private String name;

  /**
   * Over an open line.
   *
   * @param overtaken whether the present exchange is to be given up at once
   */
  Dialogue(ProbePort line, BooleanSupplier overtaken) {
    this.line = line;
    this.overtaken = overtaken;
  }

  /** Sends a command without waiting. */
  void send(String command) throws IOException {
    line.write((command + '\n').getBytes(StandardCharsets.US_ASCII));
  }

  /** Waits a moment; unexpected input is discarded. */
  void idle() throws IOException {
    line.read(buffer, SLICE_MILLIS);
    pending.setLength(0);
  }

  /** Asks for its name (IEEE 488.2) and keeps it. */
  String identify() throws IOException, SupplyException {
    name = askTwice("*IDN?");
    if (name.split(",", -1).length != 4) {
      String said = name;
      name = null;
      throw new SupplyException(SupplyException.Kind.WRONG, "answers.name", said);
    }
    return name;
  }

  /** A question and its answer; asked again once after a silence. */
  String ask(String question) throws IOException, SupplyException {
    return askTwice(question);
  }

  private String askTwice(String question) throws IOException, SupplyException {
    send(question);
    String answer = answer(ANSWER_NANOS);
    if (answer != null) {
      return answer;
    }
    regain();
    send(question);
    answer = answer(ANSWER_NANOS);
    if (answer != null) {
      return answer;
    }
    throw new SupplyException(SupplyException.Kind.SILENT, "silent", question);
  }

  /** Discards input until the supply gives the name it had before. */
  private void regain() throws IOException, SupplyException {
    pending.setLength(0);
    if (name == null) {
      return;
    }
    send("*IDN?");
    long since = now();
    while (now() - since < NAME_NANOS) {
      String answer = answer(NAME_NANOS - (now() - since));
      if (name.equals(answer)) {
        return;
      }
    }
    throw new SupplyException(SupplyException.Kind.SILENT, "silent.now");
  }

  /** The next line, null = none came in that time. */
  private String answer(long waitNanos) throws IOException, SupplyException {
    long since = now();
    while (true) {
      String whole = takeLine();
      if (whole != null) {
        return whole;
      }
      if (overtaken.getAsBoolean()) {
        throw new SupplyException(SupplyException.Kind.OVERTAKEN, "overtaken");
      }
      if (now() - since >= waitNanos) {
        return null;
      }
      int n = line.read(buffer, SLICE_MILLIS);
      pending.append(new String(buffer, 0, Math.max(0, n), StandardCharsets.ISO_8859_1));
      if (pending.length() > LONGEST_LINE && pending.indexOf("\n") < 0) {
        pending.setLength(0);
        throw new SupplyException(SupplyException.Kind.WRONG, "no-line-end");
      }
    }
  }

  private String takeLine() {
    int end = pending.indexOf("\n");
    if (end < 0) {
      return null;
    }
    String whole = pending.substring(0, end).trim();
    pending.delete(0, end + 1);
    return whole;
  }

  private long now() {
    return line.time().monotonicNanos();
  }
}
