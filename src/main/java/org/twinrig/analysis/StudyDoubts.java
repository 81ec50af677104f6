package org.twinrig.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.twinrig.capture.Unit;
import org.twinrig.doubt.Answers;
import org.twinrig.doubt.Doubt;
import org.twinrig.doubt.FixtureAndTime;
import org.twinrig.doubt.SpecimenChanged;
import org.twinrig.doubt.UnitDoubts;
import org.twinrig.internal.Numbers;
import org.twinrig.regression.BandOutcome;
import org.twinrig.reliability.Mark;
import org.twinrig.screening.Screening;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Pairing;
import org.twinrig.study.Study;
import org.twinrig.translation.TransferFunction;

/**
 * All checks of what a study claims, and what its results would be without the units that are
 * doubted: their kind is fitted again from the others.
 */
final class StudyDoubts {
  private final Study study;
  private final Screening screening;
  private final List<KindOutcome> kinds;
  private final int threads;

  StudyDoubts(Study study, Screening screening, List<KindOutcome> kinds, int threads) {
    this.study = study;
    this.screening = screening;
    this.kinds = kinds;
    this.threads = threads;
  }

  /** The doubts, with what the lab answers. */
  List<Doubt> found() {
    List<Doubt> doubts = new ArrayList<>();
    FixtureAndTime.of(study).ifPresent(doubts::add);
    doubts.addAll(SpecimenChanged.of(study));
    doubts.addAll(UnitDoubts.of(study, kinds.stream().map(KindOutcome::paired).toList()));
    return Answers.of(
        study, UnitDoubts.withoutExplained(doubts).stream().map(this::withChanges).toList());
  }

  private Doubt withChanges(Doubt doubt) {
    List<String> units =
        switch (doubt.subject()) {
          case UNIT -> List.of(doubt.name());
          case PAIR -> List.of(doubt.name().split(" / ", -1));
          case CAPTURE, SESSION, STUDY, GRAPH, CATALOGUE -> List.of();
        };
    return kinds.stream()
        .filter(kind -> kind.paired().units().stream().anyMatch(units::contains))
        .findFirst()
        .flatMap(kind -> without(units, kind))
        .map(doubt::changing)
        .orElse(doubt);
  }

  /** What a kind becomes without units, in a sentence; nothing where it cannot be fitted then. */
  private Optional<String> without(List<String> units, KindOutcome kind) {
    Optional<PairedUnits> rest =
        new Pairing(study)
                .pair(
                    screening.accepted().stream()
                        .filter(a -> !units.contains(a.entry().unit()))
                        .toList(),
                    Unit.Role.FIT)
                .stream()
                .filter(p -> p.kind().equals(kind.kind()))
                .findFirst();
    return rest.map(paired -> MarkedKind.of(study, paired, kind.wanders(), threads).transfer())
        .flatMap(then -> change(units, kind.transfer(), then));
  }

  private static Optional<String> change(
      List<String> units, TransferFunction now, TransferFunction then) {
    double squares = 0;
    int bands = 0;
    for (int b = 0; b < now.bands().size(); b++) {
      if (now.bands().get(b).outcome() instanceof BandOutcome.Fitted was
          && then.bands().get(b).outcome() instanceof BandOutcome.Fitted is) {
        double by = is.mean().meanDb() - was.mean().meanDb();
        squares += by * by;
        bands++;
      }
    }
    return bands == 0
        ? Optional.empty()
        : Optional.of(
            "Without %s the mean transfer moves by %s dB (RMS), and %s would be reliable, %s unreliable (now %s and %s)."
                .formatted(
                    units.size() == 1 ? "it" : "them",
                    Numbers.fixed(Math.sqrt(squares / bands), 2),
                    octaves(then, Mark.RELIABLE) + " octaves",
                    octaves(then, Mark.UNRELIABLE),
                    octaves(now, Mark.RELIABLE),
                    octaves(now, Mark.UNRELIABLE)));
  }

  private static String octaves(TransferFunction kind, Mark mark) {
    return Numbers.fixed(kind.octaves(mark), 1);
  }
}
