package org.twinrig.translation;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.twinrig.doubt.Doubt;
import org.twinrig.doubt.GraphDoubts;
import org.twinrig.doubt.KindProfile;
import org.twinrig.response.Response;
import org.twinrig.response.Smoothing;
import org.twinrig.study.ReferenceCurve;
import org.twinrig.translation.GraphFiles.OldGraphFile;

/** Holds graphs against the first study of a chain: whether they are what the catalogue says. */
final class GraphClaims {
  /** Where the density of points matters, and no graph is short of them at an end. */
  private static final double FROM_HZ = 200;

  private static final double TO_HZ = 8000;

  private final Translation study;
  private final Optional<Continuity> continuity;
  private final GraphDoubts doubts;

  GraphClaims(Chain chain, GraphFiles files, List<CatalogueEntry> entries) {
    this.study = chain.first();
    this.continuity = chain.continuity();
    this.doubts = new GraphDoubts(profiles(study), files.references(entries));
  }

  /** What old graphs look like, of the kinds of which that is known. */
  static List<KindProfile> profiles(Translation study) {
    return study.kinds().stream().flatMap(k -> k.profile().stream()).toList();
  }

  /** The doubts about a graph; none about one that does not reach the anchor. */
  List<Doubt> of(OldGraphFile file) {
    CatalogueEntry entry = file.entry();
    Smoothing captures = study.handling().captureSmoothing();
    Smoothing graph = entry.statedSmoothing();
    Response raw = captures.widerThan(graph) ? captures.apply(file.raw()) : file.raw();
    GraphDoubts.Claims claims =
        new GraphDoubts.Claims(
            entry.graph(),
            entry.file(),
            entry.kind(),
            file.before().map(ReferenceCurve::file).orElse(""),
            entry.averaged().seatings().isPresent()
                ? OptionalDouble.of(
                    entry.averaged().asSeatingsOf(study.handling().sidesPerSeating()))
                : OptionalDouble.empty(),
            graph.widerThan(captures) ? graph : Smoothing.NONE,
            pointsPerOctave(file.published()));
    return OldGraph.of(raw, study)
        .meanOfDecibels(entry, study)
        .pinned()
        .map(levels -> doubts.of(claims, levels, b -> scatterDb(entry.kind(), b)))
        .orElse(List.of());
  }

  private double scatterDb(String kind, int band) {
    return continuity.map(c -> c.added(kind, band).standardDb()).orElse(0.0);
  }

  private static double pointsPerOctave(Response curve) {
    double[] within =
        IntStream.range(0, curve.size())
            .mapToDouble(curve::frequencyHz)
            .filter(hz -> hz >= FROM_HZ && hz <= TO_HZ)
            .toArray();
    int last = within.length - 1;
    return last < 1 ? 0 : last / (Math.log(within[last] / within[0]) / Math.log(2));
  }
}
