package firstamp.bench;

import firstamp.model.ProbeEvent;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.Consumer;

/**
 * What the session thread waits for once a power-up is over: something to be added to it, the wish
 * to switch on again, or the end. Wishes come from any thread.
 */
final class AfterTheEnd {
  private final Queue<ProbeEvent> later = new ConcurrentLinkedQueue<>();
  private int restoreWanted;
  private boolean closing;

  synchronized void add(ProbeEvent event) {
    later.add(event);
    notifyAll();
  }

  synchronized void restore(int tripNumber) {
    restoreWanted = tripNumber;
    notifyAll();
  }

  synchronized void close() {
    closing = true;
    notifyAll();
  }

  /** The trip after which it is to be switched on again, once; 0 = none. */
  synchronized int takeRestore() {
    int wanted = restoreWanted;
    restoreWanted = 0;
    return wanted;
  }

  /**
   * Waits, and hands over what is to be added.
   *
   * @return true: it is to be switched on again; false: it closes
   */
  boolean await(Consumer<ProbeEvent> adding) {
    while (true) {
      if (!sleep()) {
        return false;
      }
      for (ProbeEvent event = later.poll(); event != null; event = later.poll()) {
        adding.accept(event);
      }
      synchronized (this) {
        if (closing || restoreWanted != 0) {
          return !closing;
        }
      }
    }
  }

  private synchronized boolean sleep() {
    while (restoreWanted == 0 && !closing && later.isEmpty()) {
      try {
        wait();
      } catch (InterruptedException stop) {
        Thread.currentThread().interrupt();
        return false;
      }
    }
    return true;
  }
}
