package firstamp.analysis.spectrum;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/**
 * Holds values back until it is sure that the switch had not opened before their end.
 *
 * <p>What the probe says about its switch can come later than the conversions taken after it.
 * Bounded by time, so by the rate at which values come. Not thread-safe.
 *
 * @param <T> readings or windows
 */
public final class DelayLine<T> {
  private final long heldMicros;
  private final ArrayDeque<Timed<T>> line = new ArrayDeque<>();

  private record Timed<T>(long beginMicros, long endMicros, T value) {}

  /** Holds back for so long. */
  public DelayLine(long heldMicros) {
    this.heldMicros = heldMicros;
  }

  /** Takes a value and gives out those that have become old enough. */
  public void put(long beginMicros, long endMicros, T value, Consumer<T> release) {
    line.addLast(new Timed<>(beginMicros, endMicros, value));
    while (line.peekFirst().endMicros() < endMicros - heldMicros) {
      release.accept(line.removeFirst().value());
    }
  }

  /** All that is still held, in its order. */
  public void forEach(Consumer<T> taker) {
    line.forEach(timed -> taker.accept(timed.value()));
  }

  /** What is still held and lies wholly between two times. */
  public List<T> within(long beginMicros, long endMicros) {
    List<T> values = new ArrayList<>();
    for (Timed<T> timed : line) {
      if (timed.beginMicros() >= beginMicros && timed.endMicros() <= endMicros) {
        values.add(timed.value());
      }
    }
    return values;
  }
}
