package org.twinrig.intake;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.twinrig.internal.Numbers;
import org.twinrig.internal.OrdinaryFile;
import org.twinrig.internal.Sha256;
import org.twinrig.problem.UnusableInput;

/**
 * Can the file be read at all, and what is its fingerprint. Too large a file, and what is no file
 * but a device or a pipe, is not even opened.
 */
final class FileBytes {
  /** 64 MiB: a thousand times a usual capture; more is a mix-up, and would fill the memory. */
  static final long MOST_BYTES = 64L << 20;

  private final byte[] bytes;
  private final String sha256;

  private FileBytes(byte[] bytes) {
    this.bytes = bytes;
    this.sha256 = Sha256.hex(bytes);
  }

  static FileBytes read(Path file, Remarks remarks) throws UnusableInput {
    try {
      OrdinaryFile found = OrdinaryFile.at(file);
      if (found.size() > MOST_BYTES) {
        throw remarks.refuse(
            0,
            "the file has " + megabytes(found.size(), 64) + " MB, but at most 64 MB are read",
            "export this one curve as text");
      }
      return new FileBytes(found.bytes());
    } catch (OrdinaryFile.NotOrdinaryException e) {
      boolean folder = Files.isDirectory(file);
      throw remarks.refuse(
          0, "this is " + e.what(), folder ? "name one file in it" : "name a file");
    } catch (NoSuchFileException e) {
      throw remarks.refuse(
          0, "there is no such file", "check the name and the folder it is looked for in");
    } catch (AccessDeniedException e) {
      throw remarks.refuse(
          0, "the file may not be read", "give this user the permission to read it");
    } catch (IOException e) {
      throw remarks.refuse(
          0,
          "the file cannot be read (" + e.getMessage() + ")",
          "copy it again from where it was exported");
    }
  }

  /** Rounded so that a size above a limit never prints as the limit. */
  String megabytes(int limit) {
    return megabytes(bytes.length, limit);
  }

  private static String megabytes(long size, int limit) {
    BigDecimal exact = BigDecimal.valueOf(size).divide(BigDecimal.valueOf(1L << 20));
    return Numbers.against(exact.doubleValue(), limit, 1);
  }

  /** The content itself, not a copy: it is only read from here on. */
  byte[] bytes() {
    return bytes;
  }

  String sha256() {
    return sha256;
  }
}
