package org.twinrig.cli;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.twinrig.problem.Findings;
import org.twinrig.translation.CatalogueReader;
import picocli.CommandLine;

/**
 * Which part of a catalogue a machine takes.
 *
 * @param number from 1
 * @param of how many parts there are
 */
record CataloguePart(int number, int of) {
  static final CataloguePart WHOLE = new CataloguePart(1, 1);

  private static final Pattern FORM = Pattern.compile("([1-9][0-9]{0,5})/([1-9][0-9]{0,5})");

  Findings<CatalogueReader.Catalogue> of(Findings<CatalogueReader.Catalogue> whole) {
    return of == 1 ? whole : CatalogueReader.part(whole, number, of);
  }

  /** Reads {@code 2/5}. */
  static final class Converter implements CommandLine.ITypeConverter<CataloguePart> {
    @Override
    public CataloguePart convert(String text) {
      Matcher form = FORM.matcher(text);
      if (form.matches()) {
        int number = Integer.parseInt(form.group(1));
        int of = Integer.parseInt(form.group(2));
        if (number <= of) {
          return new CataloguePart(number, of);
        }
      }
      throw new CommandLine.TypeConversionException(
          "write the number of the part and how many there are, such as 2/5");
    }
  }
}
