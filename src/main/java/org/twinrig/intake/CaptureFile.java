package org.twinrig.intake;

import java.nio.file.Path;
import org.twinrig.problem.UnusableInput;

/**
 * The door for capture files: a path goes in, a curve and what the file was taken to be come out.
 */
public final class CaptureFile {
  private CaptureFile() {}

  /**
   * Reads a capture: delimited text with a frequency in Hz and a level in dB per line.
   *
   * @param file the file; at most 64 MB
   * @param source its name in messages, as the lab wrote it
   * @return the curve, how the file was understood, and what the lab should know about it
   * @throws UnusableInput with one {@code REFUSED} problem when the file is missing, unreadable,
   *     not text, or cannot be read in one way only
   */
  public static Reading read(Path file, String source) throws UnusableInput {
    Remarks remarks = new Remarks(source);
    return CaptureText.read(FileBytes.read(file, remarks), remarks);
  }
}
