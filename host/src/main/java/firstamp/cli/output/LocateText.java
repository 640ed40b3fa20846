package firstamp.cli.output;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.locate.signal.LocateAnswer;
import firstamp.locate.signal.LocateSession;

/**
 * Where a search stands, as text or as a JSON line.
 *
 * @param all every joint, not the first three
 * @param json a line for machines
 */
public record LocateText(boolean all, boolean json, Speech speech) {
  /** Explanations shown unless all are asked for. */
  static final int SHOWN = 3;

  /** Prints it; gives the exit code. */
  public int print(LocateSession session) {
    LocateAnswer answer = session.answer();
    if (json) {
      new JsonLines(System.out).print(line(session, answer));
    } else {
      speech.out(answer.words());
      int most = all ? answer.odds().size() : Math.min(SHOWN, answer.odds().size());
      for (LocateAnswer.JointOdds odds : answer.odds().subList(0, most)) {
        speech.out(Said.of("locate.joint", odds.joint(), speech.odds(odds.word())));
      }
      answer.remarks().forEach(speech::out);
    }
    return answer.state() == LocateAnswer.State.REFUSED ? ExitCode.FINDING : ExitCode.NORMAL;
  }

  private static ObjectNode line(LocateSession session, LocateAnswer answer) {
    ObjectNode node = JsonLines.object("step");
    node.put("number", session.observations().size());
    node.put("state", answer.state().id());
    node.put("text", answer.sentence());
    if (answer.next() != null) {
      LocateAnswer.Next next = answer.next();
      ObjectNode place = node.putObject("next");
      place.put("point", next.point()).put("mode", next.mode());
      if (next.expectedDbv() != null) {
        place.put("expectedDbv", next.expectedDbv());
      }
      place.put("learntBits", next.bits());
      next.ifThere().forEach(place.putArray("ifThere")::add);
      next.ifGone().forEach(place.putArray("ifGone")::add);
    }
    ArrayNode joints = node.putArray("joints");
    for (LocateAnswer.JointOdds odds : answer.odds()) {
      ObjectNode joint = joints.addObject().put("joint", odds.joint());
      joint.put("word", odds.word().words()).put("share", odds.share());
    }
    node.put("twoLikely", answer.twoLikely());
    ArrayNode remarks = node.putArray("remarks");
    answer.remarks().forEach(remark -> remarks.add(remark.english()));
    return node;
  }
}
