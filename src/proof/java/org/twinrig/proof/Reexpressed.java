package org.twinrig.proof;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Fixture;
import org.twinrig.capture.Side;
import org.twinrig.capture.Unit;
import org.twinrig.doubt.Doubt;
import org.twinrig.doubt.KindProfile;
import org.twinrig.doubt.UnitDoubts;
import org.twinrig.evidence.Region;
import org.twinrig.proof.Happening.NewGraph;
import org.twinrig.proof.Lab.Measured;
import org.twinrig.regression.BandOutcome;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Pairing;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;
import org.twinrig.translation.CatalogueEntry;
import org.twinrig.translation.Continuity;
import org.twinrig.translation.TransferFunction;
import org.twinrig.translation.TranslatedBand;
import org.twinrig.translation.TranslatedGraph;
import org.twinrig.translation.Translation;
import org.twinrig.translation.Translator;

/** One analysed study of any {@link Lab}, and the graphs of new units that it re-expresses. */
final class Reexpressed {
  private static final Fixture OLD = new Fixture("old", "Old fixture", "", 20, 20_000);
  private static final Fixture NEW = new Fixture("new", "New fixture", "", 20, 20_000);

  private final double[] hz;
  private final Settings settings;
  private final StudyOutcome outcome;
  private final Translation translation;
  private final Translator translator;

  /**
   * A band of a new unit.
   *
   * @param errorDb level of the re-capture minus predicted level, both pinned
   * @param offsetErrorDb the same of the plain offset
   */
  record Point(String kind, Region region, double errorDb, double offsetErrorDb, double halfDb) {
    boolean inside() {
      return Math.abs(errorDb) <= halfDb;
    }
  }

  /**
   * A graph of a new unit.
   *
   * @param points its bands
   * @param wholeInside whether the interval for the whole curve holds all of the re-capture;
   *     nothing as long as there is no such interval
   * @param outside whether the program says that the study has no unit like this one
   * @param falseStepDb the largest step between neighbouring bands that neither the re-capture nor
   *     the old graph has
   * @param offsetFalseStepDb the same of the plain offset
   * @param saidStepDb the largest step that the program itself says is neither the old graph's nor
   *     any unit's of the study: it does not know the re-capture
   */
  record Judged(
      List<Point> points,
      Optional<Boolean> wholeInside,
      boolean outside,
      double falseStepDb,
      double offsetFalseStepDb,
      double saidStepDb) {
    boolean insideAtEveryPoint() {
      return points.stream().allMatch(Point::inside);
    }
  }

  private Reexpressed(
      double[] hz, Settings settings, StudyOutcome outcome, Optional<Continuity> continuity) {
    this.hz = hz;
    this.settings = settings;
    this.outcome = outcome;
    this.translation = outcome.translation();
    this.translator = new Translator(translation, continuity);
  }

  /** The same study with what old graphs of its units say of the old fixture. */
  Reexpressed with(Continuity continuity) {
    return new Reexpressed(hz, settings, outcome, Optional.of(continuity));
  }

  /** Holds old graphs of the study's units, in their order, against its captures. */
  Continuity continuity(List<NewGraph> graphs) {
    List<Pairing.OnOldFixture> units =
        new Pairing(outcome.study()).onOldFixture(outcome.screening().accepted());
    List<Continuity.Compared> compared = new ArrayList<>();
    for (int u = 0; u < units.size(); u++) {
      Levels graph =
          settings
              .anchor()
              .pinnedLevels(Response.copyOf(hz, graphs.get(u).fromDb()), settings.grid())
              .orElseThrow();
      compared.add(
          Continuity.Compared.of(units.get(u), graph, graphs.get(u).seatings().orElseThrow()));
    }
    return Continuity.of(compared, translation);
  }

  /** Analyses a study of measured units, by kind. */
  static Reexpressed of(double[] hz, Settings settings, Map<String, List<Measured>> kinds) {
    List<Capture> captures = new ArrayList<>();
    Study study = study(hz, settings, kinds, captures);
    return new Reexpressed(hz, settings, Harness.analysed(study, captures), Optional.empty());
  }

  /** The units of one kind, paired as in a study of theirs alone. */
  static PairedUnits paired(double[] hz, Settings settings, String kind, List<Measured> units) {
    List<Capture> captures = new ArrayList<>();
    Study study = study(hz, settings, Map.of(kind, units), captures);
    return Harness.paired(study, captures).get(0);
  }

  /** What is doubted of the units of a study in which nothing is screened out. */
  static List<Doubt> unitDoubts(double[] hz, Settings settings, Map<String, List<Measured>> kinds) {
    List<Capture> captures = new ArrayList<>();
    Study study = study(hz, settings, kinds, captures);
    return UnitDoubts.withoutExplained(UnitDoubts.of(study, Harness.paired(study, captures)));
  }

  /** A study of measured units, by kind; its captures are added to a list. */
  private static Study study(
      double[] hz, Settings settings, Map<String, List<Measured>> kinds, List<Capture> captures) {
    List<Unit> units = new ArrayList<>();
    kinds.forEach(
        (kind, measured) -> {
          for (Measured unit : measured) {
            String name = "unit " + (units.size() + 1);
            units.add(new Unit(name, kind, Unit.Role.FIT, "", "", units.size() + 2));
            add(captures, hz, name, OLD, unit.from());
            add(captures, hz, name, NEW, unit.to());
          }
        });
    Path nowhere = Path.of(".");
    return new Study(
        nowhere,
        "simulated",
        OLD,
        NEW,
        units,
        captures.stream().map(Capture::entry).toList(),
        List.of(),
        Optional.empty(),
        settings,
        nowhere,
        List.of(),
        Map.of());
  }

  private static void add(
      List<Capture> captures, double[] hz, String unit, Fixture fixture, List<double[]> curves) {
    for (int seating = 1; seating <= curves.size(); seating++) {
      String file = unit + "/" + fixture.name() + "-" + seating + ".csv";
      CaptureEntry entry =
          new CaptureEntry(
              unit, fixture.name(), Side.M, seating, file, "", "", "", "", captures.size() + 2);
      captures.add(
          new Capture(entry, Response.copyOf(hz, curves.get(seating - 1)), "made:" + file));
    }
  }

  /** What old graphs of the study's kinds look like. */
  List<KindProfile> profiles() {
    return translation.kinds().stream().flatMap(k -> k.profile().stream()).toList();
  }

  /** Band levels of a curve on the laboratory's axis, pinned. */
  Levels pinned(double[] curveDb) {
    return settings
        .anchor()
        .pinnedLevels(Response.copyOf(hz, curveDb), settings.grid())
        .orElseThrow();
  }

  /** Re-expresses a graph and holds it against the re-capture. */
  Judged judge(NewGraph graph) {
    CatalogueEntry raw = CatalogueEntry.raw("new", graph.kind(), Lab.SEATINGS);
    CatalogueEntry entry =
        new CatalogueEntry(
            raw.graph(),
            raw.unit(),
            raw.kind(),
            raw.file(),
            new CatalogueEntry.Averaged(graph.seatings(), raw.averaged().sides()),
            raw.subtracted(),
            raw.smoothing(),
            raw.drive(),
            "",
            "",
            raw.line());
    // Pinned before it is re-expressed, so that its result is pinned as the re-capture is.
    Response old =
        settings
            .anchor()
            .pinned(Response.copyOf(hz, graph.fromDb()), settings.grid().perOctave())
            .orElseThrow();
    Levels measured =
        settings
            .anchor()
            .pinnedLevels(Response.copyOf(hz, graph.toDb()), settings.grid())
            .orElseThrow();
    TranslatedGraph result = translator.apply(entry, old);
    return judged(result, measured, translation.kind(graph.kind()).orElseThrow());
  }

  private static Judged judged(TranslatedGraph result, Levels measured, TransferFunction kind) {
    List<Point> points = new ArrayList<>();
    int bands = result.bands().size();
    double[] predicted = new double[bands];
    double[] byOffset = new double[bands];
    double[] old = new double[bands];
    boolean whole = true;
    boolean known = true;
    for (int b = 0; b < bands; b++) {
      TranslatedBand band = result.bands().get(b);
      TranslatedBand.Predicted level = band.predicted().orElseThrow();
      old[b] = band.fromDb().orElseThrow();
      predicted[b] = level.toDb();
      byOffset[b] = old[b] + meanDb(kind, b);
      double errorDb = measured.db(b) - predicted[b];
      OptionalDouble wholeHalf = Harness.wholeHalfDb(band);
      known &= wholeHalf.isPresent();
      whole &= Math.abs(errorDb) <= wholeHalf.orElse(0);
      Optional<Region> region =
          Arrays.stream(Region.values()).filter(r -> r.holds(band.band())).findFirst();
      if (region.isPresent()) {
        double offsetErrorDb = measured.db(b) - byOffset[b];
        points.add(new Point(kind.kind(), region.get(), errorDb, offsetErrorDb, level.halfDb()));
      }
    }
    return new Judged(
        points,
        known ? Optional.of(whole) : Optional.empty(),
        Harness.calledOutside(result),
        falseStepDb(predicted, old, measured),
        falseStepDb(byOffset, old, measured),
        result.largestStepDb());
  }

  private static double meanDb(TransferFunction kind, int band) {
    if (kind.bands().get(band).outcome() instanceof BandOutcome.Fitted fitted) {
      return fitted.mean().meanDb();
    }
    throw new IllegalStateException("a simulated study has a mean at every band");
  }

  /**
   * How far the largest step goes beyond what lies between those of the old graph and the truth.
   */
  static double falseStepDb(double[] made, double[] old, Levels measured) {
    double largest = 0;
    for (int b = 1; b < made.length; b++) {
      double step = made[b] - made[b - 1];
      double was = old[b] - old[b - 1];
      double is = measured.db(b) - measured.db(b - 1);
      double beyond = Math.max(step - Math.max(was, is), Math.min(was, is) - step);
      largest = Math.max(largest, beyond);
    }
    return largest;
  }
}
