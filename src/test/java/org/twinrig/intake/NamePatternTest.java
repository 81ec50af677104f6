package org.twinrig.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.AlphaChars;
import net.jqwik.api.constraints.CharRange;
import net.jqwik.api.constraints.Chars;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NamePatternTest {
  private static final NamePattern PATTERN =
      NamePattern.of("{kind}/{unit}_{fixture:plate|head}_{side}_{seating}.txt");

  @Test
  void aNameIsReadPartByPart() {
    assertEquals(
        List.of(
            Map.of(
                NamePattern.Part.KIND, "in-ear",
                NamePattern.Part.UNIT, "Alder 3",
                NamePattern.Part.FIXTURE, "plate",
                NamePattern.Part.SIDE, "L",
                NamePattern.Part.SEATING, "2")),
        PATTERN.readings("in-ear/Alder 3_plate_left_02.txt"));
  }

  @ParameterizedTest
  @CsvSource({
    "in-ear/Alder 3_table_L_2.txt, fixture not offered",
    "in-ear/Alder 3_plate_X_2.txt, no such side",
    "in-ear/Alder 3_plate_L_0.txt, seatings count from 1",
    "in-ear/Alder 3_plate_L_two.txt, not a number",
    "Alder 3_plate_L_2.txt, no folder",
    "a/in-ear/Alder 3_plate_L_2.txt, a folder too many",
    "in-ear/_plate_L_2.txt, no unit",
    "in-ear/ Alder_plate_L_2.txt, begins with a blank",
    "in-ear/Alder 3_plate_L_2.csv, other ending"
  })
  void aNameThatDoesNotFitIsNotRead(String name, String why) {
    assertEquals(List.of(), PATTERN.readings(name), why);
  }

  /** Each faults the pattern at another part. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '!',
      value = {
        "in-ear/Oak_1_table_L_2.txt!`in-ear/Oak_1_` fits `{kind}/{unit}_`, but fixture `table` is not `plate` or `head`",
        "in-ear/Oak_plate_X_2.txt!`in-ear/Oak_plate_` fits `{kind}/{unit}_{fixture:plate|head}_`, but side `X` is not L, R, M, left, right or mono; for other words write `X` itself in the place of {side} and give --side, one side after the other",
        "in-ear/Oak_plate_L_0.txt!`in-ear/Oak_plate_L_` fits `{kind}/{unit}_{fixture:plate|head}_{side}_`, but seating `0` is not a whole number from 1 to 9999",
        "in-ear/Oak_plate_L_12.csv!`in-ear/Oak_plate_L_12` fits `{kind}/{unit}_{fixture:plate|head}_{side}_{seating}`, but then `.txt` should follow, not `.csv`",
        "in-ear/Oak_plate_L_2!`in-ear/Oak_plate_L_2` fits `{kind}/{unit}_{fixture:plate|head}_{side}_{seating}`, but the name ends where `.txt` should follow",
        "in-ear/Oak_plate_!`in-ear/Oak_plate_` fits `{kind}/{unit}_{fixture:plate|head}_`, but nothing is left for {side}",
        "in-ear/Oak_tabel_L_2.csv!`in-ear/Oak_` fits `{kind}/{unit}_`, but fixture `tabel` is not `plate` or `head`",
        "in-ear/Oak.txt!`in-ear/` fits `{kind}/`, but `Oak.txt` has no `_` to end {unit}",
        "in-ear/ Oak_plate.txt!`in-ear/` fits `{kind}/`, but unit ` Oak` begins or ends with a blank",
        "in-ear/_plate.txt!`in-ear/` fits `{kind}/`, but `_plate.txt` leaves nothing for {unit} before `_`",
        "a/b/Oak_plate_L_2.txt!`a/` fits `{kind}/`, but `b` has no `_` to end {unit}, and no part reaches over a slash",
        "Oak_plate_L_2.txt!there is no `/` to end {kind}"
      })
  void aNameThatDoesNotFitSaysWhereItLeavesThePattern(String name, String told) {
    assertEquals(List.of(), PATTERN.readings(name));
    assertEquals(told, PATTERN.misfit(name).told());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '!',
      value = {
        "{unit}-{seating}!Oak-2.txt!`Oak-2` fits `{unit}-{seating}`, but the pattern ends where the name goes on with `.txt`",
        "old/{unit}.txt!new/Oak.txt!the name does not begin with `old/`",
        "{side:L|links}.txt!links.txt!side `links` is not L, R, M, left, right or mono; for other words write `links` itself in the place of {side} and give --side, one side after the other"
      })
  void aPatternOfAnotherShapeSaysWhereItIsLeft(String pattern, String name, String told) {
    assertEquals(told, NamePattern.of(pattern).misfit(name).told());
  }

  /** Whatever a name is, a pattern either reads it or says where it is left. */
  @Property(tries = 500)
  void everyNameThatIsNotReadIsExplained(
      @ForAll
          @CharRange(from = 'K', to = 'R')
          @Chars({'_', '/', ' ', '1', '.'})
          @StringLength(min = 1, max = 12)
          String name) {
    NamePattern pattern = NamePattern.of("{*}/{unit}_{side}{seating}{kind}");
    if (pattern.readings(name).isEmpty()) {
      String told = pattern.misfit(name).told();
      assertTrue(told.contains("`") || told.contains("{"), told);
    }
  }

  @Test
  void aNameWithTwoReadingsShowsBoth() {
    NamePattern loose = NamePattern.of("{unit}_{fixture}.txt");
    assertEquals(
        List.of(
            Map.of(NamePattern.Part.UNIT, "Oak", NamePattern.Part.FIXTURE, "1_head"),
            Map.of(NamePattern.Part.UNIT, "Oak_1", NamePattern.Part.FIXTURE, "head")),
        loose.readings("Oak_1_head.txt"));
  }

  @Test
  void aStarIsIgnoredHoweverItIsRead() {
    assertEquals(
        List.of(Map.of(NamePattern.Part.UNIT, "Oak")),
        NamePattern.of("{unit}-{*}{*}.txt").readings("Oak-20260101.txt"));
  }

  /** Whatever the parts are, a name made from them is read back into them. */
  @Property(tries = 200)
  void aNameMadeFromPartsIsReadBack(
      @ForAll @AlphaChars @StringLength(min = 1, max = 8) String unit,
      @ForAll @AlphaChars @StringLength(min = 1, max = 8) String kind,
      @ForAll @IntRange(min = 1, max = 9999) int seating) {
    assertEquals(
        List.of(
            Map.of(
                NamePattern.Part.KIND,
                kind,
                NamePattern.Part.UNIT,
                unit,
                NamePattern.Part.FIXTURE,
                "head",
                NamePattern.Part.SIDE,
                "R",
                NamePattern.Part.SEATING,
                Integer.toString(seating))),
        PATTERN.readings(kind + "/" + unit + "_head_R_" + seating + ".txt"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '!',
      value = {
        "{unti}.txt!{unti} is not a part of a name; the parts are {unit}, {fixture}, {side}, {seating}, {kind}, {session} and {*}",
        "{unit}_{unit}.txt!{unit} stands twice; write {*} where it is repeated",
        "{unit.txt!a brace is not closed in `{unit.txt`",
        "{side:L|}.txt!{side:L|} offers an empty text"
      })
  void aWrongPatternSaysWhatIsWrong(String pattern, String message) {
    assertEquals(
        message,
        assertThrows(IllegalArgumentException.class, () -> NamePattern.of(pattern)).getMessage());
  }
}
