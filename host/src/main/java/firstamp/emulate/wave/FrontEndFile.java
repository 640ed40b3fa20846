package firstamp.emulate.wave;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import firstamp.emulate.bench.FrontEnd;
import firstamp.model.text.JsonWords;
import firstamp.model.text.Wording.Phrase;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads a front-end file, strictly: an unknown key, a wrong kind or a number out of range is
 * reported with file, line, field and what was expected.
 */
public final class FrontEndFile {
  private static final int LONGEST_CHARS = 1_000_000;
  private static final int MOST_CHANGES = 256;
  private static final double LOWEST_HARD_SHORT_A = 0.5;
  private static final double HIGHEST_HARD_SHORT_A = 12.5;
  private static final String KEYS =
      "channels, kept, calibrated, clockPercent, look, decayMs, chassisClip, supplyPresent,"
          + " supplyReversed, button, pedal, isolatedLink, hardShortA, at";

  private final StrictJson json;
  private final BoxKeys box;
  private final List<FrontEnd.Change> changes = new ArrayList<>();
  private double lookSupplyV;
  private double lookOhm;
  private double lookFarad;
  private double decayS;
  private int inputBits;
  private double hardShortA;

  private FrontEndFile(StrictJson json, FrontEnd defaults) {
    this.json = json;
    this.box = new BoxKeys(json);
    this.lookSupplyV = defaults.lookSupplyV();
    this.lookOhm = defaults.lookOhm();
    this.lookFarad = defaults.lookFarad();
    this.decayS = defaults.decayS();
    this.inputBits = defaults.inputBits();
    this.hardShortA = defaults.hardShortA();
  }

  /**
   * Reads a file.
   *
   * @param supplyV supply in the look where the file does not say it
   */
  public static FrontEnd read(Path path, double supplyV) throws IOException {
    String text;
    try {
      text = Files.readString(path);
    } catch (NoSuchFileException missing) {
      throw new NoSuchFileException(
          path.toString(), null, "no such file; expected a front-end file (JSON)");
    }
    return parse(text, path.toString(), supplyV);
  }

  /** Reads text; {@code name} is for messages. */
  public static FrontEnd parse(String text, String name, double supplyV) throws IOException {
    if (text.length() > LONGEST_CHARS) {
      throw WaveformException.of(
          name,
          new Phrase("characters", String.valueOf(text.length()), String.valueOf(LONGEST_CHARS)));
    }
    JsonFactory factory =
        JsonFactory.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .streamReadConstraints(
                StreamReadConstraints.builder().maxNestingDepth(8).maxNumberLength(40).build())
            .build();
    try (JsonParser json = factory.createParser(text)) {
      return new FrontEndFile(new StrictJson(name, json), FrontEnd.defaults(supplyV)).whole();
    } catch (JsonProcessingException broken) {
      int line = broken.getLocation() == null ? 1 : broken.getLocation().getLineNr();
      throw WaveformException.at(
          name, line, new Phrase("json", JsonWords.worded(broken.getOriginalMessage())));
    }
  }

  private FrontEnd whole() throws IOException {
    json.whole(this::member);
    return new FrontEnd(
        box.box(), lookSupplyV, lookOhm, lookFarad, decayS, inputBits, hardShortA, changes);
  }

  private void member(String key) throws IOException {
    int bit = WaveformBench.bitOf(key);
    if (bit != 0) {
      inputBits = json.truth(key) ? inputBits | bit : inputBits & ~bit;
      return;
    }
    switch (key) {
      case "channels" -> box.channels();
      case "kept" -> box.kept();
      case "calibrated" -> box.calibrated();
      case "clockPercent" -> box.clock();
      case "look" -> json.object("look", this::look);
      case "decayMs" -> decayS = json.number(key, 0.001, 1e7) / 1000;
      case "hardShortA" -> hardShortA = hardShort(key);
      case "at" -> json.array("at", this::change);
      default -> throw json.unknown(key, KEYS);
    }
  }

  private void look(String key) throws IOException {
    switch (key) {
      case "supplyV" -> lookSupplyV = json.number("look.supplyV", 0, 1000);
      case "loadOhm" -> lookOhm = json.number("look.loadOhm", 0, 1e12);
      case "loadUf" -> lookFarad = json.number("look.loadUf", 0, 1e9) * 1e-6;
      default -> throw json.unknown("look." + key, "supplyV, loadOhm, loadUf");
    }
  }

  private void change() throws IOException {
    int line = json.line();
    double[] atS = {Double.NaN};
    List<FrontEnd.Change> here = new ArrayList<>();
    json.object(
        "at[]",
        key -> {
          int bit = WaveformBench.bitOf(key);
          if (key.equals("ms")) {
            atS[0] = json.number("at[].ms", 0, 1e9) / 1000;
          } else if (bit != 0) {
            here.add(new FrontEnd.Change(0, bit, json.truth("at[]." + key), 0));
          } else if (key.equals("hardShortA")) {
            here.add(new FrontEnd.Change(0, 0, false, hardShort("at[].hardShortA")));
          } else {
            throw json.unknown(
                "at[]." + key,
                "ms, button, pedal, chassisClip, supplyPresent, supplyReversed, isolatedLink,"
                    + " hardShortA");
          }
        });
    if (Double.isNaN(atS[0])) {
      throw json.at(line, new Phrase("without-ms"));
    }
    for (FrontEnd.Change change : here) {
      changes.add(new FrontEnd.Change(atS[0], change.bit(), change.on(), change.hardShortA()));
    }
    if (changes.size() > MOST_CHANGES) {
      throw json.bad(
          "at", new Phrase("changes", changes.size()), new Phrase("at-most", MOST_CHANGES));
    }
  }

  private double hardShort(String field) throws IOException {
    return json.number(field, LOWEST_HARD_SHORT_A, HIGHEST_HARD_SHORT_A);
  }
}
