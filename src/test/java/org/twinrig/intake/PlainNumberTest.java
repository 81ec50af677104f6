package org.twinrig.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PlainNumberTest {

  @Property
  void readsWhatJavaWrites(@ForAll double value) {
    assertEquals(OptionalDouble.of(value), PlainNumber.decimal(" " + value + " "));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "NaN", "Infinity", "1e999", "0x10", "1,5", "1_000", "5 dB", "1d", "."})
  void refusesWhatAPersonWouldNotCallANumber(String text) {
    assertTrue(PlainNumber.decimal(text).isEmpty());
    assertTrue(PlainNumber.whole(text).isEmpty());
  }

  @Test
  void wholeNumbersHaveNoPointAndAtMost18Digits() {
    assertEquals(OptionalLong.of(-12), PlainNumber.whole("-12"));
    assertEquals(OptionalLong.of(999_999_999_999_999_999L), PlainNumber.whole("9".repeat(18)));
    assertTrue(PlainNumber.whole("9".repeat(19)).isEmpty());
    assertTrue(PlainNumber.whole("1.0").isEmpty());
  }

  @Test
  void knowsADecimalComma() {
    assertEquals(
        Optional.of("write a point as the decimal mark: -0.5"), PlainNumber.commaRemedy("-0,5"));
    assertEquals(Optional.empty(), PlainNumber.commaRemedy("1,2,3"));
  }
}
