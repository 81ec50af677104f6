package org.twinrig.report.html;

import java.util.List;

/** The method in few lines, with sources. */
final class Method {
  private Method() {}

  static List<String> lines() {
    return List.of(
        "Bands are fractional octaves after IEC 61260-1:2014, base ten. A band's level is the mean"
            + " square of the capture over the band; a band the capture does not wholly cover has none.",
        "Every capture is corrected by its session's calibrator (and, where the lab asks for it, by the"
            + " drift of its check unit, judged by control charts, NIST/SEMATECH 6.3.2) and pinned to the anchor by itself,"
            + " before any averaging. Sides, then seatings, are averaged in dB.",
        "Captures are screened within their kind on their fixture. A seal is judged against the unit's"
            + " best seating, with the scatter of differences within units (Rousseeuw and Croux 1993); an"
            + " odd seating against the unit's median curve, with a fence (Tukey 1977). A unit departs"
            + " from its kind when its leave-one-out studentised difference exceeds, at the level of"
            + " 0.01, a bound for all bands and units at once (Naiman 1986, Worsley 1994).",
        "Each kind of headphone is analysed on its own. What is counted is units, not captures.",
        "The mean transfer is a random-effects mean over units; the variance between units is found"
            + " by restricted maximum likelihood (Viechtbauer 2005).",
        "Its interval per band follows Hartung (1999) and Sidik and Jonkman (2002), with Student's t"
            + " on n − 1 degrees of freedom.",
        "The interval for all bands at once comes from sign flips of whole units (Canay, Romano and"
            + " Shaikh 2017), bounded by Bonferroni's.",
        "A single unit is predicted by its old level plus the mean transfer; where that gains, band"
            + " by band, also by what the unit's old levels up to half an octave around say (ridge"
            + " regression, Hoerl and Kennard 1970). Its error is measured by leaving each unit out in"
            + " turn and choosing anew without it (Stone 1974).",
        "The prediction interval is t times the root mean square of those errors: where a new"
            + " measurement of one unit, averaged over as many seatings, is expected. It widens for old"
            + " graphs averaged over fewer seatings.",
        "The error budget combines the variance between units, between seatings on either fixture and of"
            + " the mean, and the calibrators' limits where no anchor cancels them, after JCGM 100:2008,"
            + " with effective degrees of freedom by Welch and Satterthwaite (G.4.1) that are not cut to"
            + " whole numbers; those of the variance between units are Satterthwaite's (1946) for a"
            + " difference of variances. A Monte Carlo run after JCGM 101:2008 checks one band per"
            + " octave.",
        "Old graphs can stand where two one-sided tests (Schuirmann 1987) put the mean difference within"
            + " the limit of equivalence: band by band, and at all bands at once where the simultaneous"
            + " interval lies within it.",
        "Features that units share are local extremes of the mean minus its own smooth over one octave"
            + " whose simultaneous interval excludes 0 and whose sign four units in five share; place and"
            + " width have expanded percentile intervals from resamples of whole units (Hesterberg 2015).",
        "Coverage of prediction intervals is a share of units, with the exact interval of Clopper and"
            + " Pearson (1934). Ranks are compared by Spearman's coefficient, with the variance of Bonett"
            + " and Wright (2000), and Kendall's tau-b, with that of Fieller, Hartley and Pearson (1957).",
        "Marks follow from the prediction half-width and the tolerances, and are capped outside the"
            + " range of the ear simulators, in zones the lab declared and where a resonance moves.",
        "Zones are runs of bands with one mark; runs narrower than 1/6 octave join the worse"
            + " neighbour, unless that would hide a worse mark. Their edges have ranges from resamples"
            + " of whole units (Davison and Hinkley 1997).");
  }

  /** Where the method comes from, as named in {@link #lines}. */
  static List<String> sources() {
    return List.of(
        "IEC 61260-1:2014, Electroacoustics: octave-band and fractional-octave-band filters, part 1.",
        "JCGM 100:2008, Evaluation of measurement data: guide to the expression of uncertainty in"
            + " measurement.",
        "NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2 and 6.3.2.4 (control charts), 1.3.5.8"
            + " (interval of a standard deviation).",
        "JCGM 101:2008, Supplement 1 to it: propagation of distributions using a Monte Carlo method.",
        "Bonett and Wright 2000, Psychometrika 65:23.",
        "Canay, Romano and Shaikh 2017, Econometrica 85:1013.",
        "Clopper and Pearson 1934, Biometrika 26:404.",
        "Davison and Hinkley 1997, Bootstrap Methods and their Application, Cambridge University Press.",
        "Fieller, Hartley and Pearson 1957, Biometrika 44:470.",
        "Hartung 1999, Biometrical Journal 41:901.",
        "Hesterberg 2015, The American Statistician 69:371.",
        "Hoerl and Kennard 1970, Technometrics 12:55.",
        "Naiman 1986, Annals of Statistics 14:896.",
        "Rousseeuw and Croux 1993, Journal of the American Statistical Association 88:1273.",
        "Satterthwaite 1946, Biometrics Bulletin 2:110.",
        "Schuirmann 1987, Journal of Pharmacokinetics and Biopharmaceutics 15:657.",
        "Sidik and Jonkman 2002, Statistics in Medicine 21:3153.",
        "Stone 1974, Journal of the Royal Statistical Society B 36:111.",
        "Tukey 1977, Exploratory Data Analysis, Addison-Wesley.",
        "Viechtbauer 2005, Journal of Educational and Behavioral Statistics 30:261.",
        "Worsley 1994, Advances in Applied Probability 26:13.");
  }
}
