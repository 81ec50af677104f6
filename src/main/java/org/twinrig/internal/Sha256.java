package org.twinrig.internal;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** The fingerprint of bytes (FIPS 180-4). */
public final class Sha256 {
  private Sha256() {}

  /**
   * The SHA-256 of some bytes.
   *
   * @param bytes any; not changed
   * @return 64 hexadecimal digits
   */
  public static String hex(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
