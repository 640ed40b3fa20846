package firstamp.locate;

import firstamp.locate.signal.LocateFile;
import firstamp.locate.signal.LocateSession;
import firstamp.locate.wire.WireCase;
import firstamp.locate.wire.WireFile;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The worked examples that come with the program. */
public final class Examples {
  private Examples() {}

  private static String text(String name) {
    try (InputStream in =
        WireFile.class.getResourceAsStream("/firstamp/locate/" + name + ".json")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException broken) {
      throw new UncheckedIOException(name, broken);
    }
  }

  /** Wires of an example. */
  public static WireCase wires(String name) {
    return WireFile.read(text(name));
  }

  /** Search of an example or a template. */
  public static LocateSession search(String name) {
    return LocateFile.read(text(name));
  }
}
