package org.twinrig.cli;

import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Option;

/** The option of every command that reads a study by which a wide data root is confirmed. */
final class DataRoots {
  @Option(
      names = "--data-root",
      paramLabel = "DIR",
      description =
          "Confirms that a study may name files anywhere in this folder. Needed where its data_root"
              + " is wider than the folder around the study. May be given several times.")
  List<Path> folders = List.of();
}
