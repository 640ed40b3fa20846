package firstamp.window;

import firstamp.app.Hearing;
import firstamp.app.WindowOptions;
import firstamp.bench.BenchSession;
import firstamp.model.PedalJob;
import firstamp.model.TimeSource;
import firstamp.window.frame.LiveFrame;
import firstamp.window.page.Page;
import firstamp.window.present.BenchPresenter;
import firstamp.window.present.LiveSet;
import firstamp.window.watch.BenchPanel;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Words;
import java.util.Locale;
import javax.swing.JComponent;

/** A watching page in its frame, without a window. */
final class Framed {
  private final FakeSession session;
  private final BenchPanel panel;
  private final LiveFrame frame;

  Framed(WindowOptions options, FakeSession session, Hearing hearing) {
    this.session = session;
    Locale locale = options.locale();
    Palette palette = new WindowTheme(options.theme()).palette();
    panel =
        new BenchPanel(
            session, hearing, new BenchPresenter(locale), palette, TimeSource.system(), () -> {});
    frame = new LiveFrame(palette, new Words(locale), panel::off);
    panel.show(session.snapshot(), null, true);
    frame.put(new OnePage());
    frame.frame(true);
    show(true);
  }

  /** Another page comes to the front while the same session continues. */
  Framed over(Page page) {
    page.shown();
    frame.put(page);
    return this;
  }

  BenchPanel panel() {
    return panel;
  }

  JComponent component() {
    return frame.component();
  }

  /** One picture. */
  void show(boolean focused) {
    panel.show(session.snapshot(), null, focused);
    boolean armed = LiveSet.Stand.of(session.snapshot()).armed();
    frame.show(panel.view(), armed, PedalJob.OFF, null);
  }

  Views.View view(boolean focused) {
    return new Views.View(component(), () -> show(focused));
  }

  private final class OnePage implements Page {
    @Override
    public String name() {
      return "watch";
    }

    @Override
    public String title() {
      return panel.view().title();
    }

    @Override
    public JComponent component() {
      return panel.component();
    }

    @Override
    public JComponent controls() {
      return panel.controls();
    }

    @Override
    public JComponent sentenceKeys() {
      return panel.sentenceKeys();
    }

    @Override
    public BenchSession session() {
      return session;
    }
  }
}
