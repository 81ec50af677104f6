package org.twinrig.cli;

import java.nio.file.Path;
import java.util.List;
import org.twinrig.intake.CaptureFile;
import org.twinrig.intake.Reading;
import org.twinrig.problem.UnusableInput;
import org.twinrig.spectrum.SoundContent;
import org.twinrig.study.StudyReader;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code twinrig inspect}: how capture files are understood. */
@Command(
    name = "inspect",
    description = "Says how each capture file is understood, or why it cannot be read.")
final class InspectCommand extends TwinrigCommand {
  @Parameters(paramLabel = "FILE", arity = "1..*", description = "Capture files.")
  private List<Path> files;

  @Option(
      names = "--study",
      paramLabel = "STUDY_DIR",
      description = "Reads sound files as this study declares them.")
  private Path study;

  @Mixin private DataRoots dataRoots;

  @Override
  public Integer call() throws UnusableInput {
    SoundContent sound =
        study == null
            ? SoundContent.defaults()
            : StudyReader.read(study, dataRoots.folders).value().settings().sound();
    int status = 0;
    for (Path file : files) {
      try {
        for (Reading reading : CaptureFile.readAll(file, file.toString(), sound)) {
          out().println(reading.report());
        }
      } catch (UnusableInput e) {
        out().println("Not read: " + e.getMessage() + ".\n");
        status = 1;
      }
    }
    return status;
  }
}
