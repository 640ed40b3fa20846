package firstamp.window;

import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.model.Priority;
import firstamp.window.FakeSession.Scene;
import java.util.ArrayList;
import java.util.List;

/** The alarms at the end of a scene. */
final class SceneAlarms {
  private SceneAlarms() {}

  static List<Alarm> of(Scene scene) {
    List<Alarm> alarms = new ArrayList<>();
    if (scene == Scene.LOST_HEAD) {
      alarms.add(
          alarm(
              1,
              "head-below-meter",
              0,
              null,
              4600,
              Priority.MEDIUM,
              70.2,
              44.0,
              "dB",
              "The meter moves but the head gets next to nothing, since W3 went to P7. Follow the"
                  + " signal from the meter's tap to the head; look at the muting contacts of"
                  + " jacks first.",
              0));
    }
    if (scene == Scene.RAIL_LOW) {
      alarms.add(
          alarm(
              1,
              "rail-window",
              1,
              "B1",
              4010,
              Priority.HIGH,
              7.1,
              7.79,
              "V",
              "B1 has left its window downwards. Switch off, then look for a load that grows"
                  + " warm.",
              0));
      alarms.add(
          alarm(
              2,
              "not-logging",
              0,
              null,
              4900,
              Priority.HIGH,
              null,
              null,
              null,
              "The disk is full.",
              1));
    }
    if (scene.shorted()) {
      alarms.add(
          alarm(
              1,
              "over-current",
              0,
              null,
              3100,
              Priority.HIGH,
              8.1,
              1.0,
              "A",
              "8.1 A, limit 1 A, since W3 went to P7. Take the supply's leads off, then measure"
                  + " from B1 to chassis with the wire lifted.",
              0));
      alarms.add(
          alarm(
              2,
              "short",
              0,
              null,
              3100,
              Priority.HIGH,
              0.51,
              2.5,
              "ohm",
              "At that moment the set was a short: 0.51 ohm, the limit is 2.5 ohm. (Since W3 went"
                  + " to P7.) Take off the wire that was joined last, then measure the ohms with"
                  + " the supply off.",
              1));
    }
    return alarms;
  }

  private static Alarm alarm(
      int number,
      String rule,
      int rail,
      String railName,
      double atMs,
      Priority priority,
      Double value,
      Double limit,
      String unit,
      String text,
      int foldedUnder) {
    return new Alarm(
        number,
        rule,
        rail,
        railName,
        atMs,
        atMs - 90,
        atMs,
        priority,
        AlarmState.UNACKNOWLEDGED,
        value,
        false,
        limit,
        unit,
        text,
        foldedUnder);
  }
}
