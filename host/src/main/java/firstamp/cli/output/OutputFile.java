package firstamp.cli.output;

import firstamp.log.LogException;
import firstamp.model.text.FailureWords;
import firstamp.model.text.Worded;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.UUID;

/**
 * A file that a command makes: whole or not at all, and never over another one unless asked.
 *
 * <p>It is written under a name of its own beside the target. A symbolic link counts as a file that
 * is there; when it is to be replaced, the link goes and what it leads to stays as it is.
 */
public final class OutputFile {
  private OutputFile() {}

  /** Writes the content into a file that is not there yet. */
  @FunctionalInterface
  public interface Content {
    void writeTo(Path aside) throws IOException, LogException, CliFailure;
  }

  /** {@code -} is standard output. */
  public static void write(Path target, boolean replace, Content content) throws CliFailure {
    if (isStandardOutput(target)) {
      print(content);
      return;
    }
    check(target, replace);
    Path absolute = target.toAbsolutePath();
    Path aside = absolute.resolveSibling(".firstamp-new-" + UUID.randomUUID());
    try {
      content.writeTo(aside);
      if (replace) {
        Files.move(aside, absolute, StandardCopyOption.REPLACE_EXISTING);
      } else {
        place(aside, absolute);
      }
    } catch (FileAlreadyExistsException cameMeanwhile) {
      throw exists(absolute, cameMeanwhile);
    } catch (LogException failed) {
      throw Logs.failure(failed);
    } catch (IOException failed) {
      throw failure(absolute, failed);
    } finally {
      remove(aside);
    }
  }

  /** Refuses what could not be written anyway, before a long calculation. */
  public static void check(Path target, boolean replace) throws CliFailure {
    if (isStandardOutput(target)) {
      return;
    }
    Path absolute = target.toAbsolutePath();
    if (Files.isDirectory(absolute, LinkOption.NOFOLLOW_LINKS)) {
      throw new CliFailure(ExitCode.CANNOT_MAKE, Said.of("output.is-a-folder-name-a", absolute));
    }
    if (!replace && Files.exists(absolute, LinkOption.NOFOLLOW_LINKS)) {
      throw exists(absolute, null);
    }
  }

  /** Refuses a file whose folder is not there; one that is there already is replaced. */
  public static void checkFolder(Path target) throws CliFailure {
    Path folder = target.toAbsolutePath().getParent();
    if (folder != null && !Files.isDirectory(folder)) {
      throw failure(target, new NoSuchFileException(target.toString()));
    }
  }

  /** Where it is, on standard error. */
  public static void sayDone(Worded what, Path target, Speech speech) {
    if (!isStandardOutput(target)) {
      speech.note(Said.of("output.is-in", what, target.toAbsolutePath()));
    }
  }

  static boolean isStandardOutput(Path target) {
    return target.toString().equals("-");
  }

  private static void print(Content content) throws CliFailure {
    Path aside = null;
    try {
      aside = Files.createTempDirectory("firstamp").resolve("output");
      content.writeTo(aside);
      Files.copy(aside, System.out);
      System.out.flush();
    } catch (LogException failed) {
      throw Logs.failure(failed);
    } catch (IOException failed) {
      throw failure(aside == null ? Path.of("-") : aside, failed);
    } finally {
      if (aside != null) {
        remove(aside);
        remove(aside.getParent());
      }
    }
  }

  /** What cannot be made at all, and what failed on the way. */
  public static CliFailure failure(Path target, IOException failed) {
    boolean notMade =
        failed instanceof NoSuchFileException
            || failed instanceof AccessDeniedException
            || failed instanceof NotDirectoryException
            || "Not a directory".equals(reason(failed));
    return new CliFailure(
        notMade ? ExitCode.CANNOT_MAKE : ExitCode.IO_ERROR,
        Said.of(
            "output.cannot-write",
            target,
            failed instanceof NoSuchFileException
                ? Said.of("output.no-folder")
                : FailureWords.worded(failed)),
        failed);
  }

  private static String reason(IOException failed) {
    return failed instanceof FileSystemException of ? of.getReason() : null;
  }

  /** A hard link fails where the target has come meanwhile; a move would overwrite it. */
  private static void place(Path aside, Path target) throws IOException {
    try {
      Files.createLink(target, aside);
    } catch (UnsupportedOperationException noLinksHere) {
      Files.move(aside, target);
    }
  }

  private static CliFailure exists(Path target, IOException cause) {
    return new CliFailure(
        ExitCode.CANNOT_MAKE, Said.of("output.is-there-already-and-was", target), cause);
  }

  private static void remove(Path aside) {
    try {
      Files.deleteIfExists(aside);
    } catch (IOException left) {
      aside.toFile().deleteOnExit();
    }
  }
}
