package firstamp.report;

import firstamp.analysis.figures.ChargeFit;
import firstamp.analysis.figures.PowerUpTrend;
import firstamp.model.JobSheet;
import firstamp.model.Trip;
import firstamp.model.samples.Capture;
import firstamp.model.samples.Channel;
import firstamp.model.samples.Scaling;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** The pictures of a report, from the courses and the trip. */
final class ReportPictures {
  private final ReportInput input;
  private final ReportWords words;

  ReportPictures(ReportInput input, ReportWords words) {
    this.words = words;
    this.input = input;
  }

  /** The first ten seconds, or null if the switch never closed. */
  String start() {
    PowerUpTrend course = input.evidence().course();
    if (course == null || course.start().size() < 2) {
      return null;
    }
    List<Strip> strips = new ArrayList<>();
    strips.add(start(words.word("strip.current"), "A", PowerUpTrend.Point::amps));
    strips.add(start(words.word("strip.volts"), "V", PowerUpTrend.Point::volts));
    for (JobSheet.Rail rail : input.sheet().rails()) {
      strips.add(start(rail.name(), "V", point -> point.railV().get(rail.input() - 1)));
    }
    return new StripPicture("start", words.word("strip.seconds")).svg(strips, List.of());
  }

  /** The whole power-up in means of seconds, or null if it was over within the first picture. */
  String whole() {
    PowerUpTrend course = input.evidence().course();
    if (course == null || course.seconds().size() < 12) {
      return null;
    }
    List<Strip> strips = new ArrayList<>();
    strips.add(whole(words.word("strip.current"), "A", PowerUpTrend.SecondMean::amps));
    strips.add(whole(words.word("strip.volts"), "V", PowerUpTrend.SecondMean::volts));
    for (JobSheet.Rail rail : input.sheet().rails()) {
      strips.add(whole(rail.name(), "V", mean -> mean.railV().get(rail.input() - 1)));
    }
    return new StripPicture("whole", words.word("strip.seconds")).svg(strips, List.of());
  }

  /** Supply current without the charging, or null where no charging was found. */
  String leakage() {
    ChargeFit fit = ChargeFit.of(input.evidence().course());
    if (fit == null) {
      return null;
    }
    double[] x = new double[fit.rest().size()];
    double[] y = new double[x.length];
    for (int k = 0; k < x.length; k++) {
      x[k] = (fit.fromMs() + 10.0 * k) / 1000;
      y[k] = fit.rest().get(k);
    }
    return new StripPicture("leakage", words.word("strip.seconds"))
        .svg(List.of(new Strip(words.word("strip.leakage"), "A", x, y)), List.of());
  }

  /** The probe's conversions around its trip, or null if it did not trip. */
  String trip() {
    if (input.tripPicture() == null) {
      return null;
    }
    Trip trip = input.tripPicture().trip();
    Capture capture = input.tripPicture().capture();
    Scaling scaling = input.tripPicture().scaling();
    int count = Capture.LENGTH - capture.missing();
    double[] x = new double[count];
    double[] y = new double[count];
    for (int k = 0; k < count; k++) {
      int place = capture.missing() + k;
      long micros = capture.decidedMicros() + (place - Capture.DECIDING) * 250L;
      x[k] = (micros - trip.crossedMicros()) / 1000.0;
      y[k] = scaling.value(Channel.I, capture.counts(place));
    }
    double openedMs = (trip.openedMicros() - trip.crossedMicros()) / 1000.0;
    return new StripPicture("trip", words.word("strip.milliseconds"))
        .withLimit(limit(trip, scaling))
        .svg(
            List.of(new Strip(words.word("strip.current"), "A", x, y)),
            List.of(
                new StripPicture.Moment(0, words.word("strip.crossed")),
                new StripPicture.Moment(openedMs, words.word("strip.off"))));
  }

  /** The limit as a level, null where the trip was not about the supply current. */
  private StripPicture.Level limit(Trip trip, Scaling scaling) {
    return switch (trip.cause()) {
      case INRUSH ->
          new StripPicture.Level(
              scaling.value(Channel.of(trip.channelNumber()), trip.limit()),
              words.word("strip.limit.inrush"));
      case RUNNING ->
          new StripPicture.Level(
              scaling.value(Channel.of(trip.channelNumber()), trip.limit()),
              words.word("strip.limit.running"));
      case START ->
          new StripPicture.Level(
              scaling.value(Channel.of(trip.channelNumber()), trip.limit()),
              words.word("strip.limit.start"));
      case PEAK ->
          new StripPicture.Level(
              scaling.value(Channel.of(trip.channelNumber()), trip.limit()),
              words.word("strip.limit.peak"));
      case MEAN ->
          new StripPicture.Level(
              scaling.value(Channel.of(trip.channelNumber()), trip.limit() / 16.0),
              words.word("strip.limit.mean"));
      default -> null;
    };
  }

  private Strip start(String name, String unit, ToDoubleFunction<PowerUpTrend.Point> of) {
    PowerUpTrend now = input.evidence().course();
    PowerUpTrend earlier = input.before() == null ? null : input.before().evidence().course();
    double[] none = new double[0];
    return new Strip(
        name,
        unit,
        steps(now.start().size()),
        now.start().stream().mapToDouble(of).toArray(),
        earlier == null ? none : steps(earlier.start().size()),
        earlier == null ? none : earlier.start().stream().mapToDouble(of).toArray());
  }

  private Strip whole(String name, String unit, ToDoubleFunction<PowerUpTrend.SecondMean> of) {
    PowerUpTrend now = input.evidence().course();
    PowerUpTrend earlier = input.before() == null ? null : input.before().evidence().course();
    double[] none = new double[0];
    ToDoubleFunction<PowerUpTrend.SecondMean> middle = mean -> mean.second() + 0.5;
    return new Strip(
        name,
        unit,
        now.seconds().stream().mapToDouble(middle).toArray(),
        now.seconds().stream().mapToDouble(of).toArray(),
        earlier == null ? none : earlier.seconds().stream().mapToDouble(middle).toArray(),
        earlier == null ? none : earlier.seconds().stream().mapToDouble(of).toArray());
  }

  private static double[] steps(int count) {
    double[] x = new double[count];
    for (int k = 0; k < count; k++) {
      x[k] = (k + 0.5) * 0.01;
    }
    return x;
  }
}
