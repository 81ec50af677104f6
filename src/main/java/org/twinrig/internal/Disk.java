package org.twinrig.internal;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * Steps on files that must not be lost, one method each, so that a test can stop between any two.
 */
public class Disk {
  private static final boolean WINDOWS =
      System.getProperty("os.name", "").toLowerCase(Locale.ROOT).startsWith("windows");

  /** The disk of this machine. */
  public Disk() {}

  /** Makes a folder whose parent is there. */
  public void createFolder(Path folder) throws IOException {
    Files.createDirectory(folder);
  }

  /** Writes a new file and forces it to the disk. */
  public void write(Path file, byte[] bytes) throws IOException {
    Files.write(file, bytes, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    force(file);
  }

  /**
   * Moves a file or folder on its file system, never over another one that holds anything; where it
   * cannot be moved nothing has changed.
   */
  public void move(Path from, Path to) throws IOException {
    Files.move(from, to);
  }

  /** Moves a file over another one in the same folder, at once, likewise. */
  public void replace(Path from, Path to) throws IOException {
    Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }

  /**
   * Exchanges two folders at once: there is no moment at which either name is missing. Returns
   * whether that was done; false where the system cannot, and then nothing has changed.
   */
  public boolean exchange(Path one, Path other) {
    try {
      return SystemCalls.exchange(one, other);
    } catch (LinkageError e) {
      return false; // its library cannot be loaded here
    }
  }

  /** Removes a file, a link or an empty folder. */
  public void delete(Path path) throws IOException {
    Files.delete(path);
  }

  /** Forces the content of a file, or the names in a folder, to the disk. */
  public void force(Path path) throws IOException {
    boolean folder = Files.isDirectory(path, LinkOption.NOFOLLOW_LINKS);
    if (folder && WINDOWS) {
      return; // folders cannot be opened there, and their names are in the file system's journal
    }
    StandardOpenOption option = folder ? StandardOpenOption.READ : StandardOpenOption.WRITE;
    try (FileChannel channel = FileChannel.open(path, option)) {
      channel.force(true);
    }
  }

  /** Forces a folder with everything in it to the disk; no link in it is followed. */
  public void forceAll(Path folder) throws IOException {
    try {
      if (SystemCalls.syncFileSystem(folder)) {
        return;
      }
    } catch (LinkageError e) {
      // its library cannot be loaded here: file by file, then
    }
    List<Path> all;
    try (Stream<Path> walk = Files.walk(folder)) {
      all = walk.filter(p -> !Files.isSymbolicLink(p)).toList();
    }
    for (Path path : all) {
      force(path);
    }
  }
}
