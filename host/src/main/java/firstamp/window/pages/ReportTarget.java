package firstamp.window.pages;

import firstamp.window.widgets.Pieces;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Words;
import java.awt.BorderLayout;
import javax.swing.BorderFactory;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;

/** The row that says into which file the report goes. */
final class ReportTarget {
  private ReportTarget() {}

  static JPanel row(Pieces pieces, Words words, JTextField file) {
    file.setName("verdict.file");
    file.setFont(WindowTheme.font(false, 18));
    file.getAccessibleContext().setAccessibleName(words.get("flow.verdict.file"));
    pieces.describe(file, "verdict.file");
    JLabel fileTitle = pieces.label("verdict-file-title", words.get("flow.verdict.file"), true, 18);
    fileTitle.setLabelFor(file);
    JPanel target = pieces.clear(new BorderLayout(12, 0));
    target.setBorder(BorderFactory.createEmptyBorder(0, 12, 0, 12));
    target.add(fileTitle, BorderLayout.WEST);
    target.add(file, BorderLayout.CENTER);
    return target;
  }
}
