package org.twinrig.report.html;

import java.util.List;
import org.twinrig.internal.Numbers;
import org.twinrig.translation.Translation;

/** Says which kinds a translation has too little evidence for. */
public final class TooFewUnits {
  private TooFewUnits() {}

  /**
   * One sentence per kind with fewer units than the study asks for.
   *
   * @param translation what was applied
   * @return possibly none
   */
  public static List<String> sentences(Translation translation) {
    return translation.kindsWithTooFewUnits().stream()
        .map(
            k ->
                "Too little evidence for "
                    + k.kind()
                    + ": the study has "
                    + Numbers.count(k.units(), "unit", "units")
                    + " and asks for "
                    + translation.minUnits()
                    + ", so nothing it translates is reliable.")
        .toList();
  }
}
