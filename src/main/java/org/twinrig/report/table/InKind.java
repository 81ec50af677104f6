package org.twinrig.report.table;

import java.util.function.Function;
import java.util.stream.Stream;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;

/**
 * A row about something of a kind.
 *
 * @param <T> what the row is about
 */
record InKind<T>(KindOutcome kind, T it) {
  /** Rows for all kinds of a study, in its order. */
  static <T> Stream<InKind<T>> of(StudyOutcome study, Function<KindOutcome, Stream<T>> rows) {
    return study.kinds().stream().flatMap(k -> rows.apply(k).map(it -> new InKind<>(k, it)));
  }
}
