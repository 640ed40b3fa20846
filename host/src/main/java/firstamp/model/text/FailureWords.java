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
  private static final String BUNDLE = "firstamp.model.text.failures";

  /** What the C library says (strerror, English), and the key of our words. */
  private static final Map<String, String> REASONS =
      Map.ofEntries(
          Map.entry("no space left on device", "no-room"),
          Map.entry("disk quota exceeded", "quota"),
          Map.entry("broken pipe", "reader-ended"),
          Map.entry("read-only file system", "read-only"),
          Map.entry("is a directory", "folder"),
          Map.entry("not a directory", "path"),
          Map.entry("file name too long", "long-name"),
          Map.entry("permission denied", "no-permission"),
          Map.entry("operation not permitted", "no-permission"),
          Map.entry("no such file or directory", "missing"),
          Map.entry("too many levels of symbolic links", "circle"),
          Map.entry("too many open files", "too-many"),
          Map.entry("input/output error", "device"),
          Map.entry("device or resource busy", "busy"),
          Map.entry("text file busy", "busy"));

  private FailureWords() {}

  /** The reason in English. */
  public static String of(IOException failed) {
    return worded(failed).english();
  }

  static Worded say(String key, Object... values) {
    return Worded.of(BUNDLE, key, values);
  }

  /** The reason, without the path and without a full stop. */
  public static Worded worded(IOException failed) {
    if (failed instanceof NoSuchFileException) {
      return say("missing");
    }
    if (failed instanceof AccessDeniedException) {
      return say("no-permission");
    }
    if (failed instanceof FileAlreadyExistsException) {
      return say("there");
    }
    if (failed instanceof DirectoryNotEmptyException) {
      return say("not-empty");
    }
    if (failed instanceof NotDirectoryException) {
      return say("no-folder");
    }
    if (failed instanceof FileSystemLoopException) {
      return say("circle");
    }
    if (failed instanceof CharacterCodingException) {
      return say("not-utf8");
    }
    return words(
        failed instanceof FileSystemException of ? of.getReason() : failed.getMessage(),
        failed instanceof FileNotFoundException);
  }

  private static Worded words(String reason, boolean bracketed) {
    if (reason == null || reason.isBlank()) {
      return say("no-reason");
    }
    // "path (reason)" is how the older classes write it.
    String bare =
        bracketed && reason.endsWith(")") && reason.contains(" (")
            ? reason.substring(reason.lastIndexOf(" (") + 2, reason.length() - 1)
            : reason;
    String key = REASONS.get(bare.toLowerCase(Locale.ROOT));
    return key == null ? Worded.asIs(bare) : say(key);
  }
}
