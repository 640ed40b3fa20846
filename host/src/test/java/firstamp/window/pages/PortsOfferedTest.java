package firstamp.window.pages;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.DeskSettings;
import firstamp.app.Ports;
import firstamp.model.text.Worded;
import firstamp.window.words.Words;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class PortsOfferedTest {
  private static final Ports.Found ADAPTER =
      new Ports.Found("/dev/ttyUSB0", "USB serial adapter", true, null);
  private static final Ports.Found FORBIDDEN =
      new Ports.Found(
          "/dev/ttyS0", "serial port", false, Worded.asIs("You may not open /dev/ttyS0"));

  private static PortsOffered offered(String kept, boolean typed, Ports.Found... found) {
    return new PortsOffered(List.of(found), DeskSettings.none().withPort(kept, typed));
  }

  @Test
  void aTypedPortThatAnsweredIsOfferedAgainAndComesFirst() {
    PortsOffered now = offered("/dev/pts/40", true, FORBIDDEN, ADAPTER);
    assertThat(now.paths()).containsExactly("/dev/ttyUSB0", "/dev/ttyS0", "/dev/pts/40");
    assertThat(now.first()).isEqualTo("/dev/pts/40");
    assertThat(now.about(new Words(Locale.ENGLISH), "/dev/pts/40"))
        .isEqualTo("A probe box answered on this port before; this computer does not list it now.");
  }

  @Test
  void anAdapterThatWasPulledOutIsNotOfferedBesideAnother() {
    PortsOffered now = offered("/dev/ttyUSB3", false, FORBIDDEN, ADAPTER);
    assertThat(now.paths()).containsExactly("/dev/ttyUSB0", "/dev/ttyS0");
    assertThat(now.first()).isEqualTo("/dev/ttyUSB0");
  }

  @Test
  void whereThereIsNoneTheLastOneIsOffered() {
    assertThat(offered("/dev/ttyUSB3", false).first()).isEqualTo("/dev/ttyUSB3");
    assertThat(offered(null, false).first()).isNull();
    assertThat(offered(null, false).about(new Words(Locale.ENGLISH), ""))
        .startsWith("No probe box was found.");
  }

  @Test
  void aPortThatIsListedSaysWhatItIs() {
    PortsOffered now = offered("/dev/ttyS0", false, ADAPTER, FORBIDDEN);
    assertThat(now.first()).isEqualTo("/dev/ttyS0");
    assertThat(now.about(new Words(Locale.ENGLISH), "/dev/ttyUSB0"))
        .isEqualTo("USB serial adapter");
    assertThat(now.about(new Words(Locale.ENGLISH), "/dev/ttyS0"))
        .isEqualTo("You may not open /dev/ttyS0");
  }
}
