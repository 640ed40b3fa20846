package firstamp.model.text;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.FileSystemLoopException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.util.Locale;
import java.util.Map;

/** Why a file or stream could not be read or written, in words for people. */
public final class FailureWords {
  /** What the C library says (strerror, English), in our words. */
  private static final Map<String, String> REASONS =
      Map.ofEntries(
          Map.entry("no space left on device", "no room on the disk"),
          Map.entry("disk quota exceeded", "your share of the disk is used up"),
          Map.entry("broken pipe", "the program that reads it has ended"),
          Map.entry("read-only file system", "the disk is read-only"),
          Map.entry("is a directory", "it is a folder"),
          Map.entry("not a directory", "a part of its path is a file and not a folder"),
          Map.entry("file name too long", "its name is too long"),
          Map.entry("permission denied", "no permission"),
          Map.entry("operation not permitted", "no permission"),
          Map.entry("no such file or directory", "there is no such file or folder"),
          Map.entry("too many levels of symbolic links", "its symbolic links lead in a circle"),
          Map.entry("too many open files", "too many files are open"),
          Map.entry("input/output error", "the disk or device reports an error"),
          Map.entry("device or resource busy", "another program uses it"),
          Map.entry("text file busy", "another program uses it"));

  private FailureWords() {}

  /** The reason, without the path and without a full stop. */
  public static String of(IOException failed) {
    if (failed instanceof NoSuchFileException) {
      return "there is no such file or folder";
    }
    if (failed instanceof AccessDeniedException) {
      return "no permission";
    }
    if (failed instanceof FileAlreadyExistsException) {
      return "it is there already";
    }
    if (failed instanceof DirectoryNotEmptyException) {
      return "it is a folder that is not empty";
    }
    if (failed instanceof NotDirectoryException) {
      return "it is not a folder";
    }
    if (failed instanceof FileSystemLoopException) {
      return "its symbolic links lead in a circle";
    }
    if (failed instanceof CharacterCodingException) {
      return "it is not text in UTF-8";
    }
    return words(
        failed instanceof FileSystemException of ? of.getReason() : failed.getMessage(),
        failed instanceof FileNotFoundException);
  }

  private static String words(String reason, boolean bracketed) {
    if (reason == null || reason.isBlank()) {
      return "the system gives no reason";
    }
    // "path (reason)" is how the older classes write it.
    String bare =
        bracketed && reason.endsWith(")") && reason.contains(" (")
            ? reason.substring(reason.lastIndexOf(" (") + 2, reason.length() - 1)
            : reason;
    return REASONS.getOrDefault(bare.toLowerCase(Locale.ROOT), bare);
  }
}
