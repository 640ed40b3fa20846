package firstamp.app;

import firstamp.locate.wire.LooseWire;
import firstamp.locate.wire.WireAnswer;
import firstamp.locate.wire.WireCase;
import firstamp.locate.wire.WireStep;
import firstamp.log.PowerUpEntry;
import firstamp.log.SetNotes;
import firstamp.model.ProbeEvent;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Where the job of one set stands, from what the log and the file of its wires keep anyway; nothing
 * of it is stored by itself.
 *
 * @param said words of the marks of the latest power-up, in order: "waits for ..." among them says
 *     that the set is on the shelf
 * @param wires of unknown place, 0 = none
 * @param wiresTried how many of them were joined in a power-up
 * @param wiresPlaced how many of them have their place
 * @param coldChecks values measured with the supply off
 * @param knownGood number of the latest power-up flagged as known good, null = none
 */
public record JobState(
    List<String> said, int wires, int wiresTried, int wiresPlaced, int coldChecks, Long knownGood) {
  /** Nothing is known. */
  static final JobState NOTHING = new JobState(List.of(), 0, 0, 0, 0, null);

  public JobState {
    said = List.copyOf(said);
  }

  /**
   * Puts it together.
   *
   * @param powerUps of the set, newest first
   * @param events of the newest one
   * @param notes kept about the set in the log
   * @param kept its wires with what was done about them, null = the set has none
   */
  static JobState of(
      List<PowerUpEntry> powerUps, List<ProbeEvent> events, SetNotes notes, WireCase kept) {
    Set<String> tried = new HashSet<>();
    notes.trials().forEach(trial -> tried.add(trial.wire()));
    int placed = 0;
    int checks = notes.coldChecks().size();
    if (kept != null) {
      for (WireStep step : kept.steps()) {
        if (step.bare() instanceof WireStep.Trial trial) {
          tried.add(trial.wire());
        }
        checks += step.bare() instanceof WireStep.WireOhms ? 1 : 0;
      }
      for (LooseWire wire : kept.wires()) {
        placed += kept.answer(wire.name()).state() == WireAnswer.State.BELONGS ? 1 : 0;
      }
    }
    int wires = kept == null ? tried.size() : kept.wires().size();
    Long good =
        powerUps.stream()
            .filter(PowerUpEntry::baseline)
            .map(PowerUpEntry::number)
            .findFirst()
            .orElse(null);
    return new JobState(words(events), wires, tried.size(), placed, checks, good);
  }

  /** Words of the marks; words typed afterwards replace the first ones. */
  private static List<String> words(List<ProbeEvent> events) {
    List<String> said = new ArrayList<>();
    for (ProbeEvent event : events) {
      if (event instanceof ProbeEvent.Marked marked) {
        said.add(marked.text());
      } else if (event instanceof ProbeEvent.Noted noted
          && noted.mark() >= 1
          && noted.mark() <= said.size()) {
        said.set(noted.mark() - 1, noted.text());
      }
    }
    return said;
  }
}
