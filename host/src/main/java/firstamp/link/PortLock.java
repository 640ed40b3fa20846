package firstamp.link;

import firstamp.model.text.FailureWords;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * Our own lock on a port, taken before the port is touched.
 *
 * <p>The serial library moves the control lines before it tries its own lock, which resets common
 * boards: a second start would switch off the set that the first one is watching, and only then
 * fail. The lock goes with the process, however it ends.
 */
final class PortLock implements AutoCloseable {
  private final FileChannel channel;
  private final FileLock lock;

  private PortLock(FileChannel channel, FileLock lock) {
    this.channel = channel;
    this.lock = lock;
  }

  /**
   * Takes the lock.
   *
   * @param folder private folder for lock files
   * @param portPath canonical path of the port
   * @throws PortException another Firstamp has it
   */
  static PortLock take(Path folder, String portPath) throws PortException {
    Path file = folder.resolve("port" + portPath.replaceAll("[^A-Za-z0-9]+", "-") + ".lock");
    try {
      Files.createDirectories(folder);
      FileChannel channel =
          FileChannel.open(
              file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
      FileLock lock = tryLock(channel);
      if (lock == null) {
        String owner = read(channel);
        channel.close();
        throw new PortException(PortException.Kind.BUSY, "busy.own", portPath, owner);
      }
      channel.truncate(0);
      channel.write(
          ByteBuffer.wrap(
              Long.toString(ProcessHandle.current().pid()).getBytes(StandardCharsets.US_ASCII)),
          0);
      return new PortLock(channel, lock);
    } catch (PortException busy) {
      throw busy;
    } catch (IOException failed) {
      throw new PortException(
          PortException.Kind.UNUSABLE, "lock-file", file, portPath, FailureWords.worded(failed));
    }
  }

  private static FileLock tryLock(FileChannel channel) throws IOException {
    try {
      return channel.tryLock();
    } catch (OverlappingFileLockException ownProcess) {
      return null;
    }
  }

  private static String read(FileChannel channel) {
    try {
      ByteBuffer buffer = ByteBuffer.allocate(20);
      channel.read(buffer, 0);
      String pid =
          new String(buffer.array(), 0, buffer.position(), StandardCharsets.US_ASCII).trim();
      return pid.isEmpty() ? "" : " (PID " + pid + ")";
    } catch (IOException unreadable) {
      return "";
    }
  }

  @Override
  public void close() {
    try {
      lock.release();
      channel.close();
    } catch (IOException gone) {
      // The lock ends with the process at the latest; there is nothing left to save here.
      return;
    }
  }
}
