package firstamp.cli.output;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.locate.odds.OddsWord;
import firstamp.locate.wire.ShortReading;
import firstamp.locate.wire.WireAnswer;
import firstamp.locate.wire.WireCase;
import java.util.List;

/**
 * Where a wire stands, as text or as a JSON line.
 *
 * @param all every place, not the first three
 * @param json a line for machines
 */
public record TrialText(boolean all, boolean json, Speech speech) {
  public void print(WireCase wires, String name) {
    if (json) {
      new JsonLines(System.out).print(line(wires, wires.answer(name)));
      return;
    }
    WireAnswer answer = wires.answer(name, speech.wires());
    answer.warnings().forEach(warning -> speech.out(Said.of("trial.note", warning)));
    System.out.println(answer.sentence());
    List<WireAnswer.PlaceOdds> places = answer.places();
    int most = all ? places.size() : Math.min(LocateText.SHOWN, places.size());
    for (WireAnswer.PlaceOdds odds : places.subList(0, most)) {
      String reason = odds.reason() == null ? "" : " (" + odds.reason() + ")";
      speech.out(Said.of("trial.place", odds.place(), speech.odds(odds.word()), reason));
    }
    String colour = wires.wire(name).colour();
    if (colour != null) {
      speech.out(Said.of("trial.colour-says-little", colour));
    }
  }

  private static ObjectNode line(WireCase wires, WireAnswer answer) {
    ObjectNode node = JsonLines.object("wire");
    node.put("wire", answer.wire()).put("number", wires.steps().size());
    node.put("state", answer.state().id()).put("text", answer.sentence());
    answer.warnings().forEach(node.putArray("warnings")::add);
    ArrayNode places = node.putArray("places");
    for (WireAnswer.PlaceOdds odds : answer.places()) {
      ObjectNode one = places.addObject().put("place", odds.place()).put("harm", odds.harm());
      one.put("word", odds.word().words()).put("share", odds.share());
      one.put("struckOut", odds.word() == OddsWord.STRUCK_OUT);
      if (odds.reason() != null) {
        one.put("reason", odds.reason());
      }
    }
    if (answer.found() != null) {
      ShortReading found = answer.found();
      ObjectNode one = node.putObject("short");
      if (found.place() != null) {
        one.put("place", found.place());
      }
      one.put("ohm", found.ohm()).put("enoughOhm", found.enoughOhm());
    }
    if (answer.next() != null) {
      WireAnswer.Trial next = answer.next();
      ObjectNode one = node.putObject("next").put("place", next.place());
      if (next.throughOhm() != null) {
        one.put("throughOhm", next.throughOhm());
      }
      one.put("worstA", next.worstA()).put("worstW", next.worstW());
      one.put("limitA", next.limitA());
    }
    return node;
  }
}
