package org.twinrig.translation;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.twinrig.response.Smoothing;

/**
 * The way old graphs are taken: over one pair of fixtures, or over several, each leg with its
 * study's transfer. For graphs smoothed more than the captures there may be legs whose captures
 * were smoothed alike before the fit.
 */
public final class Translations {
  private final List<Translation> legs;
  private final Map<Smoothing, List<Translation>> alike;

  private Translations(List<Translation> legs, Map<Smoothing, List<Translation>> alike) {
    this.legs = List.copyOf(legs);
    this.alike = Map.copyOf(alike);
  }

  /**
   * A way over one or several legs.
   *
   * @param legs in the order they are walked
   * @throws IllegalArgumentException when there is no leg, or the legs have other bands or another
   *     confidence
   */
  public static Translations of(List<Translation> legs) {
    if (legs.isEmpty()) {
      throw new IllegalArgumentException("a way needs at least one leg");
    }
    for (Translation leg : legs) {
      if (!leg.grid().equals(legs.get(0).grid())) {
        throw new IllegalArgumentException("the studies have other bands");
      }
      if (leg.confidence() != legs.get(0).confidence()) {
        throw new IllegalArgumentException("the studies have another confidence");
      }
    }
    return new Translations(legs, Map.of());
  }

  /**
   * The same way with legs for graphs smoothed more than the captures.
   *
   * @param smoothing of the graphs
   * @param smoothed the legs, their captures smoothed alike before the fit
   */
  public Translations withAlike(Smoothing smoothing, List<Translation> smoothed) {
    Map<Smoothing, List<Translation>> more = new HashMap<>(alike);
    more.put(smoothing, List.copyOf(smoothed));
    return new Translations(legs, more);
  }

  /**
   * The same way with legs for all graphs smoothed more than the captures.
   *
   * @param smoothings of the graphs
   * @param smoothed gives the legs for one of them, their captures smoothed alike before the fit;
   *     asked only where the graphs are smoothed more
   */
  public Translations withAlike(
      Collection<Smoothing> smoothings, Function<Smoothing, List<Translation>> smoothed) {
    Translations way = this;
    for (Smoothing smoothing : smoothings) {
      if (smoothing.widerThan(first().handling().captureSmoothing())) {
        way = way.withAlike(smoothing, smoothed.apply(smoothing));
      }
    }
    return way;
  }

  /** The legs: one or more. */
  public List<Translation> legs() {
    return legs;
  }

  /**
   * The legs for graphs of a smoothing, their captures smoothed alike.
   *
   * @param smoothing of the graphs
   * @return the legs; nothing when the captures were not at hand
   */
  Optional<List<Translation>> alike(Smoothing smoothing) {
    return Optional.ofNullable(alike.get(smoothing));
  }

  /** The first leg, from the fixture the old graphs were made on. */
  public Translation first() {
    return legs.get(0);
  }

  /** The way as one: what reports name: the last leg, with the names and fingerprints of all. */
  public Translation whole() {
    Translation last = legs.get(legs.size() - 1);
    if (legs.size() == 1) {
      return last;
    }
    Translation.Origin origin =
        new Translation.Origin(
            joined(", then ", t -> t.origin().title()),
            first().origin().from(),
            last.origin().to(),
            last.origin().anchor(),
            joined(" + ", t -> t.origin().fingerprint()));
    Translation.Handling handling =
        new Translation.Handling(
            first().handling().captureSmoothing(),
            first().handling().sidesPerSeating(),
            first().handling().publishing(),
            first().handling().oldReference(),
            last.handling().newReference());
    return new Translation(
        origin,
        last.anchor(),
        last.grid(),
        last.confidence(),
        last.tolerance(),
        last.minUnits(),
        handling,
        last.kinds());
  }

  private String joined(String link, java.util.function.Function<Translation, String> name) {
    return legs.stream().map(name).collect(Collectors.joining(link));
  }
}
