package org.twinrig.intake;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.problem.UnusableInput;

/**
 * The lines on which the dialect rests: the first fifty lines of numbers with no other text
 * between, or the longest such row when none has fifty.
 */
final class Sample {
  static final int ENOUGH = 50;

  private final List<Integer> lines;

  private Sample(List<Integer> lines) {
    this.lines = List.copyOf(lines);
  }

  static Sample of(Lines lines, LineShapes shapes, Remarks remarks) throws UnusableInput {
    List<Integer> longest = List.of();
    List<Integer> row = new ArrayList<>();
    for (int line = 1; line <= lines.count() && longest.size() < ENOUGH; line++) {
      switch (shapes.of(line)) {
        case NUMBERS -> row.add(line);
        case TEXT -> row = new ArrayList<>();
        case BLANK, COMMENT -> {}
      }
      longest = row.size() > longest.size() ? row : longest;
    }
    if (longest.isEmpty()) {
      throw remarks.refuse(
          0,
          "there is no line of numbers",
          "each line needs a frequency in Hz and a level in dB, and lines that start with # * ; //"
              + " % or ! are comments");
    }
    return new Sample(longest);
  }

  /** The lines that a separator cuts into numbers: a header line among them has no vote. */
  Sample cutBy(Separator separator, Lines text) {
    Fields fields = new Fields();
    return new Sample(lines.stream().filter(l -> separator.cuts(text, l, fields)).toList());
  }

  List<Integer> lines() {
    return lines;
  }

  int first() {
    return lines.get(0);
  }

  int last() {
    return lines.get(lines.size() - 1);
  }
}
