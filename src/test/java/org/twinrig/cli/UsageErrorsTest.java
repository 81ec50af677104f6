package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A slip in a command line costs two lines, and the first says what it was. */
class UsageErrorsTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '!',
      value = {
        "stduy lab!there is no command `stduy`; did you mean `study`?!twinrig --help",
        "--hlep!`--hlep` is no option of `twinrig`; did you mean `--help`?!twinrig --help",
        "study --hlep!`--hlep` is no option of `study`; did you mean `--help`?!twinrig study --help",
        "study --hlep=3 lab!`--hlep` is no option of `study`; did you mean `--help`?!twinrig study --help",
        "gather x --patern {unit} --out y!`--patern` is no option of `gather`; did you mean `--pattern`?!twinrig gather --help",
        "study -w lab!`-w` is no option of `study`!twinrig study --help",
        "study my lab!`lab` is one argument too many for `study`; put quotes around a name that holds a blank!twinrig study --help",
        "study lab --threads 0!--threads must be 1 or more, but is 0!twinrig study --help",
        "gather files --out x.csv!Missing required option: '--pattern=PATTERN'!twinrig gather --help"
      })
  void theSentenceAndWhereHelpIs(String typed, String sentence, String help) {
    Ran ran = Ran.of(typed.split(" "));
    assertEquals(2, ran.status());
    assertEquals(sentence + "\nSee `" + help + "`.\n", ran.err());
    assertEquals("", ran.out());
  }

  /** The launcher knows how the program was started. */
  @Test
  void helpIsNamedAsTheUserTypesIt() {
    String before = System.getProperty("twinrig.called");
    System.setProperty("twinrig.called", "./twinrig");
    try {
      assertEquals(
          "`--hlep` is no option of `study`; did you mean `--help`?\nSee `./twinrig study --help`.\n",
          Ran.of("study", "--hlep").err());
    } finally {
      if (before == null) {
        System.clearProperty("twinrig.called");
      } else {
        System.setProperty("twinrig.called", before);
      }
    }
  }
}
