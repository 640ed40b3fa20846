package firstamp.bench;

import firstamp.log.LogException;
import java.util.ArrayDeque;
import java.util.Queue;

/** What the replay's thread is asked to do, in order. Put from any thread, taken by one. */
final class ReplayTasks {
  private final Queue<Task> tasks = new ArrayDeque<>();
  private boolean stopped;

  /** Something to do. */
  interface Task {
    void run() throws LogException;
  }

  synchronized void put(Task task) {
    tasks.add(task);
    notifyAll();
  }

  synchronized boolean waiting() {
    return !tasks.isEmpty();
  }

  /** Nothing more is taken. */
  synchronized void stop() {
    stopped = true;
    notifyAll();
  }

  synchronized boolean stopped() {
    return stopped;
  }

  /** The next task; null = there is none now, or it is to stop. */
  synchronized Task next(boolean await) {
    while (await && tasks.isEmpty() && !stopped) {
      try {
        wait();
      } catch (InterruptedException stop) {
        Thread.currentThread().interrupt();
        stopped = true;
      }
    }
    return stopped ? null : tasks.poll();
  }
}
