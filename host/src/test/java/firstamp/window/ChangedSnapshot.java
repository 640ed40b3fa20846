package firstamp.window;

import firstamp.bench.Snapshot;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** A snapshot with some of its parts changed. */
public final class ChangedSnapshot {
  private static final Set<Class<?>> NESTED =
      Set.of(
          Snapshot.Times.class,
          Snapshot.Figures.class,
          Snapshot.Levels.class,
          Snapshot.Findings.class);

  private ChangedSnapshot() {}

  /** The same snapshot with some of its parts, or of its values' parts, changed by their names. */
  public static Snapshot of(Snapshot from, Map<String, Object> changes)
      throws ReflectiveOperationException {
    List<String> unknown = new ArrayList<>(changes.keySet());
    Snapshot made = Snapshot.class.cast(copy(from, changes, unknown));
    if (!unknown.isEmpty()) {
      throw new IllegalArgumentException("a snapshot has no " + unknown);
    }
    return made;
  }

  private static Object copy(Object from, Map<String, Object> changes, List<String> unknown)
      throws ReflectiveOperationException {
    RecordComponent[] parts = from.getClass().getRecordComponents();
    Class<?>[] types = new Class<?>[parts.length];
    Object[] values = new Object[parts.length];
    for (int at = 0; at < parts.length; at++) {
      String name = parts[at].getName();
      types[at] = parts[at].getType();
      Object value = parts[at].getAccessor().invoke(from);
      if (unknown.remove(name) || changes.containsKey(name)) {
        values[at] = changes.get(name);
      } else {
        values[at] = NESTED.contains(types[at]) ? copy(value, changes, unknown) : value;
      }
    }
    return from.getClass().getDeclaredConstructor(types).newInstance(values);
  }
}
