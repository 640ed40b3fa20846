package firstamp.emulate.bench;

import java.util.Queue;

/**
 * Hands of any thread; what they do happens when the emulated probe comes round to it.
 *
 * @param hands at the invented set
 * @param queue of acts
 */
public record QueuedHands(Hands hands, Queue<Runnable> queue) implements Hands {
  @Override
  public void clipOn(String point, String mode, boolean headInput) {
    queue.add(() -> hands.clipOn(point, mode, headInput));
  }

  @Override
  public void clipOff() {
    queue.add(hands::clipOff);
  }

  @Override
  public void work(String joint) {
    queue.add(() -> hands.work(joint));
  }

  @Override
  public void touch(String joint, boolean now) {
    queue.add(() -> hands.touch(joint, now));
  }
}
