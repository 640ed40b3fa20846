package firstamp.protocol.frame;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.List;

/** Reads the vector files that the Java and the C tests share. */
final class Vectors {
  static final Path FOLDER = Path.of("vectors");

  private Vectors() {}

  /**
   * One line of a file.
   *
   * @param plain hex before COBS, or "-"
   * @param line hex on the line, delimiter included
   * @param keys what it means
   */
  record Vector(String name, String plain, String line, String keys) {
    byte[] plainBytes() {
      return HexFormat.of().parseHex(plain);
    }

    byte[] lineBytes() {
      return HexFormat.of().parseHex(line);
    }

    String key(String key) {
      for (String pair : keys.split(" ")) {
        if (pair.startsWith(key + "=")) {
          return pair.substring(key.length() + 1);
        }
      }
      throw new IllegalArgumentException("vector " + name + " has no key " + key);
    }

    @Override
    public String toString() {
      return name;
    }
  }

  static List<Vector> messages() {
    return read("messages.txt");
  }

  static List<Vector> bad() {
    return read("bad.txt");
  }

  static List<String[]> rows(String file) {
    try {
      return Files.readAllLines(FOLDER.resolve(file)).stream()
          .filter(row -> !row.isBlank() && !row.startsWith("#"))
          .map(row -> row.split(" ?\\| ?", -1))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<Vector> read(String file) {
    return rows(file).stream().map(row -> new Vector(row[0], row[1], row[2], row[3])).toList();
  }
}
