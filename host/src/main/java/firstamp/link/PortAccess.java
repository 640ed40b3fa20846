package firstamp.link;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributes;
import java.util.Locale;

/** What can be found out about a port without opening it. */
final class PortAccess {
  private static final boolean DEVICE_NODES =
      !System.getProperty("os.name", "").toLowerCase(Locale.ROOT).startsWith("windows");

  private PortAccess() {}

  /** Path of the port with links resolved, so that two names of one port share one lock. */
  static String canonical(String port) {
    if (!DEVICE_NODES) {
      return port.toUpperCase(Locale.ROOT);
    }
    try {
      return path(port).toRealPath().toString();
    } catch (IOException absent) {
      return path(port).toString();
    }
  }

  /**
   * Refuses a port that is absent or not permitted.
   *
   * @throws PortException with the remedy
   */
  static void check(String port) throws PortException {
    if (!DEVICE_NODES) {
      return;
    }
    Path node = path(port);
    if (!Files.exists(node)) {
      throw new PortException(PortException.Kind.ABSENT, "absent.list", node);
    }
    if (Files.isRegularFile(node) || Files.isDirectory(node)) {
      throw new PortException(PortException.Kind.UNUSABLE, "no-port", node);
    }
    if (!Files.isReadable(node) || !Files.isWritable(node)) {
      throw new PortException(PortException.Kind.NOT_PERMITTED, "group", node, group(node));
    }
  }

  private static Object group(Path node) {
    try {
      return Files.readAttributes(node, PosixFileAttributes.class).group().getName();
    } catch (IOException | UnsupportedOperationException unknown) {
      return "dialout";
    }
  }

  static Path path(String port) {
    Path given = Path.of(port);
    return given.isAbsolute() || Files.exists(given)
        ? given.toAbsolutePath()
        : Path.of("/dev").resolve(port);
  }
}
