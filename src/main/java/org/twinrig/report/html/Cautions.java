package org.twinrig.report.html;

import java.util.List;

/** What every report tells its readers to be careful about. */
public final class Cautions {
  private Cautions() {}

  /**
   * The cautions.
   *
   * @return full sentences
   */
  public static List<String> all() {
    return List.of(
        "A graph is not a listener. Fit, head, pads and the spread between units move the same bands"
            + " that the marks show. Do not equalise by narrow features inside a marked zone.",
        "Equalisation that boosts raises exposure. Start low and watch the level; hearing damage is"
            + " permanent. Follow the local rules on noise exposure. Where someone's hearing is"
            + " assessed or a hearing device is fitted, that is the work of licensed professionals,"
            + " and this report is not for it.",
        "A calibrator or a test sweep can exceed 94 to 114 dB SPL at the ear simulator. Never run one"
            + " with the transducer on a person.");
  }
}
