package firstamp.study;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.log.PowerUpHeader;
import firstamp.log.PowerUpReader;
import firstamp.log.stream.StreamSink;
import firstamp.model.ClipMove;
import firstamp.model.Happening;
import firstamp.model.ProbeEvent;
import firstamp.model.Summary;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import firstamp.pipeline.Chain;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.Summaries;
import firstamp.pipeline.SummaryJson;
import firstamp.run.LoggedRun;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A mark is a person's note: whatever is typed into one, among it every phrase that once was a
 * command, no alarm, figure, sentence or outcome changes.
 */
final class MarksAreNotesTest {
  private static final long SEED = 20261130;

  /** Every beginning that a version of before gave a meaning to. */
  private static final List<String> PHRASES =
      List.of(
          "clip on ",
          "clip on C4 leg",
          "clip on driver out, switched to record, meter input",
          "worked once: ",
          "to be tapped: ",
          "tapping",
          "tapping ended",
          "clip off",
          "signal there at ",
          "signal gone at ",
          "level typed at P2: dBV -38.2",
          "taken back",
          "mended: ",
          "mode: soak",
          "mode: usual",
          "mode: hands in",
          "mode: hands-in",
          "soak: the time is over",
          "step 1 of 3: ",
          "step 2 of 3 settled: ",
          "step 3 of 3 stopped: ",
          "all steps are done",
          "the bench supply does not answer",
          "record on",
          "record off",
          "record unknown",
          "changed ",
          "changed: ",
          "started ",
          "motor on",
          "off",
          "seen",
          "");

  @TempDir Path folder;

  private static String phrase(Random random) {
    String phrase = PHRASES.get(random.nextInt(PHRASES.size()));
    int form = random.nextInt(3);
    String cased =
        form == 0
            ? phrase
            : form == 1 ? phrase.toUpperCase(Locale.ROOT) : phrase.toLowerCase(Locale.ROOT);
    return random.nextBoolean() ? cased : cased + tail(random);
  }

  private static String tail(Random random) {
    StringBuilder tail = new StringBuilder();
    for (int k = random.nextInt(12); k > 0; k--) {
      tail.append("aZ9 :,;\u00e4\u03a9\"\\'-".charAt(random.nextInt(13)));
    }
    return tail.toString();
  }

  /** A stored power-up through the chain, with something put in between now and then. */
  private static Seen replay(PowerUpReader reader, LoggedRun run, Interruption interruption)
      throws Exception {
    PowerUpHeader header = reader.header();
    Chain chain =
        new Chain(
            run.sheet(),
            header.hello(),
            header.stream() == PowerUpHeader.Stream.RAW,
            header.label(),
            new ChainListener() {});
    reader.replay(
        new StreamSink() {
          private int pieces;

          @Override
          public void conversions(ConversionBlock block) {
            interruption.at(pieces++, block.firstIndex() * 125 / 2, chain);
            chain.accept(block);
          }

          @Override
          public void reading(Reading reading) {
            interruption.at(pieces++, reading.startMicros(), chain);
            chain.accept(reading);
          }

          @Override
          public void event(ProbeEvent event) {
            interruption.at(pieces++, event.micros(), chain);
            chain.accept(event);
          }
        });
    Summary summary = Summaries.of(1, "u", chain, null, null, true);
    return new Seen(
        SummaryJson.of(summary),
        firstamp.account.Verdict.of(run.sheet(), summary, chain.figures().evidence()).toString(),
        chain.figures().evidence().stretches().size());
  }

  /** What comes of a power-up. */
  private record Seen(ObjectNode summary, String verdict, int stretches) {}

  /** Something put into the stream. */
  private interface Interruption {
    void at(int piece, long micros, Chain chain);
  }

  private LoggedRun logged(String scenario, LoggedRun.EachReading each) throws Exception {
    LoggedRun run = new LoggedRun(folder, scenario, 5_000_000, true, each);
    run.run();
    return run;
  }

  @ParameterizedTest
  @ValueSource(strings = {"lost-head", "hum", "tired-filter", "healthy"})
  void changeNothingInAReplay(String scenario) throws Exception {
    LoggedRun run = logged(scenario, LoggedRun.EachReading.nothing());
    PowerUpReader reader = run.reader();
    Seen plain = replay(reader, run, (piece, micros, chain) -> {});
    for (int round = 0; round < 4; round++) {
      Random random = new Random(SEED + round);
      List<String> typed = new ArrayList<>();
      Seen marked =
          replay(
              reader,
              run,
              (piece, micros, chain) -> {
                if (random.nextInt(4) == 0) {
                  typed.add(phrase(random));
                  chain.accept(new ProbeEvent.Marked(micros, typed.get(typed.size() - 1)));
                }
              });
      assertThat(typed).as("seed %d", SEED + round).hasSizeGreaterThan(5);
      assertThat(marked).as("seed %d, typed %s", SEED + round, typed).isEqualTo(plain);
    }
  }

  /** The check above can fail: the same words as events do change what comes of it. */
  @Test
  void whatIsSaidAsAnEventDoesChangeIt() throws Exception {
    LoggedRun run = logged("lost-head", LoggedRun.EachReading.nothing());
    PowerUpReader reader = run.reader();
    Seen plain = replay(reader, run, (piece, micros, chain) -> {});
    assertThat(plain.summary().path("outcome").asText()).isEqualTo("alarm");
    Seen clip = replay(reader, run, first(ClipMove.at(ClipMove.Act.HELD, "C4", null, null)));
    assertThat(clip.summary().path("outcome").asText()).isEqualTo("normal");
    assertThat(clip.summary().path("notWatched").toString())
        .contains("{\"what\":\"head-below-meter\",\"why\":\"a clip was being moved\"}");
    Seen off = replay(reader, run, first(new Happening.Recording(Happening.RecordState.OFF)));
    assertThat(off.summary().path("outcome").asText()).isEqualTo("normal");
    assertThat(off.summary().path("notWatched").toString())
        .contains("{\"what\":\"head-below-meter\",\"why\":\"the set was not recording\"}");
    Seen on = replay(reader, run, first(new Happening.Recording(Happening.RecordState.ON)));
    assertThat(plain.summary().at("/alarms/0/text").asText()).endsWith("Or is it playing?");
    assertThat(on.summary().at("/alarms/0/text").asText()).doesNotContain("playing");
    Seen changed = replay(reader, run, atPiece(40, new Happening.SetChanged("charger off")));
    assertThat(changed.stretches()).isEqualTo(2);
  }

  private static Interruption first(Happening what) {
    return atPiece(0, what);
  }

  private static Interruption atPiece(int wanted, Happening what) {
    return (piece, micros, chain) -> {
      if (piece == wanted) {
        chain.accept(new ProbeEvent.Happened(micros, what));
      }
    };
  }

  @ParameterizedTest
  @ValueSource(strings = {"lost-head", "hum"})
  void changeNothingLive(String scenario) throws Exception {
    Random random = new Random(SEED);
    LoggedRun plain = logged(scenario, LoggedRun.EachReading.nothing());
    PowerUpStudy first = PowerUpStudy.of(plain.reader());
    int[] typed = {0};
    LoggedRun marked =
        logged(
            scenario,
            (count, run) -> {
              if (count == 1 || random.nextInt(10) == 0) {
                typed[0]++;
                run.mark(phrase(random));
              }
            });
    PowerUpStudy second = PowerUpStudy.of(marked.reader());
    assertThat(typed[0]).isGreaterThan(20);
    assertThat(second.marks()).as("every one is kept").hasSize(typed[0]);
    assertThat(marked.reader().entry().outcome()).isEqualTo(plain.reader().entry().outcome());
    assertThat(kept(second)).as("seed %d", SEED).isEqualTo(kept(first));
    assertThat(second.verdict()).isEqualTo(first.verdict());
  }

  /** All but what the marks themselves take up in the log. */
  private static ObjectNode kept(PowerUpStudy study) {
    ObjectNode summary = SummaryJson.of(study.summary());
    summary.remove(List.of("powerUp", "uuid", "log"));
    return summary;
  }
}
