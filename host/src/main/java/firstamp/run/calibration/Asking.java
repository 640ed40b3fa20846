package firstamp.run.calibration;

import firstamp.model.ProbePort;
import firstamp.model.text.Wording.Phrase;
import firstamp.pipeline.RunRefused;
import firstamp.protocol.message.HostMessage;
import firstamp.run.talk.Conversation;
import firstamp.run.talk.Refusals;
import java.io.IOException;
import java.util.function.BooleanSupplier;

/** Asks the probe something and waits, with a limit, for what must come of it. */
final class Asking {
  static final long ANSWER_NANOS = 4_000_000_000L;

  private final ProbePort port;
  private final Conversation talk;
  private final Step step;

  Asking(ProbePort port, Conversation talk, Step step) {
    this.port = port;
    this.talk = talk;
    this.step = step;
  }

  /** One look at the line while waiting. */
  interface Step {
    void run() throws IOException, RunRefused;
  }

  /** Something to be done again and again while waiting. */
  interface Meanwhile {
    void run() throws IOException;
  }

  void ask(HostMessage message, String what) throws IOException, RunRefused {
    talk.ask(message);
    await(() -> talk.answer() != Conversation.Answer.WAITING, ANSWER_NANOS, what, () -> {});
    if (talk.answer() == Conversation.Answer.REFUSED) {
      throw new RunRefused(RunRefused.Kind.ARMING, Refusals.words(talk.refusal()));
    }
    if (talk.answer() == Conversation.Answer.SILENT) {
      throw silent(what);
    }
  }

  void await(BooleanSupplier done, long nanos, String what, Meanwhile meanwhile)
      throws IOException, RunRefused {
    long end = port.time().monotonicNanos() + nanos;
    while (!done.getAsBoolean()) {
      if (port.time().monotonicNanos() > end) {
        throw silent(what);
      }
      meanwhile.run();
      step.run();
    }
  }

  RunRefused silent(String what) {
    return new RunRefused(
        RunRefused.Kind.PROBE,
        Refusals.say("silent.other", port.describe(), new Phrase("silent.to." + what)));
  }
}
