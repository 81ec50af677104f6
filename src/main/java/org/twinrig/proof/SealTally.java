package org.twinrig.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.twinrig.screening.SealScore;

/** Counts of one kind, added up over studies in their order. */
final class SealTally {
  private static final double IN_FORCE = 1;

  private final double[] factors;
  private final int[] found;
  private final int[] slightFound;
  private final int[] accused;
  private final double[] squares = new double[3];
  private int lost;
  private int slight;
  private int sound;
  private int studies;

  SealTally(double[] factors) {
    this.factors = factors.clone();
    this.found = new int[factors.length];
    this.slightFound = new int[factors.length];
    this.accused = new int[factors.length];
  }

  void lost(SealScore score) {
    lost++;
    count(score, found);
  }

  void slight(SealScore score) {
    slight++;
    count(score, slightFound);
  }

  void sound(SealScore score) {
    sound++;
    count(score, accused);
  }

  private void count(SealScore score, int[] reported) {
    for (int f = 0; f < factors.length; f++) {
      reported[f] += score.isLost(factors[f]) ? 1 : 0;
    }
  }

  /** Adds mean square errors of one study, dB². */
  void error(double suggest, double exclude, double allSound) {
    squares[0] += suggest;
    squares[1] += exclude;
    squares[2] += allSound;
    studies++;
  }

  SealTally plus(SealTally other) {
    SealTally sum = new SealTally(factors);
    for (SealTally each : List.of(this, other)) {
      for (int f = 0; f < factors.length; f++) {
        sum.found[f] += each.found[f];
        sum.slightFound[f] += each.slightFound[f];
        sum.accused[f] += each.accused[f];
      }
      for (int k = 0; k < squares.length; k++) {
        sum.squares[k] += each.squares[k];
      }
      sum.lost += each.lost;
      sum.slight += each.slight;
      sum.sound += each.sound;
      sum.studies += each.studies;
    }
    return sum;
  }

  List<SealRow> rows(String kind, double... limits) {
    List<SealRow> rows = new ArrayList<>();
    for (int f = 0; f < limits.length; f++) {
      SealRow.Effect effect =
          limits[f] == IN_FORCE
              ? new SealRow.Effect(root(0), root(1), root(2))
              : SealRow.Effect.NONE;
      rows.add(
          new SealRow(
              kind, limits[f], lost, found[f], slight, slightFound[f], sound, accused[f], effect));
    }
    return rows;
  }

  private OptionalDouble root(int which) {
    return OptionalDouble.of(Math.sqrt(squares[which] / studies));
  }
}
