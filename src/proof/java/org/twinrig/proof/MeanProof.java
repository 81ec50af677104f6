package org.twinrig.proof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.stat.StatUtils;
import org.twinrig.evidence.ClopperPearson;
import org.twinrig.proof.Lab.Build;
import org.twinrig.proof.Lab.Measured;
import org.twinrig.regression.MeanCurve;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;
import org.twinrig.study.Settings;

/**
 * How often the interval of a kind's mean that is said to hold at all bands at once holds the whole
 * true mean, on both simulators. The truth is the mean of so many units that its own error is small
 * beside any study's: with 1,500 of them a seventh of that of 30.
 *
 * @param unitsPerKind how many units of each kind a study has; one or more different numbers
 * @param unitsOfTruth how many units the truth is taken from
 */
record MeanProof(List<Integer> unitsPerKind, int unitsOfTruth) implements Proof<MeanProof.Row> {
  private static final double CONFIDENCE = 0.95;

  /** At least this share of studies, for each simulator, kind and number of units. */
  private static final double LEAST = 0.93;

  private static final int BATCH = 100;

  /**
   * What many studies gave.
   *
   * @param whole share of studies whose interval holds the true mean at every band
   * @param halfDb mean half-width of the interval, dB
   */
  record Row(String lab, String kind, int units, ClopperPearson whole, double halfDb) {}

  /** Whether one study's interval holds everything, and its mean half-width, dB. */
  private record Held(boolean whole, double halfDb) {}

  @Override
  public List<Row> rows(Harness harness) {
    List<Row> rows = new ArrayList<>();
    for (Lab lab : List.of(new ChainLab(harness), new CurveLab(harness.seed()))) {
      for (int kind = 0; kind < Lab.KINDS.size(); kind++) {
        rows.addAll(rows(harness, lab, kind));
      }
    }
    return rows;
  }

  private List<Row> rows(Harness harness, Lab lab, int kind) {
    String label = Lab.KINDS.get(kind);
    double[] truth = new double[Settings.defaults().grid().size()];
    for (int batch = 0; batch < unitsOfTruth / BATCH; batch++) {
      double[][] d = differences(lab, lab.measure(label, BATCH, Build.USUAL, -1 - batch, kind));
      Arrays.setAll(truth, b -> truth[b] + StatUtils.sum(d[b]) / (unitsOfTruth / BATCH * BATCH));
    }
    List<Row> rows = new ArrayList<>();
    for (int units : unitsPerKind) {
      List<Held> studies =
          harness.each(
              lab.word() + ", " + label + ", " + units + " units",
              study ->
                  held(
                      differences(lab, lab.measure(label, units, Build.USUAL, study, units, kind)),
                      truth));
      rows.add(
          new Row(
              lab.word(),
              label,
              units,
              ClopperPearson.of(
                  (int) studies.stream().filter(Held::whole).count(), studies.size(), CONFIDENCE),
              studies.stream().mapToDouble(Held::halfDb).average().orElseThrow()));
    }
    return rows;
  }

  /** {@code [band][unit]}: what each unit's level differs by between the fixtures, dB. */
  private static double[][] differences(Lab lab, List<Measured> units) {
    double[][] d = new double[Settings.defaults().grid().size()][units.size()];
    for (int i = 0; i < units.size(); i++) {
      add(lab, units.get(i).from(), -1.0 / units.get(i).from().size(), d, i);
      add(lab, units.get(i).to(), 1.0 / units.get(i).to().size(), d, i);
    }
    return d;
  }

  private static void add(Lab lab, List<double[]> curves, double factor, double[][] d, int unit) {
    Settings settings = Settings.defaults();
    for (double[] curve : curves) {
      Levels levels =
          settings
              .anchor()
              .pinnedLevels(Response.copyOf(lab.hz(), curve), settings.grid())
              .orElseThrow();
      for (int b = 0; b < d.length; b++) {
        d[b][unit] += factor * levels.db(b);
      }
    }
  }

  /**
   * All units have equally many seatings, so that the random-effects mean is the plain one, its
   * standard error that of a plain mean.
   */
  private static Held held(double[][] d, double[] truth) {
    int n = d[0].length;
    double[] errors =
        Arrays.stream(d).mapToDouble(b -> Math.sqrt(StatUtils.variance(b) / n)).toArray();
    double[] freedom = new double[d.length];
    Arrays.fill(freedom, n - 1);
    double[] halves =
        new MeanCurve(CONFIDENCE)
            .simultaneousHalfDb(errors, freedom, Settings.defaults().grid().perOctave());
    boolean whole = true;
    for (int b = 0; b < d.length; b++) {
      whole &= Math.abs(StatUtils.mean(d[b]) - truth[b]) <= halves[b];
    }
    return new Held(whole, StatUtils.mean(halves));
  }

  @Override
  public Table<Row> table() {
    return new Table<Row>()
        .text("simulator", Row::lab)
        .text("kind", Row::kind)
        .count("units", Row::units)
        .count("studies", r -> r.whole.trials())
        .share("whole_mean_held", r -> Optional.of(r.whole))
        .number("half_db", Row::halfDb);
  }

  @Override
  public List<String> broken(Row row) {
    return row.whole.share() >= LEAST
        ? List.of()
        : List.of("holds the whole mean in less than 93 % of the studies");
  }
}
