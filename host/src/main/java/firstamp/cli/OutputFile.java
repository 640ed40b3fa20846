package firstamp.cli;

import firstamp.log.LogException;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.UUID;

/**
 * A file that a command makes: whole or not at all, and never over another one unasked.
 *
 * <p>It is written under a name of its own beside the target. A symbolic link counts as a file that
 * is there; when it is to be replaced, the link goes and what it leads to stays as it is.
 */
final class OutputFile {
  private OutputFile() {}

  /** Writes the content into a file that is not there yet. */
  @FunctionalInterface
  interface Content {
    void writeTo(Path aside) throws IOException, LogException, CliFailure;
  }

  static void write(Path target, boolean replace, Content content) throws CliFailure {
    Path absolute = target.toAbsolutePath();
    if (Files.isDirectory(absolute, LinkOption.NOFOLLOW_LINKS)) {
      throw new CliFailure(
          ExitCode.IO_ERROR, absolute + " is a folder; name a file in it with --to");
    }
    if (!replace && Files.exists(absolute, LinkOption.NOFOLLOW_LINKS)) {
      throw exists(absolute, null);
    }
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
      throw new CliFailure(
          ExitCode.IO_ERROR,
          "cannot write "
              + absolute
              + ": "
              + failed
              + "; check that its folder is there, can be written and has room",
          failed);
    } finally {
      remove(aside);
    }
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
        ExitCode.IO_ERROR,
        target + " is there already and was left as it is; name another file, or add --force",
        cause);
  }

  private static void remove(Path aside) {
    try {
      Files.deleteIfExists(aside);
    } catch (IOException left) {
      aside.toFile().deleteOnExit();
    }
  }
}
