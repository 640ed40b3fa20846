package firstamp.cli.command;

import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.Said;
import firstamp.model.text.FailureWords;
import firstamp.model.text.Worded;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** Small state files of {@code locate} and {@code trial}, and the examples brought along. */
final class StateFiles {
  private static final long LARGEST_BYTES = 1_000_000;

  private StateFiles() {}

  static String read(Path file, Worded remedy) throws CliFailure {
    try {
      if (Files.size(file) > LARGEST_BYTES) {
        throw new CliFailure(
            ExitCode.BAD_DATA, Said.of("state.is-larger-than-bytes-no", file, LARGEST_BYTES));
      }
      return Files.readString(file);
    } catch (NoSuchFileException missing) {
      throw new CliFailure(
          ExitCode.NO_INPUT, Said.of("state.there-is-no-file", file, remedy), missing);
    } catch (IOException unreadable) {
      throw new CliFailure(
          ExitCode.NO_INPUT,
          Said.of("state.cannot-be-read", file, FailureWords.worded(unreadable)),
          unreadable);
    }
  }

  /** Writes beside and moves, so that a full disk leaves the old state. */
  static void write(Path file, String text) throws CliFailure {
    Path beside = file.resolveSibling(file.getFileName() + ".new");
    try {
      Files.writeString(beside, text);
      try (FileChannel channel = FileChannel.open(beside, StandardOpenOption.WRITE)) {
        channel.force(true);
      }
      try {
        Files.move(beside, file, StandardCopyOption.ATOMIC_MOVE);
      } catch (AtomicMoveNotSupportedException notHere) {
        Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING);
      }
    } catch (IOException failed) {
      throw new CliFailure(
          ExitCode.IO_ERROR,
          Said.of("state.cannot-be-written-what-it", file, FailureWords.worded(failed)),
          failed);
    }
  }

  static void create(Path file, String text) throws CliFailure {
    if (Files.exists(file)) {
      throw new CliFailure(
          ExitCode.CANNOT_MAKE, Said.of("state.exists-already-name-another-file", file));
    }
    write(file, text);
  }

  /** Text of a template or an example. */
  static String bundled(String name, String known) throws CliFailure {
    try (InputStream in =
        name.matches("[a-z-]+")
            ? StateFiles.class.getResourceAsStream("/firstamp/locate/" + name + ".json")
            : null) {
      if (in == null || !(", " + known + ",").contains(", " + name + ",")) {
        throw new CliFailure(ExitCode.USAGE, Said.of("state.there-is-no-only", name, known));
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException broken) {
      throw new CliFailure(ExitCode.DEFECT, Said.of("state.bundled-cannot-be-read", name), broken);
    }
  }

  /** SHA-256 of a file in hex, so that a photograph is known again under another name. */
  static String sha256(Path file) throws CliFailure {
    try (InputStream in = Files.newInputStream(file)) {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      byte[] buffer = new byte[65_536];
      for (int length = in.read(buffer); length >= 0; length = in.read(buffer)) {
        digest.update(buffer, 0, length);
      }
      return HexFormat.of().formatHex(digest.digest());
    } catch (IOException unreadable) {
      throw new CliFailure(
          ExitCode.NO_INPUT,
          Said.of("state.the-photograph-cannot-be-read", file, FailureWords.worded(unreadable)),
          unreadable);
    } catch (NoSuchAlgorithmException never) {
      throw new CliFailure(ExitCode.DEFECT, Said.of("state.sha-256-is-missing-in"), never);
    }
  }
}
