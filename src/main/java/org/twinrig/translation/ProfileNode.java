package org.twinrig.translation;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import org.twinrig.band.BandGrid;
import org.twinrig.doubt.KindProfile;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Levels;
import org.twinrig.study.NumberRange;

/** What old graphs of a kind look like, as a part of translation.json. */
final class ProfileNode {
  private static final NumberRange SEATINGS =
      NumberRange.of(1, 1e6, "a number of seatings from 1 to 1000000");

  private static final NumberRange CORRELATION =
      NumberRange.of(-1, 1, "a correlation from -1 to 1");

  private ProfileNode() {}

  static ObjectNode of(KindProfile profile) {
    ObjectNode node = JsonNodeFactory.instance.objectNode().put("seatings", profile.seatings());
    ArrayNode units = node.putArray("old_levels_db");
    profile.units().forEach(u -> units.add(levels(u)));
    node.set("seating_variance_db2", levels(profile.seatingVariance()));
    ArrayNode correlation = node.putArray("seating_correlation");
    profile.seatingCorrelation().forEach(correlation::add);
    ArrayNode detail = node.putArray("seating_detail_db2");
    profile.seatingDetail().forEach(detail::add);
    return node.put("detail_spread", profile.detailSpread());
  }

  /** One number a band, null where there is none. */
  private static ArrayNode levels(Levels levels) {
    ArrayNode node = JsonNodeFactory.instance.arrayNode();
    for (int b = 0; b < levels.grid().size(); b++) {
      levels.level(b).ifPresentOrElse(node::add, node::addNull);
    }
    return node;
  }

  static KindProfile read(JsonPart part, String kind, BandGrid grid) throws UnusableInput {
    List<Levels> units = new ArrayList<>();
    for (JsonPart unit : part.list("old_levels_db")) {
      units.add(levels(unit, grid, TranslationFile.LEVEL_DB));
    }
    double seatings = part.number("seatings", SEATINGS);
    Levels variance =
        levels(part.child("seating_variance_db2"), grid, TranslationFile.VARIANCE_DB2);
    List<Double> correlation = part.list("seating_correlation", e -> e.number(CORRELATION));
    List<Double> detail =
        part.list("seating_detail_db2", e -> e.number(TranslationFile.VARIANCE_DB2));
    double spread = part.number("detail_spread", TranslationFile.ERROR_DB);
    return part.made(
        () -> new KindProfile(kind, units, seatings, variance, correlation, detail, spread));
  }

  private static Levels levels(JsonPart part, BandGrid grid, NumberRange range)
      throws UnusableInput {
    List<Double> read =
        part.elements(
            e -> e.node().isNull() ? Double.valueOf(Double.NaN) : Double.valueOf(e.number(range)));
    if (read.size() != grid.size()) {
      throw part.amiss("must have one entry for each band of the grid");
    }
    return Levels.copyOf(grid, read.stream().mapToDouble(v -> v).toArray());
  }
}
