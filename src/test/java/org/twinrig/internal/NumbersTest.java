package org.twinrig.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.math.RoundingMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class NumbersTest {

  @Property
  void fixedIsWithinHalfAStepOfTheValue(@ForAll @DoubleRange(min = -1e6, max = 1e6) double value) {
    BigDecimal printed = new BigDecimal(Numbers.fixed(value, 3));
    BigDecimal off = printed.subtract(new BigDecimal(value)).abs();
    assertEquals(true, off.setScale(6, RoundingMode.DOWN).doubleValue() <= 0.0005);
    assertEquals(3, printed.scale());
  }

  @Test
  void zeroHasNoSign() {
    assertEquals("0.0", Numbers.fixed(-0.04, 1));
    assertEquals("-0.1", Numbers.fixed(-0.06, 1));
    assertEquals("12", Numbers.fixed(12.4, 0));
  }

  @Test
  void whatIsNoNumberIsNeverPrinted() {
    assertThrows(IllegalArgumentException.class, () -> Numbers.fixed(Double.NaN, 1));
    assertThrows(IllegalArgumentException.class, () -> Numbers.fixed(Double.POSITIVE_INFINITY, 1));
  }

  @Test
  void aVerdictCannotContradictItself() {
    assertEquals("2.1", Numbers.against(2.0004, 2.0, 1));
    assertEquals("2.0", Numbers.against(2.0, 2.0, 1));
    assertEquals("1.9", Numbers.against(1.94, 2.0, 1));
    assertEquals("7.4", Numbers.against(7.42, 4.0, 1));
  }

  @Test
  void frequenciesHaveThreeDigitsAndAUnit() {
    assertEquals("31.5 Hz", Numbers.hertz(31.5));
    assertEquals("1.25 kHz", Numbers.hertz(1250));
    assertEquals("20 kHz", Numbers.hertz(19_952.6));
    assertEquals("100 Hz", Numbers.hertz(99.99));
  }
}
