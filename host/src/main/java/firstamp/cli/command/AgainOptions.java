package firstamp.cli.command;

import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.Logs;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
import firstamp.cli.output.UsageProblem;
import firstamp.cli.output.UsageWords;
import firstamp.cli.run.LiveSetup;
import firstamp.cli.run.Names;
import firstamp.cli.run.Sheets;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.model.Difference;
import firstamp.model.JobSheet;
import firstamp.model.ProbeEvent;
import firstamp.model.text.Explained;
import firstamp.model.text.Numbers;
import firstamp.run.StagedSheet;
import firstamp.run.TripsInARow;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;

/** Switching on again after the probe box switched itself off: its number, and what is asked. */
final class AgainOptions {
  private final Speech speech;

  AgainOptions(Speech speech) {
    this.speech = speech;
  }

  private static final int MOST_TRIPS = 65_535;
  private static final String WAYS =
      "Take the supply off, discharge, measure the ohms to the chassis and give them with --ohm OHMS"
          + " (supply leads) or --ohm RAIL=OHMS; or turn the supply down to half its volts and give"
          + " --half-volts.";

  @Option(
      names = "--restore",
      paramLabel = "NUMBER",
      defaultValue = "0",
      description = "switch on again after the probe box switched itself off: its number")
  int restore;

  @Option(
      names = "--different",
      paramLabel = "WHAT",
      description = {
        "with --restore: what is different now: wire, part, limit, volts or nothing. Kept with the"
            + " power-up.",
        "Nothing, or the same cause as the time before, wants --ohm or --half-volts; from the third"
            + " time on the set rests ten minutes"
      })
  private String different;

  @Option(
      names = "--ohm",
      paramLabel = "[RAIL=]OHMS",
      description =
          "with --different: resistance to the chassis, measured with the supply off, at the supply"
              + " leads or at a rail (its name or number)")
  private String ohm;

  @Option(
      names = "--half-volts",
      description =
          "with --different: the supply is turned down to half; well over that switches off, and"
              + " what needs the full volts is not watched")
  private boolean half;

  private ProbeEvent.SwitchedOnAgain answer;

  /** Whether what was typed fits together. */
  void check(CommandSpec spec, boolean steps) {
    if (restore < 0 || restore > MOST_TRIPS) {
      throw new UsageProblem(
          spec.commandLine(), Said.of("again.restore-expected-1-to", restore, MOST_TRIPS));
    }
    if (different != null && restore == 0) {
      throw new UsageProblem(spec.commandLine(), Said.of("again.different-needs-restore-number"));
    }
    if ((ohm != null || half) && different == null) {
      throw new UsageProblem(
          spec.commandLine(),
          Said.of("again.needs-different-what", (half ? "--half-volts" : "--ohm")));
    }
    if (half && steps) {
      throw new UsageProblem(spec.commandLine(), Said.of("again.half-volts-or-steps-not"));
    }
    List<String> known = Arrays.stream(Difference.values()).map(Difference::id).toList();
    if (different != null && !known.contains(different)) {
      throw new UsageProblem(
          spec.commandLine(), UsageWords.noAnswer("--different", different, known));
    }
  }

  /** What was answered, null = nothing. */
  ProbeEvent.SwitchedOnAgain answer(JobSheet effective) throws CliFailure {
    if (different == null) {
      return null;
    }
    int rail = 0;
    Double measured = null;
    if (ohm != null) {
      int equals = ohm.lastIndexOf('=');
      rail = equals < 0 ? 0 : rail(effective, ohm.substring(0, equals));
      measured = number(ohm.substring(equals + 1));
    }
    answer =
        new ProbeEvent.SwitchedOnAgain(
            0,
            restore,
            Difference.valueOf(different.toUpperCase(Locale.ROOT)),
            rail,
            measured,
            half ? (Double) (effective.supply().nominalV() / 2) : null);
    return answer;
  }

  private static int rail(JobSheet effective, String typed) throws CliFailure {
    for (JobSheet.Rail each : effective.rails()) {
      if (typed.equals(String.valueOf(each.input()))) {
        return each.input();
      }
    }
    try {
      String name =
          Names.of(
              Said.of("name.what.rail"),
              typed,
              effective.rails().stream().map(JobSheet.Rail::name).toList());
      return effective.rails().stream()
          .filter(each -> each.name().equals(name))
          .mapToInt(JobSheet.Rail::input)
          .findFirst()
          .orElseThrow();
    } catch (IllegalArgumentException unknown) {
      throw new CliFailure(ExitCode.USAGE, Said.of("again.ohm", Explained.of(unknown)), unknown);
    }
  }

  private static double number(String typed) throws CliFailure {
    try {
      double value = Double.parseDouble(typed.strip());
      if (value >= 0 && Double.isFinite(value)) {
        return value;
      }
    } catch (NumberFormatException noNumber) {
      throw noOhms(typed);
    }
    throw noOhms(typed);
  }

  private static CliFailure noOhms(String typed) {
    return new CliFailure(ExitCode.USAGE, Said.of("again.ohm-expected-ohms-for-example", typed));
  }

  /** The sheet for what was promised. */
  Sheets.Ready fitted(Sheets.Ready sheet) {
    return half ? Sheets.fitted(sheet, StagedSheet.half(sheet.effective())) : sheet;
  }

  /** Refuses where the log says that more is needed, and closes it then. */
  void refuse(BenchLog log, JobSheet effective, long nowEpochMs) throws CliFailure {
    if (restore == 0) {
      return;
    }
    try {
      String against =
          against(
              TripsInARow.of(log.list(), effective.set().name(), null, nowEpochMs),
              effective,
              nowEpochMs);
      if (against != null) {
        LiveSetup.closeLog(log, speech);
        throw new CliFailure(ExitCode.REFUSED, against);
      }
    } catch (LogException failed) {
      throw Logs.failure(failed);
    }
  }

  private String against(TripsInARow trips, JobSheet effective, long nowEpochMs) {
    String often =
        "the set has switched itself off "
            + trips.count()
            + " times in a row for the same cause ("
            + trips.cause()
            + ").";
    if (trips.restS(nowEpochMs) > 0) {
      return often
          + " It rests until "
          + DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT)
              .format(Instant.ofEpochMilli(trips.restUntilEpochMs()).atZone(ZoneId.systemDefault()))
          + " so that hot parts cool down. Then "
          + lowerFirst(WAYS);
    }
    boolean proven = answer != null && (answer.ohm() != null || answer.halfV() != null);
    Difference said = answer == null ? null : answer.difference();
    if (!proven && trips.wantsProof(said)) {
      return said == Difference.NOTHING
          ? "nothing is different, so the same is to be expected. " + WAYS
          : often
              + (said == null ? " What is different now? Say it with --different. " : " ")
              + WAYS;
    }
    if (said == null) {
      speech.note(Said.of("again.what-is-different-since-number", restore));
      return null;
    }
    return answer.ohm() == null ? null : forbidden(effective);
  }

  private String forbidden(JobSheet effective) {
    Double amps = TripsInARow.forbids(effective, answer.rail(), answer.ohm());
    return amps == null
        ? null
        : Numbers.text(answer.ohm())
            + " ohm to the chassis would draw "
            + (amps.isInfinite() ? "any current" : Numbers.amps(amps))
            + ", the running limit is "
            + Numbers.amps(effective.limits().runningA())
            + ". Find that short first; the set stays off.";
  }

  private static String lowerFirst(String text) {
    return text.substring(0, 1).toLowerCase(Locale.ROOT) + text.substring(1);
  }
}
