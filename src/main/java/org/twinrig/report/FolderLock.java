package org.twinrig.report;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Objects;
import java.util.Optional;

/**
 * A lock on a file of its own, held as long as the run lives: the system gives it up when the
 * process dies, so that no stale lock can stay behind.
 */
final class FolderLock implements AutoCloseable {
  private static final int MOST_DOTS = 10_000;

  private final Path file;
  private final FileChannel channel;

  private FolderLock(Path file, FileChannel channel) {
    this.file = file;
    this.channel = channel;
  }

  /**
   * Takes the lock.
   *
   * @return the lock; nothing when another run holds it
   * @throws IOException when it cannot be made, or something else lies in its place
   */
  static Optional<FolderLock> take(Path file) throws IOException {
    if (Files.exists(file, LinkOption.NOFOLLOW_LINKS) && !isLock(file)) {
      throw new FileAlreadyExistsException(file.toString());
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
        return Optional.empty();
      }
      if (isStillThere(file, channel)) {
        return Optional.of(new FolderLock(file, channel));
      }
      // Its last holder removed the file between our opening and our locking it.
      channel.close();
    }
  }

  /** A lock holds nothing but the dots of those who took it; anything else is somebody's file. */
  private static boolean isLock(Path file) throws IOException {
    try {
      return Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
          && Files.size(file) < MOST_DOTS
          && Files.readString(file, StandardCharsets.ISO_8859_1).matches("\\.*");
    } catch (NoSuchFileException e) {
      return true; // given up this moment
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
