package firstamp.alarm;

import firstamp.model.JobSheet;

/** A bench whose set has been on for two seconds. */
final class SettledBench {
  private SettledBench() {}

  static Bench settled() {
    return settled(TestSheets.unit());
  }

  static Bench settled(JobSheet sheet) {
    return new Bench(sheet).close().run(2000);
  }
}
