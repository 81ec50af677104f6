package org.twinrig.intake;

import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Response;

/** A capture as delimited text: the questions of this package, asked in order. */
final class TextCapture {
  /** A million lines of 32 characters; as characters and numbers they take up five times that. */
  static final int MOST_BYTES = 32 << 20;

  /**
   * A curve of a headphone goes far above 50 Hz, and one in kHz never gets there: nothing audible
   * is at 50 kHz.
   */
  private static final double LEAST_TOP_HZ = 50;

  /** No audio measurement reaches a megahertz. */
  private static final double MOST_HZ = 1e6;

  /** 2 Pa are 100 dB; a curve in dB that stays between 0 and 2 throughout would be a miracle. */
  private static final double MOST_LINEAR = 2;

  private TextCapture() {}

  static Reading read(byte[] bytes, Remarks remarks) throws UnusableInput {
    if (bytes.length > MOST_BYTES) {
      throw remarks.refuse(
          "the text has "
              + CaptureFile.megabytes(bytes.length, 32)
              + " MB, but at most 32 MB are read",
          "export this one curve with fewer points");
    }
    DecodedText text = DecodedText.of(bytes, remarks);
    Lines lines = new Lines(text.text(), remarks);
    TextFormat format = new TextFormat(lines, remarks);
    NumberLines numbers = new NumberLines(lines, format, remarks);
    Points points = numbers.read();
    Response response = points.response(remarks);
    checkFrequencies(response, format, remarks);
    if (!saysDb(lines, format) && looksLinear(response)) {
      throw remarks.refuse(
          "all levels lie between 0 and 2, like pascals or volts",
          "export the level in dB, or write dB in the column's title if it is");
    }
    List<String> understood =
        List.of(
            Reading.extent(response)
                + (points.fall() ? "; in the file the frequencies fall." : "."),
            "The text is " + text.encoding() + "; lines end with " + lines.ends() + ".",
            format.told(),
            numbers.told());
    return remarks.reading(
        response, understood, bytes, points.all().size() + numbers.zeroHzPoints());
  }

  /** Refuses what is likely in another unit than was understood. */
  private static void checkFrequencies(Response response, TextFormat format, Remarks remarks)
      throws UnusableInput {
    String top = NumberText.plain(response.toHz());
    if (response.toHz() > MOST_HZ) {
      throw remarks.refuse(
          "the highest frequency is " + top + " Hz",
          format.inKhz
              ? "check the unit: the title says kHz, but the numbers may be Hz"
              : "frequencies are given in Hz");
    }
    if (response.toHz() < LEAST_TOP_HZ) {
      if (!format.meaning(format.frequency).saysHz()) {
        throw remarks.refuse(
            "the highest frequency is " + top + ", so the frequencies may be in kHz",
            "title the column Frequency (kHz), or Frequency (Hz) if they are in Hz");
      }
      remarks.note(0, "the highest frequency is only " + top + " Hz");
    }
  }

  private static boolean looksLinear(Response response) {
    double first = response.levelDb(0);
    return levels(response).allMatch(level -> level > 0 && level < MOST_LINEAR)
        && levels(response).anyMatch(level -> level != first);
  }

  private static DoubleStream levels(Response response) {
    return IntStream.range(0, response.size()).mapToDouble(response::levelDb);
  }

  /** Whether the level's title or any line above the numbers says decibel. */
  private static boolean saysDb(Lines lines, TextFormat format) {
    boolean says = format.meaning(format.level).saysDb();
    for (int line = 1; line < format.sample.begin() && !says; line++) {
      says = HeaderWords.of(lines.text(line)).saysDb();
    }
    return says;
  }
}
