package org.twinrig.internal;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** The fingerprint of bytes (FIPS 180-4). */
public final class Sha256 {
  private Sha256() {}

  /** The SHA-256 of some bytes: 64 hexadecimal digits. */
  public static String hex(byte[] bytes) {
    return HexFormat.of().formatHex(digest().digest(bytes));
  }

  /** The same of a file of any size, which is never in memory as a whole. */
  public static String hex(Path file) throws IOException {
    MessageDigest digest = digest();
    try (InputStream in = new DigestInputStream(OrdinaryFile.at(file).open(), digest)) {
      in.transferTo(OutputStream.nullOutputStream()); // reading feeds the digest
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  private static MessageDigest digest() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
