package firstamp.alarm;

import firstamp.model.Rest;
import firstamp.model.RuleId;
import firstamp.model.limits.Coverage;
import java.util.List;

/** Which rules a power-up let the program watch, and why the others were not. */
final class WatchedRules {
  private final RunState run;
  private final AlarmConditions watches;

  WatchedRules(RunState run, AlarmConditions watches) {
    this.run = run;
    this.watches = watches;
  }

  Coverage coverage(List<RailRules> rails, InputRules inputs, LevelRules levels) {
    Coverage coverage = new Coverage(run.sheet(), run.setup().reducedStream());
    if (run.everClosed()) {
      for (RailRules rail : rails) {
        if (!rail.seen()) {
          coverage.noClip(rail.input());
        }
      }
      if (inputs.offsetClipMissing()) {
        coverage.noClip(inputs.offsetInput());
      }
      for (AlarmCondition watch : watches.all()) {
        boolean waits = watch.rule().rest() != Rest.OPENED && watch.rule().rest() != Rest.ALWAYS;
        // A trip needs no waiting, and the polarity of the supply is checked by the look.
        boolean instant =
            watch.rule() == RuleId.OVER_CURRENT
                || watch.rule() == RuleId.WRONG_POLARITY && watch.rail() == 0;
        boolean level = watch.rule().scope() == RuleId.Scope.LEVEL;
        if (waits && !instant && !level && !watch.judged()) {
          coverage.tooShort(watch.rule(), watch.rail());
        }
      }
      levels(levels, coverage);
    }
    return coverage;
  }

  private static void levels(LevelRules levels, Coverage coverage) {
    coverage.levelClips(levels.clips());
    if (!levels.windows()) {
      if (levels.clipRoved()) {
        coverage.clipRoved(RuleId.HEAD_BELOW_METER);
        coverage.clipRoved(RuleId.HUM);
      } else {
        coverage.noLevels();
      }
    } else {
      if (levels.recordOff() && levels.headWaits()) {
        coverage.recordOff(RuleId.HEAD_BELOW_METER);
      } else if (!levels.signalSeen()) {
        coverage.meterQuiet();
      } else if (levels.clipRoved() && levels.headWaits()) {
        coverage.clipRoved(RuleId.HEAD_BELOW_METER);
      } else if (levels.headWantsRecord()) {
        coverage.recordNotSaid();
      }
      if (!levels.humJudged()) {
        if (levels.recordOff()) {
          coverage.recordOff(RuleId.HUM);
        } else if (levels.clipRoved()) {
          coverage.clipRoved(RuleId.HUM);
        } else {
          coverage.alwaysSpeech();
        }
      }
    }
  }
}
