package org.twinrig.simulation;

import java.util.Locale;
import org.twinrig.capture.Fixture;

/**
 * Which two fixtures a simulated laboratory owns.
 *
 * <p>All but {@link #PLATE_TO_HEAD} are two heads of one build that differ, for units with cups, in
 * what their canal entrance does near 8 to 9 kHz and in nothing else that is lawful: what is
 * planted there is the only feature of their mean transfer. Units still come out differently on the
 * two, as on any pair of fixtures. Under tips the canal entrance plays no part.
 */
public enum FixturePair {
  /** A flat plate and a head with soft cheeks, as laboratories own them. */
  PLATE_TO_HEAD,
  /** Two heads without a feature: their true mean transfer is 0 at every band. */
  ALIKE,
  /** The new one has a peak of 3 dB at 8 kHz. */
  PEAK_ON_NEW,
  /** The old one has a notch of 7 dB at 9 kHz. */
  NOTCH_ON_OLD,
  PEAK_AND_NOTCH;

  private static final Mode PEAK = new Mode(8000, 4.0, 3.0);
  private static final Mode NO_PEAK = new Mode(8000, 4.0, 0);
  private static final Mode NOTCH = new Mode(9000, 6.0, -7.0);
  private static final Mode NO_NOTCH = new Mode(9000, 6.0, 0);

  /** The pair as tables write it: for example {@code peak on new}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  SimulatedFixture from() {
    return switch (this) {
      case PLATE_TO_HEAD -> SimulatedFixture.plate();
      case ALIKE, PEAK_ON_NEW -> old(NO_PEAK);
      case NOTCH_ON_OLD, PEAK_AND_NOTCH -> old(NOTCH);
    };
  }

  SimulatedFixture to() {
    return switch (this) {
      case PLATE_TO_HEAD -> SimulatedFixture.head();
      case ALIKE -> head(NO_PEAK);
      case NOTCH_ON_OLD -> head(NO_NOTCH);
      case PEAK_ON_NEW, PEAK_AND_NOTCH -> head(PEAK);
    };
  }

  private static SimulatedFixture head(Mode entrance) {
    SimulatedFixture head = SimulatedFixture.head();
    return head.variant(head.identity(), entrance);
  }

  private static SimulatedFixture old(Mode entrance) {
    return SimulatedFixture.head()
        .variant(
            new Fixture(
                "old-head", "Older head with soft cheeks", "ITU-T P.57 type 4.3", 20, 20_000),
            entrance);
  }
}
