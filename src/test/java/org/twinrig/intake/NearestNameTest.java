package org.twinrig.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.AlphaChars;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;

class NearestNameTest {

  /**
   * Textbook values, from memory: kitten/sitting and Saturday/Sunday (Levenshtein), and CA/ABC,
   * where optimal string alignment gives 3 and the unrestricted distance 2.
   */
  @Test
  void distanceAgreesWithTextbookValues() {
    assertEquals(3, NearestName.distance("kitten", "sitting"));
    assertEquals(3, NearestName.distance("saturday", "sunday"));
    assertEquals(3, NearestName.distance("ca", "abc"));
    assertEquals(1, NearestName.distance("palte", "plate"));
    assertEquals(4, NearestName.distance("", "four"));
  }

  @Property
  void distanceIsSymmetricAndZeroOnlyForEqualTexts(
      @ForAll @AlphaChars @StringLength(max = 12) String a,
      @ForAll @AlphaChars @StringLength(max = 12) String b) {
    assertEquals(NearestName.distance(a, b), NearestName.distance(b, a));
    assertEquals(a.equals(b), NearestName.distance(a, b) == 0);
  }

  @Test
  void caseSpacesAndHyphensDoNotCount() {
    assertEquals(Optional.of("from_hz"), NearestName.among("From-Hz", List.of("to_hz", "from_hz")));
    assertEquals(
        Optional.of("Alder 3"), NearestName.among("alder3", List.of("Alder 13", "Alder 3")));
  }

  @Test
  void theEarlierWinsATie() {
    assertEquals(Optional.of("head 1"), NearestName.among("head 2", List.of("head 1", "head 3")));
  }

  /** Cut short, but only where one name alone goes on that way. */
  @Test
  void aBeginningIsAGuess() {
    List<String> keys = List.of("per_octave", "from_hz", "from_db", "resonance_search_hz");
    assertEquals(Optional.of("per_octave"), NearestName.among("per_oct", keys));
    assertEquals(Optional.of("resonance_search_hz"), NearestName.among("Resonance", keys));
    assertEquals(Optional.empty(), NearestName.among("from", keys));
    assertEquals(Optional.empty(), NearestName.among("pe", keys));
    assertEquals(Optional.empty(), NearestName.among("", List.of("per_octave")));
  }

  @Test
  void aThirdOfTheLettersIsTheFarthestGuess() {
    assertEquals(Optional.of("abcxyz"), NearestName.among("abcdez", List.of("abcxyz")));
    assertEquals(Optional.empty(), NearestName.among("abcdef", List.of("abcxyz")));
    assertEquals(Optional.empty(), NearestName.among("X", List.of("L", "R", "M")));
    assertEquals(Optional.empty(), NearestName.among("", List.of("L")));
  }
}
