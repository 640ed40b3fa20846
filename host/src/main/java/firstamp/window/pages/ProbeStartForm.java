package firstamp.window.pages;

import firstamp.analysis.calibrate.MeterAccuracy;
import firstamp.app.Desk;
import firstamp.app.SheetEntries;
import firstamp.model.PedalJob;
import firstamp.window.page.Tools;
import firstamp.window.widgets.Pieces;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Words;
import java.awt.BorderLayout;
import java.awt.FlowLayout;
import java.util.function.Consumer;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;

/** Where the guided steps begin: which box, which meter, and what the pedal does. */
final class ProbeStartForm {
  private final Tools tools;
  private final Words words;
  private final Pieces pieces;
  private final Consumer<Exception> failed;
  private final JComboBox<String> port = new JComboBox<>();
  private final JTextField volts = new JTextField("0.8", 5);
  private final JTextField amps = new JTextField("1.5", 5);
  private final JTextField ohms = new JTextField("1", 5);
  private final JComboBox<String> pedal = new JComboBox<>();
  private final JPanel form;

  ProbeStartForm(Tools tools, Consumer<Exception> failed) {
    this.tools = tools;
    this.failed = failed;
    words = tools.words();
    pieces = tools.pieces();
    form = rows();
  }

  JComponent component() {
    return form;
  }

  /** Accuracy of the meter's volts; null = what was typed is none. */
  MeterAccuracy volts() {
    return accuracy(volts);
  }

  /** Of its amperes. */
  MeterAccuracy amps() {
    return accuracy(amps);
  }

  /** Of its ohms. */
  MeterAccuracy ohms() {
    return accuracy(ohms);
  }

  /** Chooses the emulated box. */
  void emulated() {
    port.setSelectedItem(words.get("probe.emulated"));
  }

  /** Shows the ports that may be the box's. */
  void offer(PortsOffered offered) {
    port.removeAllItems();
    offered.paths().forEach(port::addItem);
    port.addItem(words.get("probe.emulated"));
    port.setSelectedItem(offered.first() == null ? words.get("probe.emulated") : offered.first());
  }

  /** Path of the port; null = the emulated box. */
  String path() {
    Object item = port.getEditor().getItem();
    String text = item == null ? "" : item.toString().strip();
    return text.equals(words.get("probe.emulated")) || text.isEmpty() ? null : text;
  }

  private static MeterAccuracy accuracy(JTextField field) {
    Double percent = SheetEntries.number(field.getText());
    return percent == null || percent <= 0 || percent > 20 ? null : new MeterAccuracy(percent, 0);
  }

  private JPanel rows() {
    JPanel rows = pieces.clear(new BorderLayout(0, 10));
    port.setName("probe.port");
    port.setEditable(true);
    port.setPrototypeDisplayValue(words.get("probe.emulated") + "    ");
    rows.add(labelled("probe.port", port), BorderLayout.NORTH);
    JPanel meter = pieces.clear(new FlowLayout(FlowLayout.LEFT, 0, 0));
    volts.setName("probe.volts");
    amps.setName("probe.amps");
    ohms.setName("probe.ohms");
    meter.add(labelled("probe.volts", volts));
    meter.add(labelled("probe.amps", amps));
    meter.add(labelled("probe.ohms", ohms));
    rows.add(meter, BorderLayout.CENTER);
    for (PedalJob job : PedalJob.values()) {
      pedal.addItem(words.get("probe.pedal." + job.id()));
    }
    pedal.setSelectedIndex(tools.shell().pedal().ordinal());
    pedal.setName("probe.pedal");
    pedal.addActionListener(event -> pedal(PedalJob.values()[pedal.getSelectedIndex()]));
    rows.add(labelled("probe.pedal", pedal), BorderLayout.SOUTH);
    return rows;
  }

  /** A pedal has one job, kept for the next time too. */
  private void pedal(PedalJob job) {
    if (job != tools.shell().pedal()) {
      tools.shell().pedal(job);
      Desk desk = tools.desk();
      tools
          .shell()
          .aside(
              () -> {
                desk.settings().withPedal(job).save(desk.folder());
                return job;
              },
              kept -> {},
              failed);
    }
  }

  private JPanel labelled(String name, JComponent field) {
    JLabel label = pieces.label(name + "-title", words.get("flow." + name), true, 19);
    label.setLabelFor(field);
    field.setFont(WindowTheme.font(false, 20));
    field.getAccessibleContext().setAccessibleName(words.get("flow." + name));
    pieces.describe(field, name);
    return pieces.row(label, field);
  }
}
