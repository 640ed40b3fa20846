package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.bench.Snapshot;
import java.awt.Toolkit;
import java.awt.datatransfer.StringSelection;
import java.awt.event.InputEvent;
import java.awt.event.InputMethodEvent;
import java.awt.event.MouseEvent;
import java.text.AttributedString;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import javax.swing.TransferHandler;
import javax.swing.text.JTextComponent;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Text that comes into a field without a stroke: dropped, pasted with the middle button, composed
 * by an input method. None of it gets in while a switch is closed or may close, on any page.
 */
@NeedsDisplay
class TextPastTheKeysTest {
  private static final String TEXT = "xyz";

  private static Views views;

  /** A way into a field. */
  private enum Way {
    DROP {
      @Override
      void into(JTextComponent field) {
        StringSelection text = new StringSelection(TEXT);
        TransferHandler.TransferSupport drop = new TransferHandler.TransferSupport(field, text);
        if (field.getTransferHandler().canImport(drop)) {
          field.getTransferHandler().importData(drop);
        }
      }
    },
    PASTE {
      @Override
      void into(JTextComponent field) {
        field.getTransferHandler().importData(field, new StringSelection(TEXT));
      }
    },
    MIDDLE_BUTTON {
      @Override
      void into(JTextComponent field) {
        Toolkit.getDefaultToolkit()
            .getSystemSelection()
            .setContents(new StringSelection(TEXT), null);
        field.dispatchEvent(
            new MouseEvent(
                field,
                MouseEvent.MOUSE_CLICKED,
                1,
                InputEvent.BUTTON2_DOWN_MASK,
                3,
                3,
                1,
                false,
                MouseEvent.BUTTON2));
      }
    },
    INPUT_METHOD {
      @Override
      void into(JTextComponent field) {
        field.dispatchEvent(
            new InputMethodEvent(
                field,
                InputMethodEvent.INPUT_METHOD_TEXT_CHANGED,
                new AttributedString(TEXT).getIterator(),
                TEXT.length(),
                null,
                null));
      }
    };

    abstract void into(JTextComponent field);
  }

  @BeforeAll
  static void views() throws Exception {
    views = new Views();
  }

  @AfterAll
  static void gone() throws Exception {
    views.close();
  }

  @TestFactory
  Stream<DynamicTest> getsIntoNoFieldWhileASwitchMayBeClosed() {
    return EveryPage.NAMES.stream()
        .flatMap(
            page ->
                Stream.of(LiveStates.values())
                    .map(
                        state ->
                            DynamicTest.dynamicTest(
                                page + " " + state,
                                () -> Components.onSwing(() -> refuses(page, state)))));
  }

  private static Void refuses(String name, LiveStates state) throws Exception {
    EveryPage bench = new EveryPage(views, name, state);
    assertThat(bench.shell.armed()).isTrue();
    assertThat(taken(bench)).isEmpty();
    bench.shell.closed();
    bench.window.dispose();
    return null;
  }

  /** The same hands get in everywhere once nothing is on: the fields are there and do take text. */
  @Test
  void getsInOnceNothingIsOn() throws Exception {
    Components.onSwing(
        () -> {
          List<String> got = new ArrayList<>();
          for (String name : EveryPage.NAMES) {
            EveryPage bench = new EveryPage(views, name, LiveStates.ON);
            Snapshot now = bench.session.snapshot();
            bench.session.set(ChangedSnapshot.of(now, Map.of("phase", Snapshot.Phase.ENDED)));
            assertThat(bench.shell.armed()).isFalse();
            got.addAll(taken(bench));
            bench.shell.closed();
            bench.window.dispose();
          }
          for (Way way : Way.values()) {
            assertThat(got.stream().filter(each -> each.endsWith(way.name())))
                .as("%s of %s", way, got)
                .hasSizeGreaterThan(4);
          }
          return null;
        });
  }

  /** Which fields took what, by which way. */
  private static List<String> taken(EveryPage bench) {
    List<String> taken = new ArrayList<>();
    for (var each : Components.all(bench.window.getContentPane())) {
      if (each instanceof JTextComponent field && field.isEditable() && field.isEnabled()) {
        for (Way way : Way.values()) {
          field.setText("");
          way.into(field);
          if (!field.getText().isEmpty()) {
            taken.add(bench.page.name() + " " + field.getName() + " " + way);
          }
          field.setText("");
        }
      }
    }
    return taken;
  }
}
