package firstamp.cli.command;

import firstamp.cli.output.CliFailure;
import firstamp.cli.output.Said;
import firstamp.cli.run.Names;
import firstamp.locate.wire.ClueKind;
import firstamp.locate.wire.LandingPlace;
import firstamp.locate.wire.LooseWire;
import firstamp.locate.wire.TrialVerdict;
import firstamp.locate.wire.TriedWire;
import firstamp.locate.wire.WireCase;
import firstamp.locate.wire.WireStep;
import firstamp.model.text.UnfitValue;
import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Option;

/** What a person says about a wire: which one, where, what was measured or judged. */
final class WireStepOptions {
  @Option(names = "--wire", paramLabel = "WIRE", description = "the wire (default the first)")
  private String wire;

  @Option(names = "--place", paramLabel = "PLACE", description = "the place")
  private String place;

  @Option(
      names = "--clue",
      paramLabel = "KIND",
      description =
          "colour, same-elsewhere, reach, old-solder, build, continuity or picture speaks for the"
              + " place")
  private String clue;

  @Option(names = "--against", description = "the clue speaks against the place")
  private boolean against;

  @Option(
      names = "--hunch",
      paramLabel = "WORD",
      description = "hardly, perhaps, probably or surely")
  private String hunch;

  @Option(
      names = "--ohm",
      paramLabel = "OHM",
      description = "cold: wire to place; without --wire: place to chassis")
  private Double ohm;

  @Option(names = "--other-way", paramLabel = "OHM", description = "the same with leads swapped")
  private Double otherWayOhm;

  @Option(names = "--diode", paramLabel = "V", description = "cold: junction, volts forward")
  private Double diodeV;

  @Option(
      names = "--swing",
      split = ",",
      paramLabel = "OHM,OHM,S",
      description = "cold: ohms that climb, first, last, seconds")
  private List<Double> swing;

  @Option(
      names = "--known",
      paramLabel = "NOTE",
      description = "what reads so low to the chassis: a winding, a resistor")
  private String known;

  @Option(names = "--volts-alone", paramLabel = "V", description = "volts of the insulated end")
  private Double voltsAlone;

  @Option(names = "--volts-loaded", paramLabel = "V", description = "with 10 kohm to the chassis")
  private Double voltsLoaded;

  @Option(names = "--volts", paramLabel = "V", description = "volts of the place, nothing joined")
  private Double volts;

  @Option(
      names = "--verdict",
      paramLabel = "WORD",
      description =
          "of a trial: short, over-draw, worse, no-change or better; left out = judged from the"
              + " log")
  private String verdict;

  @Option(names = "--figure", paramLabel = "NAME", description = "figure that became better")
  private List<String> figures;

  @Option(names = "--moved", paramLabel = "NOTE", description = "the wire was moved to the place")
  private String moved;

  @Option(names = "--photo", paramLabel = "PATH", description = "a photograph of this wire")
  private Path photo;

  /** The wire that is meant. */
  String name(WireCase wires) {
    return wire == null
        ? wires.wires().get(0).name()
        : Names.of(
            Said.of("name.what.wire"), wire, wires.wires().stream().map(LooseWire::name).toList());
  }

  /**
   * What was measured, seen or judged by the person; null = nothing.
   *
   * @param powerUp number of the power-up a verdict belongs to, null = none
   */
  WireStep measured(WireCase wires, String powerUp) {
    String name = name(wires);
    if (clue != null) {
      return new WireStep.Clue(name, needsPlace(wires), ClueKind.of(clue), !against);
    }
    if (hunch != null) {
      return new WireStep.Hunch(name, needsPlace(wires), hunch);
    }
    WireStep cold = cold(wires, name);
    if (cold != null) {
      return cold;
    }
    if (known != null) {
      return new WireStep.Known(name, known);
    }
    if (voltsAlone != null || voltsLoaded != null) {
      if (voltsAlone == null || voltsLoaded == null) {
        throw new UnfitValue(Said.of("trial.volts-belong-together"));
      }
      return new WireStep.SourceTest(name, voltsAlone, voltsLoaded);
    }
    if (volts != null) {
      return new WireStep.PlaceVolts(needsPlace(wires), volts);
    }
    if (verdict != null) {
      return new WireStep.Trial(
          name,
          needsPlace(wires),
          powerUp == null ? null : number(powerUp),
          TrialVerdict.of(verdict),
          figures == null ? List.of() : figures);
    }
    return null;
  }

  /** What is only kept with the wire: a photograph, that it was moved; null = nothing. */
  WireStep kept(WireCase wires) throws CliFailure {
    String name = name(wires);
    if (photo != null) {
      return new WireStep.Photograph(name, photo.toString(), StateFiles.sha256(photo));
    }
    return moved == null ? null : new WireStep.Moved(name, needsPlace(wires), moved);
  }

  private WireStep cold(WireCase wires, String name) {
    if (ohm != null) {
      return wire == null
          ? new WireStep.PlaceOhms(needsPlace(wires), ohm)
          : new WireStep.WireOhms(name, needsPlace(wires), ohm, otherWayOhm);
    }
    if (diodeV != null) {
      return new WireStep.Diode(name, diodeV, null);
    }
    if (swing != null) {
      if (swing.size() != 3) {
        throw new UnfitValue(Said.of("trial.swing-needs"));
      }
      return new WireStep.Swing(name, swing.get(0), swing.get(1), swing.get(2));
    }
    return null;
  }

  private static int number(String powerUp) {
    try {
      return Integer.parseInt(powerUp);
    } catch (NumberFormatException word) {
      throw new UnfitValue(Said.of("trial.power-up-number", powerUp));
    }
  }

  /** What is typed goes before what the power-up says. */
  TriedWire tried(WireCase wires, TriedWire logged) {
    String at = place == null && logged != null ? logged.place() : needsPlace(wires);
    return new TriedWire(wire == null && logged != null ? logged.wire() : name(wires), at);
  }

  private String needsPlace(WireCase wires) {
    if (place == null) {
      throw new UnfitValue(Said.of("trial.place-is-missing"));
    }
    return Names.of(
        Said.of("name.what.place"),
        place,
        wires.places().stream().map(LandingPlace::name).toList());
  }
}
