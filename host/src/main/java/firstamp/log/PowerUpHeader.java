package firstamp.log;

import firstamp.model.ProbeHello;
import firstamp.model.RulesVersion;
import java.util.Objects;

/**
 * What is known of a power-up when it begins.
 *
 * @param uuid unique name
 * @param label of the person, null = none
 * @param setName from the sheet
 * @param startedEpochMs begin by the computer's clock
 * @param stream what the probe sends
 * @param hello who answered, with its calibration
 * @param sheetJson the job sheet as given, character for character
 * @param effectiveSheetJson the sheet with every default filled in
 * @param limitsJson the limits that were set in the probe, as sent
 * @param roomCelsius room temperature, null = not said
 * @param trialWire unknown wire that this power-up tries, null = none
 * @param trialPlace where it is joined, null = none
 * @param rulesVersion by which rules it is judged
 */
public record PowerUpHeader(
    String uuid,
    String label,
    String setName,
    long startedEpochMs,
    Stream stream,
    ProbeHello hello,
    String sheetJson,
    String effectiveSheetJson,
    String limitsJson,
    Double roomCelsius,
    String trialWire,
    String trialPlace,
    int rulesVersion) {

  /** What the probe sends. */
  public enum Stream {
    /** Every conversion. */
    RAW("raw"),
    /** Readings of 10 ms. */
    REDUCED("reduced");

    private final String id;

    Stream(String id) {
      this.id = id;
    }

    /** Identifier in the log. */
    public String id() {
      return id;
    }
  }

  /** Checks that nothing needed is missing. */
  public PowerUpHeader {
    Objects.requireNonNull(uuid, "uuid");
    Objects.requireNonNull(setName, "setName");
    Objects.requireNonNull(stream, "stream");
    Objects.requireNonNull(hello, "hello");
    Objects.requireNonNull(sheetJson, "sheetJson");
    Objects.requireNonNull(effectiveSheetJson, "effectiveSheetJson");
    Objects.requireNonNull(limitsJson, "limitsJson");
    if ((trialWire == null) != (trialPlace == null)) {
      throw new IllegalArgumentException(
          "trial of wire " + trialWire + " at " + trialPlace + ", expected both or none");
    }
  }

  /** A power-up of today's rules that tries no wire. */
  public PowerUpHeader(
      String uuid,
      String label,
      String setName,
      long startedEpochMs,
      Stream stream,
      ProbeHello hello,
      String sheetJson,
      String effectiveSheetJson,
      String limitsJson,
      Double roomCelsius) {
    this(
        uuid,
        label,
        setName,
        startedEpochMs,
        stream,
        hello,
        sheetJson,
        effectiveSheetJson,
        limitsJson,
        roomCelsius,
        null,
        null,
        RulesVersion.NOW);
  }

  /** The same, made to try a wire. */
  public PowerUpHeader trying(String wire, String place) {
    return new PowerUpHeader(
        uuid,
        label,
        setName,
        startedEpochMs,
        stream,
        hello,
        sheetJson,
        effectiveSheetJson,
        limitsJson,
        roomCelsius,
        wire,
        place,
        rulesVersion);
  }
}
