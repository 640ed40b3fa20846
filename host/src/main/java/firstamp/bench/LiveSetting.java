package firstamp.bench;

import firstamp.model.TimeSource;
import firstamp.pipeline.ChainListener;
import firstamp.run.RunSetup;
import firstamp.run.questions.ArmGate;

/** What stays the same over the power-ups of one live bench. */
record LiveSetting(
    RunSetup setup,
    TimeSource time,
    Snapshot.Kind kind,
    String port,
    String logFile,
    ArmGate gate,
    ChainListener alsoTold,
    SleepWatch sleepWatch,
    IdleWatch idleWatch,
    MovedLimits moved,
    EarlierFinder earlier) {}
