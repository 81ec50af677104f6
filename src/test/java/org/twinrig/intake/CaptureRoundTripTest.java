package org.twinrig.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.DoubleStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.twinrig.problem.UnusableInput;

/** A random curve written in a random dialect is read back digit by digit. */
class CaptureRoundTripTest {
  private static final List<Charset> CHARSETS =
      List.of(
          StandardCharsets.UTF_8,
          StandardCharsets.ISO_8859_1,
          StandardCharsets.UTF_16LE,
          StandardCharsets.UTF_16BE,
          StandardCharsets.UTF_16);

  /** Separator, decimal mark, quotation mark: every combination that has one meaning only. */
  private static final List<List<String>> DIALECTS =
      List.of(
          List.of(",", ".", ""),
          List.of(", ", ".", ""),
          List.of(";", ".", ""),
          List.of(";", ",", ""),
          List.of(" ; ", ",", ""),
          List.of("\t", ".", ""),
          List.of("\t", ",", ""),
          List.of("   ", ".", ""),
          List.of(" ", ",", ""),
          List.of(",", ",", "\""),
          List.of(",", ".", "\""),
          List.of(";", ",", "\""));

  private static final List<String> HEADS =
      List.of("", "# Größe\n", "Alder 3\n\n", "* a\n! b\n", "Fréquence{s}Niveau\n", "Hz{s}dB\n");

  private record Dialect(
      String separator, String mark, String quote, boolean exponents, String lineEnd) {
    static Dialect random(Random random) {
      List<String> marks = pick(random, DIALECTS);
      return new Dialect(
          marks.get(0),
          marks.get(1),
          marks.get(2),
          random.nextInt(4) == 0,
          pick(random, List.of("\n", "\r\n", "\r")));
    }

    String number(BigDecimal value) {
      String plain = exponents ? value.unscaledValue() + "E-0" + value.scale() : value.toString();
      return quote + plain.replace(".", mark) + quote;
    }
  }

  @Property(tries = 1000)
  void printedDigitsAreReadBack(@ForAll long seed) throws UnusableInput {
    Random random = new Random(seed);
    List<BigDecimal> hz = frequencies(random);
    List<BigDecimal> db = levels(random, hz.size());
    boolean falling = random.nextBoolean();
    String text = written(random, hz, db, falling);
    Reading reading = CaptureBytes.read(text.getBytes(pick(random, CHARSETS)));
    assertEquals(points(hz, db), CaptureBytes.points(reading), text);
    assertEquals(
        falling, reading.understood().get(0).endsWith("; in the file the frequencies fall."), text);
  }

  /** Two to seventy, above 20 Hz, the last above 20 kHz. */
  private static List<BigDecimal> frequencies(Random random) {
    int decimals = 1 + random.nextInt(5);
    double[] any = random.doubles(1 + random.nextInt(69), 20, 20_000).toArray();
    return DoubleStream.concat(Arrays.stream(any), DoubleStream.of(20_001))
        .mapToObj(v -> new BigDecimal(v).setScale(decimals, RoundingMode.HALF_EVEN))
        .sorted()
        .distinct()
        .toList();
  }

  private static List<BigDecimal> levels(Random random, int size) {
    int decimals = 1 + random.nextInt(6);
    return random
        .doubles(size, -60, 130)
        .mapToObj(v -> new BigDecimal(v).setScale(decimals, RoundingMode.HALF_EVEN))
        .toList();
  }

  private static String written(
      Random random, List<BigDecimal> hz, List<BigDecimal> db, boolean falling) {
    Dialect dialect = Dialect.random(random);
    String tail =
        dialect.separator().isBlank() ? "" : pick(random, List.of("", dialect.separator()));
    List<String> rows = new ArrayList<>();
    for (int i = 0; i < hz.size(); i++) {
      rows.add(
          dialect.number(hz.get(i))
              + dialect.separator()
              + dialect.number(db.get(i))
              + tail
              + "\n");
    }
    if (falling) {
      Collections.reverse(rows);
    }
    String head = pick(random, HEADS).replace("{s}", dialect.separator());
    return (head + String.join("", rows)).replace("\n", dialect.lineEnd());
  }

  private static String points(List<BigDecimal> hz, List<BigDecimal> db) {
    List<String> points = new ArrayList<>();
    for (int i = 0; i < hz.size(); i++) {
      points.add(plain(hz.get(i)) + ":" + plain(db.get(i)));
    }
    return String.join(" ", points);
  }

  private static String plain(BigDecimal value) {
    return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
  }

  private static <T> T pick(Random random, List<T> from) {
    return from.get(random.nextInt(from.size()));
  }
}
