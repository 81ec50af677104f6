package org.twinrig.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.twinrig.intake.Sample.DecimalMark;
import org.twinrig.problem.UnusableInput;

/**
 * The same three points, 20 Hz 85.3 dB, 200 Hz 85.9 dB and 2000 Hz 86.2 dB, in every dialect. What
 * instruments and spreadsheets write is common practice, no source.
 */
class CaptureDialectTest {
  private static final String POINTS = "20:85.3 200:85.9 2000:86.2";

  private record Variation(String name, String text, Separator separator, DecimalMark mark) {
    @Override
    public String toString() {
      return name;
    }
  }

  private static Variation of(String name, String text, Separator separator, DecimalMark mark) {
    return new Variation(name, text, separator, mark);
  }

  private static Variation points(String name, String text, Separator separator) {
    return of(name, text, separator, DecimalMark.POINT);
  }

  private static Variation commas(String name, String text, Separator separator) {
    return of(name, text, separator, DecimalMark.COMMA);
  }

  static Stream<Variation> separatorsAndMarks() {
    return Stream.of(
        points("comma", "20,85.3\n200,85.9\n2000,86.2\n", Separator.COMMA),
        points("comma and space", "20, 85.3\n200, 85.9\n2000, 86.2\n", Separator.COMMA),
        points("comma and tab", "20,\t85.3\n200,\t85.9\n2000,\t86.2\n", Separator.COMMA),
        points("semicolon", "20.0;85.3\n200.0;85.9\n2000.0;86.2\n", Separator.SEMICOLON),
        commas("semicolon, comma", "20,0;85,3\n200,0;85,9\n2000;86,2\n", Separator.SEMICOLON),
        commas("semicolon, blanks", "20 ; 85,3\n200 ; 85,9\n2000 ; 86,2\n", Separator.SEMICOLON),
        points("tab", "20\t85.3\n200\t85.9\n2000\t86.2\n", Separator.TAB),
        commas("tab, comma", "20\t85,3\n200\t85,9\n2000\t86,2\n", Separator.TAB),
        points("tab, padded", "  20\t 85.3\n 200\t 85.9\n2000\t 86.2\n", Separator.TAB),
        points("space", "20 85.3\n200 85.9\n2000 86.2\n", Separator.SPACES),
        points("aligned", "   20   85.3\n  200   85.9\n 2000   86.2\n", Separator.SPACES),
        commas("aligned, comma", "  20,0  85,3\n 200,0  85,9\n2000,0  86,2\n", Separator.SPACES),
        commas("one mark only", "20 85,3\n200 85,9\n2000 86,2\n", Separator.SPACES),
        points("tabs and spaces", "20 \t85.3\n200 85.9\n2000  86.2\n", Separator.SPACES),
        points("no-break space", "20\u00a085.3\n200\u00a085.9\n2000\u00a086.2\n", Separator.SPACES),
        commas("quoted", "20,\"85,3\"\n200,\"85,9\"\n2000,\"86,2\"\n", Separator.COMMA),
        commas(
            "all quoted",
            "\"20,0\",\"85,3\"\n\"200,0\",\"85,9\"\n\"2000,0\",\"86,2\"\n",
            Separator.COMMA),
        points(
            "quoted points",
            "\"20.0\",\"85.3\"\n\"200.0\",\"85.9\"\n\"2000.0\",\"86.2\"\n",
            Separator.COMMA),
        commas(
            "quoted, semicolon",
            "\"20\";\"85,3\"\n\"200\";\"85,9\"\n\"2000\";\"86,2\"\n",
            Separator.SEMICOLON),
        commas(
            "quoted, spaces",
            "\"20\" \"85,3\"\n\"200\" \"85,9\"\n\"2000\" \"86,2\"\n",
            Separator.SPACES),
        points("trailing comma", "20,85.3,\n200,85.9,\n2000,86.2,\n", Separator.COMMA),
        points("now and then", "20,85.3,\n200,85.9\n2000,86.2,,\n", Separator.COMMA),
        commas("trailing semicolons", "20;85,3;;\n200;85,9;;\n2000;86,2;;\n", Separator.SEMICOLON),
        points("trailing tab", "20\t85.3\t\n200\t85.9\t\n2000\t86.2\t\n", Separator.TAB),
        points("trailing spaces", "20 85.3  \n200 85.9  \n2000 86.2  \n", Separator.SPACES),
        points("empty first column", ",20,85.3\n,200,85.9\n,2000,86.2\n", Separator.COMMA),
        points("empty middle column", "20\t\t85.3\n200\t\t85.9\n2000\t\t86.2\n", Separator.TAB),
        points("exponents", "2.0E+01,8.53e1\n2.0E+02,8.59E01\n2E3,862.E-1\n", Separator.COMMA),
        commas("exponents, comma", "2,0E+01\t853e-1\n2E+2\t85,9\n2E3\t86,2\n", Separator.TAB),
        points("signs", "+20 +85.3\n+200 +85.9\n+2000 +86.2\n", Separator.SPACES));
  }

  static Stream<Variation> surroundings() {
    String rows = "20;85.3\n200;85.9\n2000;86.2\n";
    return Stream.of(
            "# 20;85.3\n* note\n; note\n// note\n% note\n! note\n" + rows,
            "\"# quoted note\"\n" + rows,
            "Alder 3, left ear\n\nmeasured on a plate\n" + rows,
            "48000 Hz sample rate\n481 points\n16 bit\n" + rows,
            "2026-03-05\n10:30:05\n05.03.2026\n1/12 octave\n" + rows,
            "sep=;\n" + rows,
            "Sample rate;48000\nPoints;3\n\n[data]\n" + rows,
            "Driver 6\" across, \"new\n" + rows,
            "Hz;dB\n" + rows,
            "20;85.3\n\n# lunch\n200;85.9\n   \n;;;\n2000;86.2\n",
            "20;85.3\r\n200;85.9\r\n2000;86.2\r\n",
            "20;85.3\r200;85.9\r2000;86.2\r",
            "20;85.3\r\n200;85.9\n2000;86.2",
            "20;85.3\r\r\n200;85.9\r\r\n2000;86.2\r\r\n",
            rows + "\u001a",
            rows + "\f",
            "\f" + rows)
        .map(text -> points(text.replaceAll("\\p{Cntrl}", "¶"), text, Separator.SEMICOLON));
  }

  static Stream<Variation> headers() {
    return Stream.of(
        points("Hz, dB", "Hz,dB\n20,85.3\n200,85.9\n2000,86.2\n", Separator.COMMA),
        points(
            "comment above aligned numbers",
            "* Freq(Hz) SPL(dB)\n20 85.3\n200 85.9\n2000 86.2\n",
            Separator.SPACES),
        points(
            "units with blanks",
            "Frequency (Hz)   Level (dB SPL)\n20 85.3\n200 85.9\n2000 86.2\n",
            Separator.SPACES),
        points(
            "units without brackets",
            "# Frequency Hz Level dB SPL\n20 85.3\n200 85.9\n2000 86.2\n",
            Separator.SPACES),
        points(
            "header cut otherwise",
            "Frequency (Hz), Level (dB)\n20\t85.3\n200\t85.9\n2000\t86.2\n",
            Separator.TAB),
        points(
            "level first",
            "Level (dB),Frequency (Hz)\n85.3,20\n85.9,200\n86.2,2000\n",
            Separator.COMMA),
        points(
            "phase between",
            "Freq;Phase;SPL\n20;-12.5;85.3\n200;3;85.9\n2000;170;86.2\n",
            Separator.SEMICOLON),
        points(
            "phase first",
            "Phase (deg)\tMagnitude (dB)\tFrequency (Hz)\n1.5\t85.3\t20\n2\t85.9\t200\n3\t86.2\t2000\n",
            Separator.TAB),
        commas(
            "German",
            "Frequenz;Pegel;Grad\n20;85,3;1\n200;85,9;2\n2000;86,2;3\n",
            Separator.SEMICOLON),
        commas("French", "Fréquence;Niveau\n20;85,3\n200;85,9\n2000;86,2\n", Separator.SEMICOLON),
        commas(
            "Spanish, level first",
            "Nivel (dB);Frecuencia (Hz)\n85,3;20\n85,9;200\n86,2;2000\n",
            Separator.SEMICOLON),
        points(
            "Russian, level first",
            "Уровень, дБ;Частота, Гц\n85.3;20\n85.9;200\n86.2;2000\n",
            Separator.SEMICOLON),
        points(
            "Japanese, level first",
            "音圧レベル;周波数\n85.3;20\n85.9;200\n86.2;2000\n",
            Separator.SEMICOLON),
        points(
            "units on a second line",
            "Level;Frequency\ndB;Hz\n85.3;20\n85.9;200\n86.2;2000\n",
            Separator.SEMICOLON),
        points(
            "remark between header and numbers",
            "Level;Frequency\n# start\n\n85.3;20\n85.9;200\n86.2;2000\n",
            Separator.SEMICOLON),
        points(
            "a sentence that is no header",
            "# level against frequency\n20 85.3\n200 85.9\n2000 86.2\n",
            Separator.SPACES),
        points(
            "decibel beats pascal",
            "Hz,SPL (dB re 20 µPa),Pa\n20,85.3,0.4\n200,85.9,0.4\n2000,86.2,0.4\n",
            Separator.COMMA),
        points(
            "a column that is decibels but no level",
            "Frequency (Hz),THD (dB),SPL (dB)\n20,-40,85.3\n200,-41,85.9\n2000,-50,86.2\n",
            Separator.COMMA),
        points(
            "a text column first",
            "Ear;Frequency;Level\nL;20;85.3\nL;200;85.9\nL;2000;86.2\n",
            Separator.SEMICOLON),
        points(
            "a text column last",
            "Frequency,Level,Remark\n20,85.3,ok so far\n200,85.9,\n2000,86.2,\"a, b\"\n",
            Separator.COMMA),
        points(
            "a date column",
            "Datum;Frequenz;Pegel\n05.03.2026;20;85.3\n05.03.2026;200;85.9\n05.03.2026;2000;86.2\n",
            Separator.SEMICOLON),
        points(
            "kilohertz",
            "Frequency (kHz),Level (dB)\n0.02,85.3\n0.2,85.9\n2,86.2\n",
            Separator.COMMA),
        points(
            "kilohertz on a second line",
            "Frequency;Level\nkHz;dB\n0.02;85.3\n0.2;85.9\n2;86.2\n",
            Separator.SEMICOLON));
  }

  @ParameterizedTest
  @MethodSource({"separatorsAndMarks", "surroundings", "headers"})
  void everyVariationGivesTheSamePoints(Variation variation) throws UnusableInput {
    Reading reading = CaptureBytes.read(variation.text());
    assertEquals(POINTS, CaptureBytes.points(reading));
    String told =
        "Columns are parted by "
            + variation.separator().words
            + ", with "
            + variation.mark().words
            + ": ";
    assertEquals(told, reading.understood().get(2).substring(0, told.length()));
    assertEquals(3, reading.points());
  }
}
