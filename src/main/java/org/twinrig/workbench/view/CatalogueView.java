package org.twinrig.workbench.view;

import java.util.List;
import java.util.Optional;
import org.twinrig.report.html.Plate;

/**
 * Old graphs re-expressed.
 *
 * @param frame around it
 * @param limits what may be sent
 * @param catalogue name of the study's catalogue; empty when it has none
 * @param result what was re-expressed last
 */
public record CatalogueView(Frame frame, String limits, String catalogue, Optional<Result> result) {

  /**
   * Graphs re-expressed.
   *
   * @param title on which state of the study they rest
   * @param stale whether the study has changed since
   * @param count how many are shown of how many
   * @param filter what the table is filtered by
   * @param heads the heads of the table, each a way to sort by it
   * @param rows the table
   * @param plates the first of them drawn
   * @param assumed what was taken for granted of all graphs, shown or not
   * @param whys the reasons that stand in the table
   * @param problems what was refused, and why
   */
  public record Result(
      String title,
      boolean stale,
      String count,
      Filter filter,
      List<Head> heads,
      List<Row> rows,
      List<Plate> plates,
      List<String> assumed,
      List<Why> whys,
      List<String> problems) {
    public Result {
      heads = List.copyOf(heads);
      rows = List.copyOf(rows);
      plates = List.copyOf(plates);
      assumed = List.copyOf(assumed);
      whys = List.copyOf(whys);
      problems = List.copyOf(problems);
    }
  }

  /**
   * What a table is filtered by.
   *
   * @param text in the name of graph, unit or kind
   * @param decision one of the decisions, or empty
   * @param decisions to choose from
   * @param sort the column it is sorted by
   */
  public record Filter(String text, String decision, List<String> decisions, String sort) {
    public Filter {
      decisions = List.copyOf(decisions);
    }
  }

  /**
   * A reason and what it means.
   *
   * @param word as the table and the files write it
   * @param plain the same as a clause
   */
  public record Why(String word, String plain) {}

  /**
   * A head of the table.
   *
   * @param link sorts by it
   * @param order {@code ascending} or {@code none}
   */
  public record Head(Link link, String order) {}

  /**
   * A graph.
   *
   * @param graph its name, and the way to its drawing; the path is empty when it was not kept
   * @param unit it shows
   * @param decision what to do with it
   * @param reliable octaves
   * @param caution octaves
   * @param unreliable octaves
   * @param reasons why marks are below reliable
   * @param csv the way to its table; empty when it was not kept
   */
  public record Row(
      Link graph,
      String unit,
      String kind,
      String decision,
      String reliable,
      String caution,
      String unreliable,
      String reasons,
      String csv) {}
}
