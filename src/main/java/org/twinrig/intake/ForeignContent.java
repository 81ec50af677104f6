package org.twinrig.intake;

import java.util.List;
import java.util.Optional;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;

/** Is this a well-known file that is not text? Then it can be named, with its own remedy. */
final class ForeignContent {
  private record Signature(String hex, String what, String remedy) {}

  private static final String EXPORT = "export the sheet as CSV (UTF-8)";

  /** First bytes as their published formats fix them. */
  private static final List<Signature> SIGNATURES =
      List.of(
          new Signature("504b0304", "the file is a spreadsheet or a zip archive, not text", EXPORT),
          new Signature(
              "d0cf11e0a1b11ae1", "the file is a spreadsheet in a binary form, not text", EXPORT),
          new Signature("25504446", "the file is a PDF, not text", "export the curve as text"),
          new Signature("89504e47", "the file is a picture, not text", "export the curve as text"),
          new Signature("ffd8ff", "the file is a picture, not text", "export the curve as text"),
          new Signature("1f8b", "the file is compressed (gzip)", "unpack it first"),
          new Signature(
              "52463634", "the file is a sound file in RF64", "export the sound as WAV below 4 GB"),
          new Signature(
              "664c6143", "the file is a compressed sound file", "export the sound as WAV"),
          new Signature(
              "4f676753", "the file is a compressed sound file", "export the sound as WAV"),
          new Signature(
              "464f524d", "the file is a sound file, but not WAV", "export the sound as WAV"),
          new Signature(
              "fffe0000", "the file is text in UTF-32", "save it as UTF-8, Latin-1 or UTF-16"),
          new Signature(
              "0000feff", "the file is text in UTF-32", "save it as UTF-8, Latin-1 or UTF-16"));

  private ForeignContent() {}

  static Optional<UnusableInput> in(byte[] bytes, Remarks remarks) {
    return signature(bytes)
        .map(signature -> remarks.refuse(0, signature.what(), signature.remedy()));
  }

  /**
   * Is this a spreadsheet, which a lab may take for the table it was asked for?
   *
   * @param bytes the file's content
   * @param source its name in messages
   * @return the problem to refuse it with
   */
  static Optional<Problem> spreadsheet(byte[] bytes, String source) {
    return signature(bytes)
        .filter(signature -> signature.remedy().equals(EXPORT))
        .map(signature -> Problem.fatal(source, 0, signature.what(), signature.remedy()));
  }

  private static Optional<Signature> signature(byte[] bytes) {
    return SIGNATURES.stream().filter(s -> startsWith(bytes, s.hex())).findFirst();
  }

  private static boolean startsWith(byte[] bytes, String hex) {
    if (bytes.length * 2 < hex.length()) {
      return false;
    }
    for (int i = 0; i < hex.length() / 2; i++) {
      if ((bytes[i] & 0xff) != Integer.parseInt(hex, 2 * i, 2 * i + 2, 16)) {
        return false;
      }
    }
    return true;
  }
}
