package firstamp.protocol.chip;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.protocol.codes.Resend;
import firstamp.protocol.codes.StreamKind;
import firstamp.protocol.codes.TripCause;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.LookParameters;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * How long the chip takes from a step at its pin to the switch pin low, in exact cycles, with the
 * raw stream on: once in quiet, once with the capture of the first trip sent again and the receive
 * line full. Steps come at random places of the plan.
 */
@Tag("chip")
class ReactionTimeTest {
  private static final LookParameters NO_LOOK = new LookParameters(true, 300, 563, 5, 51, 61, 236);
  private static final long SEED = 328;

  @TempDir Path folder;

  @ParameterizedTest
  @EnumSource
  void opensInTimeAtTwentyPlacesTwice(ReactionCase kind) throws Exception {
    measure(kind, 20);
  }

  @ParameterizedTest
  @EnumSource
  @Tag("full")
  void opensInTimeAtTwoHundredPlacesTwice(ReactionCase kind) throws Exception {
    measure(kind, 200);
  }

  /**
   * A short that is there before the switch closes: without a look no surge is let pass, so the
   * limiter holds it for a millisecond, and the trip is dated at the closing.
   */
  @Test
  void opensAfterAMillisecondWhenTheShortIsThereAtClosing() throws Exception {
    String waveform = "t_s,supply_V,supply_A\n0,12,12.4\n";
    List<String> options = List.of("--flat-out", "--from-switch-on", "--for-ms", "1500");
    try (ChipProbe probe = ChipProbe.start(folder, waveform, options)) {
      probe.hello();
      probe.command(new HostMessage.SetLimits(ReactionCase.HARD_SHORT.limits()));
      probe.command(new HostMessage.StreamRequest(StreamKind.RAW));
      probe.send(new HostMessage.SwitchOn(NO_LOOK));
      ProbeMessage.Trip trip = probe.await(ProbeMessage.Trip.class, t -> true);
      assertThat(trip.cause()).isEqualTo(TripCause.HARD_SHORT);
      ChipEvents events = probe.finish();
      assertThat(events.events()).extracting(ChipEvents.Event::what).containsExactly("on", "off");
      double openMicros =
          (events.events().get(1).cycle() - events.events().get(0).cycle())
              / ChipEvents.CYCLES_PER_MICROSECOND;
      System.out.printf(Locale.ROOT, "short at closing: on for %.1f us%n", openMicros);
      assertThat(openMicros).isBetween(1000.0, 1070.0);
      assertThat(trip.limitedConversions()).isEqualTo(17);
    }
  }

  private void measure(ReactionCase kind, int places) throws Exception {
    Random random = new Random(SEED + kind.ordinal());
    List<Callable<List<Double>>> runs = new ArrayList<>();
    for (int i = 0; i < places; i++) {
      double stepSeconds = 0.02 + 0.01 * random.nextDouble();
      Path own = Files.createDirectory(folder.resolve("place-" + i));
      runs.add(() -> twoTrips(own, kind, stepSeconds));
    }
    List<Double> reactions = new ArrayList<>();
    // Cycles are exact however busy this computer is: two chips may run at once.
    ExecutorService two = Executors.newFixedThreadPool(2);
    try {
      for (Future<List<Double>> done : two.invokeAll(runs)) {
        reactions.addAll(done.get());
      }
    } finally {
      two.shutdownNow();
    }
    reactions.sort(null);
    System.out.printf(
        Locale.ROOT,
        "%s: best %.1f us, median %.1f us, worst %.1f us of %d%n",
        kind,
        reactions.get(0),
        reactions.get(reactions.size() / 2),
        reactions.get(reactions.size() - 1),
        reactions.size());
    assertThat(reactions)
        .hasSize(2 * places)
        .allSatisfy(r -> assertThat(r).isBetween(kind.soonestMicros, kind.latestMicros));
  }

  private static List<Double> twoTrips(Path own, ReactionCase kind, double stepSeconds)
      throws Exception {
    Path frontEnd = Files.writeString(own.resolve("front-end.json"), "{\"decayMs\":5}");
    Path measures = own.resolve("measures.json");
    List<String> options =
        List.of(
            "--flat-out",
            "--cross",
            kind.cross(),
            "--front-end",
            frontEnd.toString(),
            "--measure",
            measures.toString());
    try (ChipProbe probe = ChipProbe.start(own, kind.waveform(stepSeconds), options)) {
      probe.hello();
      probe.command(new HostMessage.SetLimits(kind.limits()));
      probe.command(new HostMessage.StreamRequest(StreamKind.RAW));
      probe.command(new HostMessage.SwitchOn(NO_LOOK));
      ProbeMessage.Trip first = probe.await(ProbeMessage.Trip.class, t -> true);
      assertThat(first.cause()).isEqualTo(kind.cause);
      probe.command(new HostMessage.ClearTrip(first.number()));
      Flood flood = new Flood(probe, first.number());
      try {
        probe.command(new HostMessage.SwitchOn(NO_LOOK));
        probe.await(ProbeMessage.Trip.class, t -> t.number() != first.number());
      } finally {
        flood.stop();
      }
      List<Double> reactions = probe.finish().reactionsMicros(kind.column);
      assertThat(new ChipMeasures(measures).number("interruptsOff", "longestCycles"))
          .as("interrupts off around a trip of %s", kind)
          .isLessThanOrEqualTo(ConversionPlanTest.LONGEST_INTERRUPTS_OFF_CYCLES);
      return reactions;
    }
  }

  /** Fills the probe's receive line and keeps asking for the last capture. */
  private static final class Flood {
    private final AtomicBoolean over = new AtomicBoolean();
    private final Thread thread;

    Flood(ChipProbe probe, int tripNumber) {
      thread =
          new Thread(
              () -> {
                while (!over.get()) {
                  probe.send(new HostMessage.SendAgain(Resend.CAPTURE, tripNumber));
                  for (int i = 0; i < 200; i++) {
                    probe.send(new HostMessage.Heartbeat());
                  }
                }
              },
              "chip-flood");
      thread.setDaemon(true);
      thread.start();
    }

    void stop() {
      over.set(true);
    }
  }
}
