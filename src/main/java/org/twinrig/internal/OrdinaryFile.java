package org.twinrig.internal;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.List;
import java.util.Objects;

/**
 * A regular file, looked at before it is opened: a folder, a pipe, a socket or a device is never
 * opened, and neither is what the system makes up as it is read ({@code /proc}, {@code /sys}),
 * which calls itself regular and may keep a reader waiting for ever.
 *
 * <p>A file of no bytes is not opened either: there is nothing to read in an ordinary one, and the
 * made-up files of other mounts have that size too.
 */
public final class OrdinaryFile {
  private static final List<Path> MADE_UP = List.of(Path.of("/proc"), Path.of("/sys"));

  private final Path real;
  private final BasicFileAttributes attributes;

  private OrdinaryFile(Path real, BasicFileAttributes attributes) {
    this.real = real;
    this.attributes = attributes;
  }

  /** What is there is no ordinary file. */
  public static final class NotOrdinaryException extends FileSystemException {
    private static final long serialVersionUID = 1L;

    private NotOrdinaryException(Path file, String what) {
      super(file.toString(), null, what);
    }

    /** What it is: to follow "this is", for example {@code a folder}. */
    public String what() {
      return getReason();
    }
  }

  /**
   * Looks at a file, which is not opened yet; links are followed.
   *
   * @throws NotOrdinaryException when it is anything but an ordinary file
   */
  public static OrdinaryFile at(Path file) throws IOException {
    Path real = file.toRealPath();
    BasicFileAttributes attributes = attributes(real);
    if (attributes.isDirectory()) {
      throw new NotOrdinaryException(file, "a folder");
    }
    if (!attributes.isRegularFile()) {
      throw new NotOrdinaryException(file, "a device or a pipe and no file");
    }
    if (MADE_UP.stream().anyMatch(real::startsWith)) {
      throw new NotOrdinaryException(file, "a window into the system and no ordinary file");
    }
    return new OrdinaryFile(real, attributes);
  }

  private static BasicFileAttributes attributes(Path real) throws IOException {
    return Files.readAttributes(real, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
  }

  /** How large it is: bytes. */
  public long size() {
    return attributes.size();
  }

  /**
   * Opens it at its first byte, and looks again: what was put into its place meanwhile is not read.
   */
  public InputStream open() throws IOException {
    if (size() == 0) {
      return InputStream.nullInputStream();
    }
    InputStream in = Files.newInputStream(real, LinkOption.NOFOLLOW_LINKS);
    try {
      if (!real.toRealPath().equals(real)
          || !Objects.equals(attributes(real).fileKey(), attributes.fileKey())) {
        throw new FileSystemException(real.toString(), null, "it was replaced while it was opened");
      }
      return in;
    } catch (IOException | RuntimeException e) {
      in.close();
      throw e;
    }
  }

  /** All of it, below 2 GiB; fails when it is changed while it is read. */
  public byte[] bytes() throws IOException {
    byte[] bytes = new byte[Math.toIntExact(size())];
    try (InputStream in = open()) {
      if (in.readNBytes(bytes, 0, bytes.length) < bytes.length || in.read() >= 0) {
        throw new FileSystemException(real.toString(), null, "it was changed while it was read");
      }
    }
    return bytes;
  }
}
