package org.twinrig.intake;

import java.util.HexFormat;
import java.util.List;
import java.util.Optional;

/**
 * A well-known file that is not text, told by its first bytes: it is refused with its own remedy.
 */
record ForeignContent(String hex, String what, String remedy) {
  private static final String SHEET = "export the sheet as CSV (UTF-8)";
  private static final String CURVE = "export the curve as text";
  private static final String WAV = "export the sound as WAV";
  private static final String ENCODING = "save it as UTF-8, Latin-1 or UTF-16";

  /** First bytes as their published formats fix them. */
  private static final List<ForeignContent> KNOWN =
      List.of(
          of("504b0304", "a spreadsheet or a zip archive, not text", SHEET),
          of("d0cf11e0a1b11ae1", "a spreadsheet in a binary form, not text", SHEET),
          of("25504446", "a PDF, not text", CURVE),
          of("89504e47", "a picture, not text", CURVE),
          of("ffd8ff", "a picture, not text", CURVE),
          of("1f8b", "compressed (gzip)", "unpack it first"),
          of("52463634", "a sound file in RF64", "export the sound as WAV below 4 GB"),
          of("664c6143", "a compressed sound file", WAV),
          of("4f676753", "a compressed sound file", WAV),
          of("464f524d", "a sound file, but not WAV", WAV),
          of("fffe0000", "text in UTF-32", ENCODING),
          of("0000feff", "text in UTF-32", ENCODING));

  private static ForeignContent of(String hex, String what, String remedy) {
    return new ForeignContent(hex, "the file is " + what, remedy);
  }

  static Optional<ForeignContent> in(byte[] bytes) {
    String begin = HexFormat.of().formatHex(bytes, 0, Math.min(bytes.length, 8));
    return KNOWN.stream().filter(known -> begin.startsWith(known.hex())).findFirst();
  }

  /** Whether a lab may have taken it for the table it was asked for. */
  boolean isSpreadsheet() {
    return remedy.equals(SHEET);
  }
}
