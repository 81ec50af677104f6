package org.twinrig.report;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Objects;

/**
 * A lock on a file of its own, held as long as the run lives: the system gives it up when the
 * process dies, so that no stale lock can stay behind.
 */
final class FolderLock implements AutoCloseable {
  private final Path file;
  private final FileChannel channel;

  private FolderLock(Path file, FileChannel channel) {
    this.file = file;
    this.channel = channel;
  }

  /**
   * Takes the lock.
   *
   * @param file of the lock
   * @param target the folder it guards, for the message
   * @throws StagedFolder.BusyException when another run holds it
   */
  static FolderLock take(Path file, Path target) throws IOException {
    if (Files.isSymbolicLink(file)) {
      throw new IOException(file + " is a link; remove it");
    }
    while (true) {
      FileChannel channel =
          FileChannel.open(
              file,
              StandardOpenOption.CREATE,
              StandardOpenOption.WRITE,
              LinkOption.NOFOLLOW_LINKS); // a link would lead the word below into another file
      if (!lock(channel)) {
        channel.close();
        throw new StagedFolder.BusyException(target);
      }
      if (isStillThere(file, channel)) {
        return new FolderLock(file, channel);
      }
      // Its last holder removed the file between our opening and our locking it.
      channel.close();
    }
  }

  private static boolean lock(FileChannel channel) throws IOException {
    try {
      FileLock lock = channel.tryLock();
      return lock != null;
    } catch (OverlappingFileLockException e) {
      return false; // held by another run in this very process
    }
  }

  /** Writes a word through the channel and looks for it under the name. */
  private static boolean isStillThere(Path file, FileChannel channel) throws IOException {
    try {
      Object key = Files.readAttributes(file, BasicFileAttributes.class).fileKey();
      long size = Files.size(file);
      channel.write(java.nio.ByteBuffer.wrap(new byte[] {'.'}), size);
      return Files.size(file) == size + 1
          && Objects.equals(key, Files.readAttributes(file, BasicFileAttributes.class).fileKey());
    } catch (NoSuchFileException e) {
      return false;
    }
  }

  @Override
  public void close() throws IOException {
    // Removed before it is given up: whoever opens it meanwhile sees that it has gone.
    try (channel) {
      Files.deleteIfExists(file);
    }
  }
}
