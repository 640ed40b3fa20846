package firstamp.bench;

import firstamp.analysis.figures.TripPeak;
import firstamp.model.JobSheet;
import firstamp.model.Trip;
import firstamp.model.TripCause;
import firstamp.model.samples.Capture;
import firstamp.model.samples.Channel;
import firstamp.model.samples.Scaling;
import firstamp.pipeline.TripFigures;
import java.util.ArrayList;
import java.util.List;

/** Parts of a snapshot that are put together alike for a live run and for a replay. */
final class SnapshotParts {
  private static final double MICROS_PER_MS = 1000.0;

  private SnapshotParts() {}

  /**
   * The clips of the sheet.
   *
   * @param volts per input, null = the clip is off
   * @param closedForMs how long the switch has been closed, null = it is open
   */
  static List<Snapshot.Rail> rails(JobSheet sheet, Double[] volts, Double closedForMs) {
    List<Snapshot.Rail> now = new ArrayList<>();
    for (JobSheet.Rail rail : sheet.rails()) {
      Double lowV = null;
      Double highV = null;
      if (rail.nominalV() != null && rail.tolerancePercent() != null) {
        double half = Math.abs(rail.nominalV()) * rail.tolerancePercent() / 100;
        lowV = rail.nominalV() - half;
        highV = rail.nominalV() + half;
      }
      boolean judged =
          closedForMs != null && (rail.settleMs() == null || closedForMs >= rail.settleMs());
      now.add(
          new Snapshot.Rail(
              rail.input(), rail.name(), volts[rail.input() - 1], lowV, highV, judged));
    }
    return now;
  }

  /** Limits of a sheet to draw in. */
  static Snapshot.Limits limits(JobSheet sheet) {
    JobSheet.Limits limits = sheet.limits();
    return new Snapshot.Limits(
        limits == null ? null : limits.inrushA(),
        limits == null ? null : limits.inrushMs(),
        limits == null ? null : limits.runningA(),
        sheet.supply().minV(),
        sheet.supply().maxV());
  }

  /** A trip with the current around it, as far as it has come. */
  static Snapshot.TripView trip(
      Trip trip, TripFigures figures, Capture capture, Scaling scaling, JobSheet sheet) {
    String railName = figures.rail() == null ? null : railName(sheet, figures.rail());
    double stepMs = 1000.0 / Channel.I.conversionsPerSecond();
    double hardShortA = trip.cause() == TripCause.HARD_SHORT ? figures.value() : 0;
    List<Float> values = null;
    double firstMs = 0;
    if (capture != null && capture.tripNumber() == trip.number()) {
      values = new ArrayList<>();
      for (int place = capture.missing(); place < Capture.LENGTH; place++) {
        values.add((float) scaling.value(Channel.I, capture.counts(place)));
      }
      firstMs =
          (trip.decidedMicros() - trip.crossedMicros()) / MICROS_PER_MS
              - (Capture.DECIDING - capture.missing()) * stepMs;
    }
    return new Snapshot.TripView(
        trip.number(),
        trip.cause(),
        railName,
        figures.atMs(),
        figures.value(),
        false,
        figures.limit(),
        figures.unit(),
        (trip.openedMicros() - trip.crossedMicros()) / MICROS_PER_MS,
        values,
        firstMs,
        stepMs,
        TripPeak.of(trip, capture, scaling, hardShortA),
        figures.selfTestBits());
  }

  private static String railName(JobSheet sheet, int rail) {
    if (rail == 0) {
      return "supply";
    }
    JobSheet.Rail entry = sheet.rail(rail);
    return entry == null || entry.name() == null ? "rail " + rail : entry.name();
  }
}
