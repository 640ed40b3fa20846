package firstamp.window.frame;

import java.awt.Component;
import java.awt.Container;
import java.awt.Image;
import java.awt.Point;
import java.awt.datatransfer.Clipboard;
import java.awt.datatransfer.Transferable;
import java.awt.event.ContainerEvent;
import java.awt.event.ContainerListener;
import java.awt.event.InputEvent;
import java.awt.event.InputMethodEvent;
import java.awt.event.InputMethodListener;
import java.util.function.BooleanSupplier;
import javax.swing.Icon;
import javax.swing.JComponent;
import javax.swing.TransferHandler;
import javax.swing.text.JTextComponent;

/**
 * While something can be switched off no field takes text past the keys: nothing that is dropped,
 * pasted with the mouse or composed by an input method. Follows whatever is put into the window.
 */
final class FieldGuard implements ContainerListener, InputMethodListener {
  private final BooleanSupplier armed;

  FieldGuard(BooleanSupplier armed) {
    this.armed = armed;
  }

  /** Guards every field in it, now and later. */
  void guard(Component added) {
    if (added instanceof JTextComponent text && text.getTransferHandler() instanceof Closed) {
      return;
    }
    if (added instanceof JTextComponent text) {
      text.setTransferHandler(new Closed(text.getTransferHandler()));
      text.addInputMethodListener(this);
    }
    if (added instanceof Container container) {
      container.removeContainerListener(this);
      container.addContainerListener(this);
      for (Component each : container.getComponents()) {
        guard(each);
      }
    }
  }

  @Override
  public void componentAdded(ContainerEvent event) {
    guard(event.getChild());
  }

  @Override
  public void componentRemoved(ContainerEvent event) {
    // It may come back, and stays guarded.
  }

  @Override
  public void inputMethodTextChanged(InputMethodEvent event) {
    if (armed.getAsBoolean()) {
      event.consume();
    }
  }

  @Override
  public void caretPositionChanged(InputMethodEvent event) {
    // Moving about in a field is no writing.
  }

  /** Gives out as before, takes in only while nothing is on. */
  private final class Closed extends TransferHandler {
    private static final long serialVersionUID = 1L;

    private final transient TransferHandler open;

    Closed(TransferHandler before) {
      super("text");
      open = before == null ? new TransferHandler(null) : before;
    }

    @Override
    public boolean canImport(TransferSupport support) {
      return !armed.getAsBoolean() && open.canImport(support);
    }

    @Override
    public boolean canImport(JComponent field, java.awt.datatransfer.DataFlavor[] flavors) {
      return !armed.getAsBoolean() && open.canImport(field, flavors);
    }

    @Override
    public boolean importData(TransferSupport support) {
      return !armed.getAsBoolean() && open.importData(support);
    }

    @Override
    public boolean importData(JComponent field, Transferable text) {
      return !armed.getAsBoolean() && open.importData(field, text);
    }

    @Override
    public void exportAsDrag(JComponent field, InputEvent event, int action) {
      open.exportAsDrag(field, event, action);
    }

    @Override
    public void exportToClipboard(JComponent field, Clipboard clipboard, int action) {
      open.exportToClipboard(field, clipboard, action);
    }

    @Override
    public int getSourceActions(JComponent field) {
      return open.getSourceActions(field);
    }

    @Override
    public Icon getVisualRepresentation(Transferable text) {
      return open.getVisualRepresentation(text);
    }

    @Override
    public Image getDragImage() {
      return open.getDragImage();
    }

    @Override
    public Point getDragImageOffset() {
      return open.getDragImageOffset();
    }
  }
}
