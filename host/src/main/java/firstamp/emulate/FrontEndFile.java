package firstamp.emulate;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import firstamp.model.Calibration;
import firstamp.model.Channel;
import firstamp.model.JsonWords;
import firstamp.protocol.ChannelScale;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads a front-end file, strictly: an unknown key, a wrong kind or a number out of range is said
 * with file, line, field and what was expected.
 */
final class FrontEndFile {
  private static final int LONGEST_CHARS = 1_000_000;
  private static final int MOST_CHANGES = 256;
  private static final double LONGEST_BASE = Integer.MAX_VALUE;
  private static final double LOWEST_HARD_SHORT_A = 0.5;
  private static final double HIGHEST_HARD_SHORT_A = 12.5;
  private static final String KEYS =
      "channels, look, decayMs, chassisClip, supplyPresent, supplyReversed, button, pedal,"
          + " isolatedLink, hardShortA, at";

  private final String name;
  private final JsonParser json;
  private final List<ChannelScale> scales = new ArrayList<>(ChannelScale.nominal());
  private final List<FrontEnd.Change> changes = new ArrayList<>();
  private boolean scalesGiven;
  private double lookSupplyV;
  private double lookOhm;
  private double lookFarad;
  private double decayS;
  private int inputBits;
  private double hardShortA;

  private FrontEndFile(String name, JsonParser json, FrontEnd defaults) {
    this.name = name;
    this.json = json;
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
  static FrontEnd read(Path path, double supplyV) throws IOException {
    String text;
    try {
      text = Files.readString(path);
    } catch (NoSuchFileException missing) {
      throw new NoSuchFileException(
          path.toString(), null, "no such file; expected a front-end file (JSON)");
    }
    return parse(text, path.toString(), supplyV);
  }

  /** Reads text; {@code name} stands in messages. */
  static FrontEnd parse(String text, String name, double supplyV) throws IOException {
    if (text.length() > LONGEST_CHARS) {
      throw new WaveformException(
          name + ": " + text.length() + " characters; expected at most " + LONGEST_CHARS);
    }
    JsonFactory factory =
        JsonFactory.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .streamReadConstraints(
                StreamReadConstraints.builder().maxNestingDepth(8).maxNumberLength(40).build())
            .build();
    try (JsonParser json = factory.createParser(text)) {
      return new FrontEndFile(name, json, FrontEnd.defaults(supplyV)).whole();
    } catch (JsonProcessingException broken) {
      int line = broken.getLocation() == null ? 1 : broken.getLocation().getLineNr();
      throw new WaveformException(
          name + ":" + line + ": " + JsonWords.of(broken.getOriginalMessage()) + "; expected JSON");
    }
  }

  private FrontEnd whole() throws IOException {
    json.nextToken();
    object("the file", this::member);
    if (json.nextToken() != null) {
      throw bad("the file", "goes on after its end", "one object");
    }
    return new FrontEnd(
        scales,
        scalesGiven,
        lookSupplyV,
        lookOhm,
        lookFarad,
        decayS,
        inputBits,
        hardShortA,
        changes);
  }

  private interface Member {
    void take(String key) throws IOException;
  }

  private void object(String field, Member member) throws IOException {
    if (json.currentToken() != JsonToken.START_OBJECT) {
      throw bad(field, found(), "an object");
    }
    while (json.nextToken() != JsonToken.END_OBJECT) {
      String key = json.currentName();
      json.nextToken();
      member.take(key);
    }
  }

  private void member(String key) throws IOException {
    int bit = WaveformBench.bitOf(key);
    if (bit != 0) {
      inputBits = truth(key) ? inputBits | bit : inputBits & ~bit;
      return;
    }
    switch (key) {
      case "channels" -> {
        object("channels", this::channel);
        scalesGiven = true;
      }
      case "look" -> object("look", this::look);
      case "decayMs" -> decayS = number(key, 0.001, 1e7) / 1000;
      case "hardShortA" -> hardShortA = hardShort(key);
      case "at" -> changes();
      default -> throw unknown(key, KEYS);
    }
  }

  private void channel(String key) throws IOException {
    Channel channel = null;
    for (Channel each : Channel.values()) {
      channel = each.name().equals(key) ? each : channel;
    }
    if (channel == null) {
      throw unknown("channels." + key, "I J V R1 R2 R3 H M");
    }
    String field = "channels." + key;
    Channel known = channel;
    double[] ends = {Double.NaN, Double.NaN};
    double[] factor = {1};
    object(
        field,
        inner -> {
          switch (inner) {
            case "unit" -> factor[0] = factor(known, field + ".unit");
            case "atZero" -> ends[0] = number(field + ".atZero", -1e9, 1e9);
            case "atFull" -> ends[1] = number(field + ".atFull", -1e9, 1e9);
            default -> throw unknown(field + "." + inner, "unit, atZero, atFull");
          }
        });
    if (Double.isNaN(ends[0]) || Double.isNaN(ends[1]) || ends[0] == ends[1]) {
      throw bad(field, "incomplete", "both atZero and atFull, and not the same");
    }
    double base = Calibration.basePerUnit(known) * factor[0];
    scales.set(
        known.ordinal(),
        new ChannelScale(base(field, ends[0] * base), base(field, ends[1] * base)));
  }

  private int base(String field, double value) throws WaveformException {
    if (Math.abs(value) > LONGEST_BASE) {
      throw bad(
          field,
          "out of the range of the calibration record",
          "at most 2147 either sign" + " (H: 2.147)");
    }
    return (int) Math.round(value);
  }

  private double factor(Channel channel, String field) throws IOException {
    String unit = channel.quantity().unit();
    String text = json.currentToken() == JsonToken.VALUE_STRING ? json.getText() : "";
    if (text.equals(unit)) {
      return 1;
    } else if (text.equals("m" + unit)) {
      return 1e-3;
    } else if (text.equals("u" + unit)) {
      return 1e-6;
    } else if (text.equals("n" + unit)) {
      return 1e-9;
    }
    throw bad(field, found(), "one of " + unit + ", m" + unit + ", u" + unit + ", n" + unit);
  }

  private void look(String key) throws IOException {
    switch (key) {
      case "supplyV" -> lookSupplyV = number("look.supplyV", 0, 1000);
      case "loadOhm" -> lookOhm = number("look.loadOhm", 0, 1e12);
      case "loadUf" -> lookFarad = number("look.loadUf", 0, 1e9) * 1e-6;
      default -> throw unknown("look." + key, "supplyV, loadOhm, loadUf");
    }
  }

  private void changes() throws IOException {
    if (json.currentToken() != JsonToken.START_ARRAY) {
      throw bad("at", found(), "an array");
    }
    while (json.nextToken() != JsonToken.END_ARRAY) {
      change();
    }
  }

  private void change() throws IOException {
    int line = json.currentLocation().getLineNr();
    double[] atS = {Double.NaN};
    List<FrontEnd.Change> here = new ArrayList<>();
    object(
        "at[]",
        key -> {
          int bit = WaveformBench.bitOf(key);
          if (key.equals("ms")) {
            atS[0] = number("at[].ms", 0, 1e9) / 1000;
          } else if (bit != 0) {
            here.add(new FrontEnd.Change(0, bit, truth("at[]." + key), 0));
          } else if (key.equals("hardShortA")) {
            here.add(new FrontEnd.Change(0, 0, false, hardShort("at[].hardShortA")));
          } else {
            throw unknown(
                "at[]." + key,
                "ms, button, pedal, chassisClip, supplyPresent, supplyReversed, isolatedLink,"
                    + " hardShortA");
          }
        });
    if (Double.isNaN(atS[0])) {
      throw new WaveformException(
          name + ":" + line + ": at[] without ms; expected the time of the change in milliseconds");
    }
    for (FrontEnd.Change change : here) {
      changes.add(new FrontEnd.Change(atS[0], change.bit(), change.on(), change.hardShortA()));
    }
    if (changes.size() > MOST_CHANGES) {
      throw bad("at", changes.size() + " changes", "at most " + MOST_CHANGES);
    }
  }

  private double hardShort(String field) throws IOException {
    return number(field, LOWEST_HARD_SHORT_A, HIGHEST_HARD_SHORT_A);
  }

  private double number(String field, double lowest, double highest) throws IOException {
    JsonToken token = json.currentToken();
    boolean isNumber = token == JsonToken.VALUE_NUMBER_FLOAT || token == JsonToken.VALUE_NUMBER_INT;
    double value = isNumber ? json.getDoubleValue() : Double.NaN;
    if (!(value >= lowest && value <= highest)) {
      throw bad(field, found(), "a number from " + lowest + " to " + highest);
    }
    return value;
  }

  private boolean truth(String field) throws IOException {
    JsonToken token = json.currentToken();
    if (token != JsonToken.VALUE_TRUE && token != JsonToken.VALUE_FALSE) {
      throw bad(field, found(), "true or false");
    }
    return token == JsonToken.VALUE_TRUE;
  }

  private String found() throws IOException {
    return switch (json.currentToken()) {
      case START_OBJECT -> "is an object";
      case START_ARRAY -> "is an array";
      case VALUE_STRING -> "is \"" + json.getText() + "\"";
      default -> "is " + json.getText();
    };
  }

  private WaveformException bad(String field, String found, String expected) {
    return new WaveformException(
        name
            + ":"
            + json.currentLocation().getLineNr()
            + ": "
            + field
            + " "
            + found
            + "; expected "
            + expected);
  }

  private WaveformException unknown(String field, String expected) {
    return new WaveformException(
        name
            + ":"
            + json.currentLocation().getLineNr()
            + ": unknown key "
            + field
            + "; expected "
            + expected);
  }
}
