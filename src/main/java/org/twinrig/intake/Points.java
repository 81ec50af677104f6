package org.twinrig.intake;

import java.util.Arrays;

/** The points of a file in its own order, each with the line it stands on. */
final class Points {
  private double[] frequenciesHz = new double[512];
  private double[] levelsDb = new double[512];
  private int[] lines = new int[512];
  private int size;

  void add(double frequencyHz, double levelDb, int line) {
    if (size == lines.length) {
      frequenciesHz = Arrays.copyOf(frequenciesHz, 2 * size);
      levelsDb = Arrays.copyOf(levelsDb, 2 * size);
      lines = Arrays.copyOf(lines, 2 * size);
    }
    frequenciesHz[size] = frequencyHz;
    levelsDb[size] = levelDb;
    lines[size] = line;
    size++;
  }

  int size() {
    return size;
  }

  double frequencyHz(int point) {
    return frequenciesHz[point];
  }

  double levelDb(int point) {
    return levelsDb[point];
  }

  int line(int point) {
    return lines[point];
  }
}
