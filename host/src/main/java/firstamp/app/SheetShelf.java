package firstamp.app;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * The job sheets beside a bench log, one file a set, named after it; a sheet that somebody began
 * and left ends in {@code .begun}.
 */
public final class SheetShelf {
  private static final long LARGEST_BYTES = 1_000_000;
  private static final int LONGEST_NAME = 60;
  private static final String READY = ".json";
  private static final String BEGUN = ".begun";

  private final Path folder;

  SheetShelf(Path folder) {
    this.folder = folder;
  }

  /** Texts of all sheets that are ready, by file. */
  public SortedMap<Path, String> ready() throws IOException {
    return texts(READY);
  }

  /** Texts of all sheets that were begun and left, by file. */
  SortedMap<Path, String> begun() throws IOException {
    return texts(BEGUN);
  }

  private SortedMap<Path, String> texts(String ending) throws IOException {
    SortedMap<Path, String> found = new TreeMap<>();
    if (!Files.isDirectory(folder)) {
      return found;
    }
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, "*" + ending)) {
      for (Path file : files) {
        if (Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
            && Files.size(file) <= LARGEST_BYTES) {
          found.put(file, Files.readString(file));
        }
      }
    }
    return found;
  }

  /** When a file was written last. */
  static long writtenEpochMs(Path file) throws IOException {
    return Files.getLastModifiedTime(file).toMillis();
  }

  /** Whether there is a sheet of this name already. */
  public boolean holds(String setName) {
    return Files.exists(folder.resolve(stem(setName) + READY));
  }

  /** Keeps the sheet of a set; one that was begun is done with. */
  public Path keep(String setName, String json) throws IOException {
    Path file = write(stem(setName) + READY, json);
    forget(setName);
    return file;
  }

  /** Keeps what was answered so far. */
  public void keepBegun(String setName, String json) throws IOException {
    write(stem(setName) + BEGUN, json);
  }

  /** A sheet that was begun is not wanted any longer. */
  public void forget(String setName) throws IOException {
    Files.deleteIfExists(folder.resolve(stem(setName) + BEGUN));
  }

  /** Beside and moved, so that a full disk leaves the old one. */
  private Path write(String name, String text) throws IOException {
    Files.createDirectories(folder);
    Path file = folder.resolve(name);
    Path beside = folder.resolve(name + ".new");
    Files.writeString(beside, text);
    Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING);
    return file;
  }

  /** A name that every file system takes: letters, digits and dashes. */
  public static String stem(String setName) {
    String plain =
        setName
            .toLowerCase(Locale.ROOT)
            .replaceAll("[^\\p{L}\\p{N}]+", "-")
            .replaceAll("^-+|-+$", "");
    String name = plain.isEmpty() ? "set" : plain;
    return name.length() <= LONGEST_NAME ? name : name.substring(0, LONGEST_NAME);
  }
}
