package firstamp.run.questions;

import com.fasterxml.jackson.annotation.JsonIgnoreProperties;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectWriter;
import firstamp.model.Conditions;
import firstamp.model.TimeSource;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Map;
import java.util.TreeMap;

/**
 * When each question was last answered with yes, and how each set was left: a small file beside the
 * bench log. Who answered is not kept. Safe from any thread.
 *
 * <p>A file that cannot be read or written means only that more is asked.
 */
public final class AnswerBook {
  /** An answer about what is joined to what. */
  static final long HOOK_UP_MILLIS = 3_600_000;

  private static final long FORGET_MILLIS = 48 * 3_600_000L;
  private static final String FILE = "answers.json";
  private static final ObjectMapper MAPPER = new ObjectMapper();
  private static final ObjectWriter WRITER = MAPPER.writerWithDefaultPrettyPrinter();

  private final Path file;
  private final TimeSource time;
  private final ZoneId zone;
  private Kept kept;

  @JsonInclude(JsonInclude.Include.NON_NULL)
  @JsonIgnoreProperties(ignoreUnknown = true)
  private record Kept(
      Map<String, Long> answeredEpochMs,
      Map<String, Conditions> conditions,
      Map<String, Long> conditionsEpochMs) {
    Kept {
      answeredEpochMs = answeredEpochMs == null ? new TreeMap<>() : new TreeMap<>(answeredEpochMs);
      conditions = conditions == null ? new TreeMap<>() : new TreeMap<>(conditions);
      conditionsEpochMs =
          conditionsEpochMs == null ? new TreeMap<>() : new TreeMap<>(conditionsEpochMs);
    }
  }

  private AnswerBook(Path file, TimeSource time, ZoneId zone) {
    this.file = file;
    this.time = time;
    this.zone = zone;
    this.kept = read(file);
  }

  /** The book of a folder. */
  public static AnswerBook in(Path folder, TimeSource time) {
    return in(folder, time, ZoneId.systemDefault());
  }

  static AnswerBook in(Path folder, TimeSource time, ZoneId zone) {
    return new AnswerBook(folder.resolve(FILE), time, zone);
  }

  private static Kept read(Path file) {
    try {
      return Files.exists(file)
          ? MAPPER.readValue(Files.readString(file), Kept.class)
          : new Kept(null, null, null);
    } catch (IOException damaged) {
      return new Kept(null, null, null);
    }
  }

  /** Whether it need not be asked: answered before, and the answer still holds. */
  public synchronized boolean holds(Asked question) {
    Long then = kept.answeredEpochMs().get(question.key());
    long now = time.epochMillis();
    if (then == null || then > now) {
      return false;
    }
    return switch (question.life()) {
      case BENCH -> day(then).equals(day(now));
      case HOOK_UP -> now - then < HOOK_UP_MILLIS;
      case BODY -> false;
    };
  }

  private LocalDate day(long epochMillis) {
    return LocalDate.ofInstant(Instant.ofEpochMilli(epochMillis), zone);
  }

  /** When it was answered last; null = never, or long ago. */
  public synchronized Long answeredEpochMs(Asked question) {
    return kept.answeredEpochMs().get(question.key());
  }

  /** It was answered with yes now. */
  public synchronized void answered(Asked question) {
    long now = time.epochMillis();
    kept.answeredEpochMs().values().removeIf(then -> now - then > FORGET_MILLIS);
    kept.answeredEpochMs().put(question.key(), now);
    write();
  }

  /** Something about what is joined to what has changed: whatever was answered about it is void. */
  public synchronized void hookUpChanged(Iterable<Asked> questions) {
    for (Asked question : questions) {
      if (question.life() == Asked.Life.HOOK_UP) {
        kept.answeredEpochMs().remove(question.key());
      }
    }
    write();
  }

  /** How a set was left last. */
  public synchronized Conditions conditions(String set) {
    return kept.conditions().getOrDefault(set, Conditions.UNSAID);
  }

  /**
   * How a set was left, as far as it spares a question: what was said longer ago than an answer
   * about what is joined lives spares none, for a tape may have been put in since.
   */
  synchronized Conditions stillHolding(String set) {
    Long then = kept.conditionsEpochMs().get(set);
    long now = time.epochMillis();
    boolean holds = then != null && then <= now && now - then < HOOK_UP_MILLIS;
    Conditions last = conditions(set);
    return holds ? last : new Conditions(null, null, last.function());
  }

  /** How it is left now. */
  public synchronized void conditions(String set, Conditions conditions) {
    kept.conditions().put(set, conditions);
    kept.conditionsEpochMs().put(set, time.epochMillis());
    write();
  }

  private void write() {
    Path beside = file.resolveSibling(FILE + ".new");
    try {
      Files.createDirectories(file.toAbsolutePath().getParent());
      Files.writeString(beside, WRITER.writeValueAsString(kept) + "\n");
      Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException fullOrReadOnly) {
      // It holds while the program runs; the next time it is asked again.
      kept = new Kept(kept.answeredEpochMs(), kept.conditions(), kept.conditionsEpochMs());
    }
  }
}
