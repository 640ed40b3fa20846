package firstamp.supply;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A bench supply of an invented maker that takes standard commands and nothing else.
 *
 * <p>Written from the open standards: message form and *IDN?, *CLS of IEEE 488.2; headers with long
 * and short forms, SYST:ERR? and the error numbers -100 command, -109 missing parameter, -113
 * undefined header, -131 invalid suffix, -222 data out of range of SCPI-1999 (numbers from memory).
 */
public final class StrictResponder {
  /** What can be wrong with its answers to one question. */
  public enum Fault {
    /** None. */
    MISSING,
    /** After the next line has come. */
    LATE,
    /** Something else. */
    WRONG
  }

  private static final Pattern VOLT =
      Pattern.compile(
          "(:?SOUR(?:CE)?:)?VOLT(?:AGE)?(:LEV(?:EL)?)?(:IMM(?:EDIATE)?)?(:AMPL(?:ITUDE)?)?");
  private static final Pattern CURR =
      Pattern.compile(
          "(:?SOUR(?:CE)?:)?CURR(?:ENT)?(:LEV(?:EL)?)?(:IMM(?:EDIATE)?)?(:AMPL(?:ITUDE)?)?");
  private static final Pattern OUTPUT = Pattern.compile(":?OUTP(?:UT)?(:STAT(?:E)?)?");
  private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)(E[+-]?\\d+)?");

  private final Deque<String> errors = new ArrayDeque<>();
  private final Map<String, Fault> faults = new ConcurrentHashMap<>();
  private final List<String> heard = new CopyOnWriteArrayList<>();
  private final List<String> owed = new ArrayList<>();
  private volatile double volts;
  private volatile double ampere = 0.1;
  private volatile boolean on;
  private volatile boolean dead;
  private volatile boolean deaf;
  private volatile boolean turnsOff = true;

  /** One line in; the answers, in order. */
  public synchronized List<String> line(String line) {
    if (deaf) {
      return List.of();
    }
    heard.add(line);
    List<String> answers = new ArrayList<>();
    String[] parts = line.trim().split("\\s+", 2);
    String header = parts[0].toUpperCase(Locale.ROOT);
    String parameter = parts.length < 2 ? "" : parts[1].toUpperCase(Locale.ROOT);
    String answer = handle(header, parameter);
    answers.addAll(owed);
    owed.clear();
    if (answer == null || dead) {
      return dead ? List.of() : answers;
    }
    Fault fault = faults.get(header);
    if (fault == null) {
      answers.add(answer);
    } else if (fault == Fault.LATE) {
      faults.remove(header);
      owed.add(answer);
    } else if (fault == Fault.WRONG) {
      answers.add("QB");
    }
    return answers;
  }

  private String handle(String header, String parameter) {
    boolean question = header.endsWith("?");
    String bare = question ? header.substring(0, header.length() - 1) : header;
    switch (header) {
      case "*IDN?":
        return "TARNWELL (INVENTED),BS-30,0,1.0";
      case "*CLS":
        errors.clear();
        return null;
      case "SYST:ERR?", "SYSTEM:ERROR?", "SYST:ERR:NEXT?", "SYSTEM:ERROR:NEXT?":
        return errors.isEmpty() ? "0,\"No error\"" : errors.poll();
      case "MEAS:VOLT?", "MEASURE:VOLTAGE?":
        return String.format(Locale.ROOT, "%.3E", on ? volts : 0);
      case "MEAS:CURR?", "MEASURE:CURRENT?":
        return String.format(Locale.ROOT, "%.3E", on ? 0.05 : 0);
      default:
        break;
    }
    if (VOLT.matcher(bare).matches()) {
      if (question) {
        return String.format(Locale.ROOT, "%.3f", volts);
      }
      volts = level(parameter, 30, volts);
      return null;
    }
    if (CURR.matcher(bare).matches()) {
      if (question) {
        return String.format(Locale.ROOT, "%.3f", ampere);
      }
      ampere = level(parameter, 3, ampere);
      return null;
    }
    if (OUTPUT.matcher(bare).matches()) {
      if (question) {
        return on ? "1" : "0";
      }
      output(parameter);
      return null;
    }
    errors.add("-113,\"Undefined header\"");
    return null;
  }

  private void output(String parameter) {
    switch (parameter) {
      case "ON", "1" -> on = true;
      case "OFF", "0" -> on = on && !turnsOff;
      case "" -> errors.add("-109,\"Missing parameter\"");
      default -> errors.add("-100,\"Command error\"");
    }
  }

  private double level(String parameter, double highest, double before) {
    Matcher number = NUMBER.matcher(parameter);
    if (parameter.isEmpty()) {
      errors.add("-109,\"Missing parameter\"");
    } else if (!number.matches()) {
      errors.add("-131,\"Invalid suffix\"");
    } else if (Double.parseDouble(parameter) < 0 || Double.parseDouble(parameter) > highest) {
      errors.add("-222,\"Data out of range\"");
    } else {
      return Double.parseDouble(parameter);
    }
    return before;
  }

  /** Makes the answers to one question wrong. */
  public void fault(String question, Fault fault) {
    faults.put(question, fault);
  }

  /** It listens and answers nothing any more. */
  public void fallsSilent() {
    dead = true;
  }

  /** It neither listens nor answers. */
  public void hearsNothing() {
    deaf = true;
  }

  /** Its output stays on whatever the command. */
  public void stuckOn() {
    turnsOff = false;
  }

  /** Switches itself off, as on too high volts. */
  public void switchesItselfOff() {
    on = false;
  }

  /** Switched on at its front. */
  public void switchedOnAtItsFront() {
    on = true;
  }

  /** Whether its output is on. */
  public boolean on() {
    return on;
  }

  /** Volts it is set to. */
  public double volts() {
    return volts;
  }

  /** Limit it is set to. */
  public double ampere() {
    return ampere;
  }

  /** Every line that came. */
  public List<String> heard() {
    return heard;
  }
}
