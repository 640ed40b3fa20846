package firstamp.window.widgets;

import java.awt.Component;
import java.awt.Dimension;
import java.awt.FontMetrics;
import java.util.List;
import javax.swing.BorderFactory;
import javax.swing.JScrollPane;
import javax.swing.JTable;
import javax.swing.JTextArea;
import javax.swing.table.DefaultTableModel;
import javax.swing.table.TableCellRenderer;
import javax.swing.table.TableColumnModel;

/** A table of texts that loses none: what is too long for its column goes on in a further line. */
public final class WrappedTable {
  private static final int COLUMN_GAP = 18;
  private static final int ROW_GAP = 6;
  private static final float POINTS = 16;

  private final DefaultTableModel model = new DefaultTableModel();
  private final Table table = new Table(model);
  private final JScrollPane scroll = new JScrollPane(table);

  public WrappedTable(String name, String spoken) {
    table.setName(name);
    table.getAccessibleContext().setAccessibleName(spoken);
    table.setFont(WindowTheme.font(false, POINTS));
    table.getTableHeader().setFont(WindowTheme.font(true, POINTS));
    table.getTableHeader().setReorderingAllowed(false);
    table.setAutoResizeMode(JTable.AUTO_RESIZE_OFF);
    table.setEnabled(false);
    table.setFocusable(false);
    scroll.setName(name + "-scroll");
    scroll.getVerticalScrollBar().getAccessibleContext().setAccessibleName(spoken);
    scroll.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
  }

  public JScrollPane component() {
    return scroll;
  }

  public void show(List<String> titles, List<List<String>> rows) {
    model.setColumnIdentifiers(titles.toArray());
    model.setRowCount(0);
    rows.forEach(row -> model.addRow(row.toArray()));
    table.fit();
    // Its own bars are not needed while the page's middle can be scrolled.
    int head = table.getTableHeader().getPreferredSize().height;
    scroll.setPreferredSize(new Dimension(600, head + table.getPreferredSize().height + 8));
  }

  /** Shares its width out whenever it gets another one. */
  private static final class Table extends JTable {
    private static final long serialVersionUID = 1L;

    private final JTextArea cell = new JTextArea();

    Table(DefaultTableModel model) {
      super(model);
      cell.setLineWrap(true);
      cell.setWrapStyleWord(true);
      cell.setBorder(BorderFactory.createEmptyBorder(ROW_GAP / 2, 4, ROW_GAP / 2, 4));
    }

    @Override
    public TableCellRenderer getCellRenderer(int row, int column) {
      return (source, value, selected, focused, atRow, atColumn) -> cell(value);
    }

    private Component cell(Object value) {
      cell.setFont(getFont());
      cell.setForeground(getForeground());
      cell.setBackground(getBackground());
      cell.setText(String.valueOf(value));
      return cell;
    }

    @Override
    public boolean getScrollableTracksViewportWidth() {
      return true;
    }

    @Override
    public void setBounds(int x, int y, int width, int height) {
      boolean other = width != getWidth();
      super.setBounds(x, y, width, height);
      if (other) {
        fit();
      }
    }

    /** Each column has its longest word whole; what is left goes to the longest texts. */
    void fit() {
      int columns = getColumnCount();
      int[] least = new int[columns];
      int[] wish = new int[columns];
      int room = getWidth();
      int wanted = 0;
      for (int column = 0; column < columns; column++) {
        least[column] = needed(column, true);
        wish[column] = Math.max(0, needed(column, false) - least[column]);
        room -= least[column];
        wanted += wish[column];
      }
      TableColumnModel model = getColumnModel();
      for (int column = 0; column < columns; column++) {
        int more = wanted == 0 ? 0 : (int) ((long) Math.max(0, room) * wish[column] / wanted);
        model.getColumn(column).setPreferredWidth(least[column] + more);
      }
      for (int row = 0; row < getRowCount(); row++) {
        setRowHeight(row, height(row));
      }
    }

    private int needed(int column, boolean wordByWord) {
      FontMetrics metrics = getFontMetrics(getTableHeader().getFont());
      int width = metrics.stringWidth(getColumnName(column));
      metrics = getFontMetrics(getFont());
      for (int row = 0; row < getRowCount(); row++) {
        String text = getValueAt(row, column).toString();
        for (String part : wordByWord ? text.split(" ") : new String[] {text}) {
          width = Math.max(width, metrics.stringWidth(part));
        }
      }
      return width + COLUMN_GAP;
    }

    private int height(int row) {
      int height = 1;
      for (int column = 0; column < getColumnCount(); column++) {
        cell(getValueAt(row, column));
        cell.setSize(getColumnModel().getColumn(column).getPreferredWidth(), Short.MAX_VALUE);
        height = Math.max(height, cell.getPreferredSize().height + ROW_GAP / 2);
      }
      return height;
    }
  }
}
