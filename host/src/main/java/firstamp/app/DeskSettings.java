package firstamp.app;

import com.fasterxml.jackson.annotation.JsonIgnoreProperties;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import firstamp.model.PedalJob;
import firstamp.window.words.Words;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;

/**
 * What the window remembers from one day to the next, in a small file beside the bench log. Null =
 * never said.
 *
 * @param port on which a probe box answered last
 * @param portTyped whether it was typed by hand: no list of this computer names it
 * @param language two letters
 * @param theme light, dark, high-contrast
 * @param scale of the whole window
 * @param cutTriedEpochMs when the probe box last proved that it cuts
 * @param calibratedEpochMs when it was last calibrated
 * @param remindFromEpochMs no reminder before
 * @param pedal job of a pedal, of the probe box and of one that sends a key
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
@JsonIgnoreProperties(ignoreUnknown = true)
public record DeskSettings(
    String port,
    Boolean portTyped,
    String language,
    String theme,
    Double scale,
    Long cutTriedEpochMs,
    Long calibratedEpochMs,
    Long remindFromEpochMs,
    String pedal) {
  private static final ObjectMapper MAPPER = new ObjectMapper();
  private static final String FILE = "window.json";

  public static DeskSettings none() {
    return new DeskSettings(null, null, null, null, null, null, null, null, null);
  }

  /** The settings in the folder; none if there is no such file or it makes no sense. */
  static DeskSettings load(Path folder) {
    try {
      return MAPPER.readValue(Files.readString(folder.resolve(FILE)), DeskSettings.class);
    } catch (NoSuchFileException first) {
      return none();
    } catch (IOException damaged) {
      // Nothing in it is worth stopping for: the person sets it again.
      return none();
    }
  }

  /** Writes it beside and moves it, so that a full disk leaves the old one. */
  public void save(Path folder) throws IOException {
    Files.createDirectories(folder);
    Path beside = folder.resolve(FILE + ".new");
    Files.writeString(beside, text());
    Files.move(beside, folder.resolve(FILE), StandardCopyOption.REPLACE_EXISTING);
  }

  private String text() {
    try {
      return MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(this) + "\n";
    } catch (JsonProcessingException impossible) {
      throw new IllegalStateException("plain values can always be written", impossible);
    }
  }

  WindowOptions options(boolean keepAwake) {
    Locale locale =
        Words.LANGUAGES.stream()
            .filter(known -> known.getLanguage().equals(language))
            .findFirst()
            .orElse(Locale.ENGLISH);
    return new WindowOptions(WindowOptions.Theme.of(theme), locale, keepAwake);
  }

  public DeskSettings withPort(String next, boolean typed) {
    return new DeskSettings(
        next,
        typed ? true : null,
        language,
        theme,
        scale,
        cutTriedEpochMs,
        calibratedEpochMs,
        remindFromEpochMs,
        pedal);
  }

  public DeskSettings withLook(Locale locale, WindowOptions.Theme look, Double size) {
    return new DeskSettings(
        port,
        portTyped,
        locale.getLanguage(),
        look.id(),
        size,
        cutTriedEpochMs,
        calibratedEpochMs,
        remindFromEpochMs,
        pedal);
  }

  DeskSettings withCutTried(long epochMs) {
    return new DeskSettings(
        port,
        portTyped,
        language,
        theme,
        scale,
        epochMs,
        calibratedEpochMs,
        remindFromEpochMs,
        pedal);
  }

  DeskSettings withCalibrated(long epochMs) {
    return new DeskSettings(
        port,
        portTyped,
        language,
        theme,
        scale,
        cutTriedEpochMs,
        epochMs,
        remindFromEpochMs,
        pedal);
  }

  public DeskSettings withRemindFrom(long epochMs) {
    return new DeskSettings(
        port,
        portTyped,
        language,
        theme,
        scale,
        cutTriedEpochMs,
        calibratedEpochMs,
        epochMs,
        pedal);
  }

  /** The job of a pedal; an off where none was chosen. */
  public PedalJob pedalJob() {
    return PedalJob.of(pedal);
  }

  public DeskSettings withPedal(PedalJob job) {
    return new DeskSettings(
        port,
        portTyped,
        language,
        theme,
        scale,
        cutTriedEpochMs,
        calibratedEpochMs,
        remindFromEpochMs,
        job.id());
  }
}
