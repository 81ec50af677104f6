package org.twinrig.intake;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.twinrig.capture.Side;
import org.twinrig.problem.UnusableInput;
import org.twinrig.spectrum.SoundContent;

/**
 * The door for capture files: a path goes in, a curve and what the file was taken to be come out.
 * Whether a file is text or sound is seen from its content.
 */
public final class CaptureFile {
  private CaptureFile() {}

  /**
   * Reads a capture of one curve: delimited text with a frequency in Hz and a level in dB per line,
   * or a mono WAV file of an impulse response under the default window.
   *
   * @param file the file; at most 64 MB
   * @param source its name in messages, as the lab wrote it
   * @return the curve, how the file was understood, and what the lab should know about it
   * @throws UnusableInput with one {@code REFUSED} problem when the file is missing, unreadable,
   *     neither text nor WAV, or cannot be read in one way only
   */
  public static Reading read(Path file, String source) throws UnusableInput {
    return read(file, source, SoundContent.defaults(), Side.M);
  }

  /**
   * Reads the capture of one side. Text is the same for every side; of a stereo WAV file the left
   * side is channel 1 and the right one channel 2.
   *
   * @param file the file; at most 64 MB
   * @param source its name in messages, as the lab wrote it
   * @param content what sound files hold
   * @param side which side is asked for
   * @return the curve, how the file was understood, and what the lab should know about it
   * @throws UnusableInput with one {@code REFUSED} problem when the file is missing, unreadable,
   *     neither text nor WAV, cannot be read in one way only, or is a stereo file asked for one
   *     curve
   */
  public static Reading read(Path file, String source, SoundContent content, Side side)
      throws UnusableInput {
    Remarks remarks = new Remarks(source);
    FileBytes bytes = FileBytes.read(file, remarks);
    return WavChunks.begin(bytes.bytes())
        ? CaptureSound.of(bytes, remarks).read(content, side)
        : CaptureText.read(bytes, remarks);
  }

  /**
   * Reads every curve of a file: both channels of a stereo WAV file, otherwise the one there is.
   *
   * @param file the file; at most 64 MB
   * @param source its name in messages
   * @param content what sound files hold
   * @return one or two readings
   * @throws UnusableInput as for one curve
   */
  public static List<Reading> readAll(Path file, String source, SoundContent content)
      throws UnusableInput {
    Remarks remarks = new Remarks(source);
    FileBytes bytes = FileBytes.read(file, remarks);
    if (!WavChunks.begin(bytes.bytes())) {
      return List.of(CaptureText.read(bytes, remarks));
    }
    int channels = CaptureSound.of(bytes, new Remarks(source)).channels();
    List<Reading> readings = new ArrayList<>();
    for (int channel = 1; channel <= channels; channel++) {
      Remarks ofChannel = new Remarks(source);
      readings.add(CaptureSound.of(bytes, ofChannel).readChannel(content, channel));
    }
    return List.copyOf(readings);
  }
}
