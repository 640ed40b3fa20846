package firstamp.cli.command;

import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.model.text.FailureWords;
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

  static String read(Path file, String remedy) throws CliFailure {
    try {
      if (Files.size(file) > LARGEST_BYTES) {
        throw new CliFailure(
            ExitCode.BAD_DATA, file + " is larger than " + LARGEST_BYTES + " bytes, no state file");
      }
      return Files.readString(file);
    } catch (NoSuchFileException missing) {
      throw new CliFailure(ExitCode.NO_INPUT, "there is no file " + file + ". " + remedy, missing);
    } catch (IOException unreadable) {
      throw new CliFailure(
          ExitCode.NO_INPUT, file + " cannot be read: " + FailureWords.of(unreadable), unreadable);
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
          file
              + " cannot be written: "
              + FailureWords.of(failed)
              + ". What it held before is kept.",
          failed);
    }
  }

  static void create(Path file, String text) throws CliFailure {
    if (Files.exists(file)) {
      throw new CliFailure(
          ExitCode.CANNOT_MAKE, file + " exists already. Name another file, or remove it first.");
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
        throw new CliFailure(ExitCode.USAGE, "there is no " + name + ", only " + known);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException broken) {
      throw new CliFailure(ExitCode.DEFECT, name + " cannot be read", broken);
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
          "the photograph " + file + " cannot be read: " + FailureWords.of(unreadable),
          unreadable);
    } catch (NoSuchAlgorithmException never) {
      throw new CliFailure(ExitCode.DEFECT, "SHA-256 is missing in this Java", never);
    }
  }
}
