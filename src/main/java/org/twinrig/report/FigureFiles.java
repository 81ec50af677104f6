package org.twinrig.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.twinrig.internal.Parallel;
import org.twinrig.report.figure.Figure;

/** Figures as files: each as SVG and as PNG. */
final class FigureFiles {
  private FigureFiles() {}

  /** Writes them into the folder {@code figures} of a result folder. */
  static void write(Path folder, List<Figure> figures, int threads) throws IOException {
    Path place = Files.createDirectories(folder.resolve("figures"));
    List<byte[]> pictures = Parallel.map(figures, threads, Figure::png);
    for (int k = 0; k < pictures.size(); k++) {
      write(place.resolve(figures.get(k).name()), figures.get(k).svg(), pictures.get(k));
    }
  }

  /** Writes one under a name without ending. */
  static void write(Path file, String svg, byte[] png) throws IOException {
    Files.writeString(
        file.resolveSibling(file.getFileName() + ".svg"), svg, StandardCharsets.UTF_8);
    Files.write(file.resolveSibling(file.getFileName() + ".png"), png);
  }
}
