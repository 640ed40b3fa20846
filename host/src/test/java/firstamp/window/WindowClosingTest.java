package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.event.KeyEvent;
import java.awt.event.WindowEvent;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The real window is closed, or fails. */
@NeedsDisplay
@Timeout(value = 60, unit = TimeUnit.SECONDS)
final class WindowClosingTest extends BenchWindowCase {
  @Test
  void closingAsksWhileTheSetIsWatchedAndThenClosesTheSession() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    wantClose();
    show();
    assertThat(session.closed).isFalse();
    key(KeyEvent.VK_0, '0');
    show();
    assertThat(session.closed).isFalse();
    assertThat(window.frame().isDisplayable()).isTrue();
    wantClose();
    show();
    key(KeyEvent.VK_ENTER, '\n');
    assertThat(session.wishes).as("Enter leaves nothing").isEmpty();
    key(KeyEvent.VK_1, '1');
    assertThat(session.wishes).contains("off");
    session.set(new FakeSession(FakeSession.Scene.FALLING).snapshot());
    show();
    assertThat(session.closed).as("the rails are still up").isFalse();
    session.set(new FakeSession(FakeSession.Scene.OVER).snapshot());
    window.awaitClosed();
    assertThat(session.closed).isTrue();
  }

  @Test
  void closesWithoutAskingOnceItIsOver() throws Exception {
    open(FakeSession.Scene.OVER);
    wantClose();
    window.awaitClosed();
    assertThat(session.closed).isTrue();
  }

  @Test
  void isClosedOnlyWhenWhatWasBegunAsideIsDone() throws Exception {
    open(FakeSession.Scene.OVER);
    CountDownLatch go = new CountDownLatch(1);
    AtomicBoolean done = new AtomicBoolean();
    SwingUtilities.invokeAndWait(
        () ->
            window
                .shell()
                .aside(
                    () -> {
                      go.await();
                      done.set(true);
                      return null;
                    },
                    nothing -> {},
                    failed -> {}));
    CompletableFuture<Boolean> doneWhenClosed = new CompletableFuture<>();
    Thread waiting =
        new Thread(
            () -> {
              try {
                window.awaitClosed();
                doneWhenClosed.complete(done.get());
              } catch (InterruptedException stop) {
                doneWhenClosed.completeExceptionally(stop);
              }
            });
    waiting.start();
    wantClose();
    // Waiting for the window has no end of its own, waiting for what is aside has one.
    while (!doneWhenClosed.isDone() && waiting.getState() != Thread.State.TIMED_WAITING) {
      Thread.onSpinWait();
    }
    go.countDown();
    assertThat(doneWhenClosed.get(30, TimeUnit.SECONDS)).isTrue();
  }

  @Test
  void opensTheSwitchFirstWhenTheWindowItselfFails() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    session.failing = new IllegalArgumentException("a defect");
    assertThatThrownBy(() -> window.awaitClosed())
        .isInstanceOf(IllegalStateException.class)
        .hasRootCauseMessage("a defect");
    assertThat(session.wishes).containsExactly("off", "close");
  }

  private void wantClose() throws Exception {
    SwingUtilities.invokeAndWait(
        () ->
            window
                .frame()
                .dispatchEvent(new WindowEvent(window.frame(), WindowEvent.WINDOW_CLOSING)));
  }
}
