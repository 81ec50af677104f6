package org.twinrig.report.html;

import java.util.List;
import java.util.stream.Collectors;
import org.twinrig.internal.Numbers;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Decision;
import org.twinrig.translation.TransferFunction;
import org.twinrig.translation.Translation;

/** How a catalogue was handled, in words. */
final class CatalogueRules {
  private CatalogueRules() {}

  /** in = out + refused. */
  static String lead(Translation translation, CatalogueRun.Outcome done) {
    return Numbers.count(done.rows(), "graph", "graphs")
        + (done.rows() == 1 ? " made on " : ", all made on ")
        + translation.origin().from()
        + ", read as if made on "
        + translation.origin().to()
        + ". In "
        + done.rows()
        + " = out "
        + done.lines().size()
        + " + refused "
        + done.refused()
        + ".";
  }

  static List<String> of(Translation translation) {
    Decision.Rule rule = Decision.Rule.standard();
    return List.of(
        "A graph is to be measured again when more than "
            + Numbers.fixed(rule.allowedOctaves(), 1)
            + " octaves between "
            + Numbers.hertz(rule.fromHz())
            + " and "
            + Numbers.hertz(rule.toHz())
            + " are unreliable or missing: what it has lost. It is published when every band it"
            + " covers is reliable, and published with marks otherwise.",
        unknown(translation),
        "A graph of a kind the study does not have is not translated: every band it covers is"
            + " unreliable.",
        "Where the number of averaged seatings is not given it is taken as one, which widens the"
            + " interval.",
        "A compensated graph has its reference added back first; the result is the raw graph on the"
            + " new fixture.");
  }

  private static String unknown(Translation translation) {
    String candidates =
        translation.candidatesForUnknown().stream()
            .map(TransferFunction::kind)
            .collect(Collectors.joining(", "));
    return candidates.isEmpty()
        ? "No kind of the study has enough units, so graphs of unknown kind are not translated."
        : "A graph of unknown kind is held to be of one of the kinds with enough units ("
            + candidates
            + "); its interval covers it whichever of them it is.";
  }
}
