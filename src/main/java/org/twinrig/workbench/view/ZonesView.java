package org.twinrig.workbench.view;

import java.util.List;
import java.util.Optional;
import org.twinrig.report.html.Plate;
import org.twinrig.report.html.Swatch;

/**
 * Why the bands of a kind are marked.
 *
 * @param frame around it
 * @param kind its name; empty when there is none to show
 * @param kinds ways to all kinds
 * @param zones runs of bands with the same mark
 * @param band the band that was chosen
 * @param plates the error budget drawn
 */
public record ZonesView(
    Frame frame,
    String kind,
    List<Link> kinds,
    Strip strip,
    List<Zone> zones,
    Optional<Band> band,
    List<Plate> plates) {

  public ZonesView {
    kinds = List.copyOf(kinds);
    zones = List.copyOf(zones);
    plates = List.copyOf(plates);
  }

  /**
   * A zone.
   *
   * @param range the way to its worst band
   * @param octaves its width
   * @param swatch its mark
   * @param why its reasons
   */
  public record Zone(Link range, String octaves, Swatch swatch, String why) {}

  /**
   * A band looked at closely.
   *
   * @param title its frequency and mark
   * @param swatch its mark
   * @param sentences the estimate, the model and the reasons
   * @param units their differences
   * @param budget where the error comes from
   * @param previous the band below
   * @param next the band above
   */
  public record Band(
      String title,
      Swatch swatch,
      List<String> sentences,
      List<UnitRow> units,
      List<BudgetRow> budget,
      Optional<Link> previous,
      Optional<Link> next) {
    public Band {
      sentences = List.copyOf(sentences);
      units = List.copyOf(units);
      budget = List.copyOf(budget);
    }
  }

  /**
   * A unit at a band.
   *
   * @param unit the way to its page
   * @param from its level on the old fixture, dB
   * @param to its level on the new fixture, dB
   * @param difference between them, dB
   * @param departure from the mean, dB
   * @param seatings on the old and the new fixture
   */
  public record UnitRow(
      Link unit, String from, String to, String difference, String departure, String seatings) {}

  /**
   * A source of error at a band.
   *
   * @param source its name
   * @param standardDb standard uncertainty in dB
   * @param share of the variance in per cent
   */
  public record BudgetRow(String source, String standardDb, String share) {}
}
