package org.twinrig.analysis;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.twinrig.band.FrequencyRange;
import org.twinrig.doubt.KindProfile;
import org.twinrig.regression.KindEstimate;
import org.twinrig.regression.TransferEstimator;
import org.twinrig.reliability.MarkRule;
import org.twinrig.reliability.ResonanceWander;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Setting;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;
import org.twinrig.translation.TransferFunction;

/** The estimate of one kind, and its marks. */
record MarkedKind(KindEstimate estimate, MarkRule rule, TransferFunction transfer) {

  static MarkedKind of(
      Study study, PairedUnits paired, List<ResonanceWander> wanders, int threads) {
    Settings settings = study.settings();
    KindEstimate estimate =
        new TransferEstimator(settings.confidence(), settings.get(Setting.MODEL), threads)
            .fit(paired);
    List<FrequencyRange> wandering = wanders.stream().flatMap(w -> w.zone().stream()).toList();
    MarkRule rule =
        new MarkRule(settings, List.of(study.from(), study.to()), wandering, Map.of())
            .on(paired, estimate);
    return new MarkedKind(
        estimate,
        rule,
        new TransferFunction(
            paired.kind(),
            paired.units(),
            paired.grid(),
            rule.mark(estimate.bands()),
            Optional.of(KindProfile.of(paired))));
  }
}
