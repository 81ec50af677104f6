package org.twinrig.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.BigRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every number is the double nearest to its digits, as the Java platform's own parser gives it. */
class NumberTextTest {
  private static double parse(String text, char mark, int powerOfTen) {
    return new NumberText(mark, powerOfTen).parse(text);
  }

  @Property
  void anyDoubleIsReadBackExactly(@ForAll double value) {
    assertEquals(value, parse(Double.toString(value), '.', 0));
  }

  @Property
  void anyDecimalIsRoundedOnceOnly(
      @ForAll @BigRange(min = "-100000", max = "100000") BigDecimal value,
      @ForAll @IntRange(min = -3, max = 3) int powerOfTen) {
    String text = value.toPlainString().replace('.', ',');
    assertEquals(
        Double.parseDouble(value.scaleByPowerOfTen(powerOfTen).toString()) + 0.0,
        parse(text, ',', powerOfTen) + 0.0);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "0",
        "-0",
        "+1",
        ".5",
        "5.",
        "1e3",
        "1E+03",
        "1.5e-7",
        "0000000000000000000000001.25",
        "123456789012345678901234567890",
        "0.000000000000000000000000000001",
        "9007199254740993",
        "1e22",
        "1e23",
        "1e-22",
        "1e-23",
        "4.9e-324",
        "1.7976931348623157e308",
        "1e400",
        "-1e400",
        "9223372036854775807",
        "92233720368547758079"
      })
  void agreesWithThePlatform(String text) {
    assertEquals(Double.parseDouble(text), parse(text, '.', 0));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "-",
        ".",
        "-.",
        "e5",
        "1e",
        "1e+",
        "1e5.5",
        "1.2.3",
        "1,5",
        "1-5",
        "--5",
        "1 000",
        "0x10",
        "NaN",
        "Infinity",
        "1d",
        "1f",
        "1e123456",
        "１"
      })
  void anythingElseIsNoNumber(String text) {
    assertTrue(Double.isNaN(parse(text, '.', 0)));
  }

  @Test
  void typesetMinusIsAMinus() {
    assertEquals(-3.5e-2, parse("\u22123.5e\u22122", '.', 0));
  }

  @ParameterizedTest
  @ValueSource(strings = {"1", "-1.5", "1,5", "1.000,5", "1,000.5", "1E+03", "5.", ".5", ",5"})
  void numberOfSomeDialect(String text) {
    assertTrue(NumberText.isLoose(text));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "-", ".", "5,", "05.03.2026", "1,2,3", "1a", "a1", "1 2", "1/12"})
  void numberOfNoDialect(String text) {
    assertFalse(NumberText.isLoose(text));
  }
}
