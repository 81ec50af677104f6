package org.twinrig.report.figure;

/**
 * What every drawing carries.
 *
 * @param kind the kind of headphone
 * @param units how many units stand behind it
 * @param confidence of the intervals
 * @param fingerprint of the study
 */
public record Caption(String kind, int units, double confidence, String fingerprint) {

  String counted() {
    return kind + ", n = " + units + (units == 1 ? " unit" : " units");
  }

  String percent() {
    return Math.round(100 * confidence) + " %";
  }
}
