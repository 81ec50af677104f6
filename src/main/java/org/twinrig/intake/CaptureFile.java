package org.twinrig.intake;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.twinrig.capture.Side;
import org.twinrig.internal.Numbers;
import org.twinrig.internal.OrdinaryFile;
import org.twinrig.problem.UnusableInput;
import org.twinrig.spectrum.SoundContent;

/**
 * The door for capture files: a path goes in, a curve and what the file was taken to be come out.
 * Whether a file is text or sound is seen from its content. Too large a file, and what is no file
 * but a device or a pipe, is not even opened.
 */
public final class CaptureFile {
  /** 64 MiB: a thousand times a usual capture; more is a mix-up, and would fill the memory. */
  static final long MOST_BYTES = 64L << 20;

  private CaptureFile() {}

  /**
   * Reads a capture of one curve: delimited text with a frequency in Hz and a level in dB per line,
   * or a mono WAV file of an impulse response under the default window.
   *
   * @param source the file's name in messages, as the lab wrote it
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
   * @param content what sound files hold
   * @throws UnusableInput as for one curve, and when a stereo file is asked for one curve
   */
  public static Reading read(Path file, String source, SoundContent content, Side side)
      throws UnusableInput {
    return read(bytes(file, new Remarks(source)), source, content, side);
  }

  /** Reads every curve: both channels of a stereo WAV file, otherwise the one there is. */
  public static List<Reading> readAll(Path file, String source, SoundContent content)
      throws UnusableInput {
    byte[] bytes = bytes(file, new Remarks(source));
    boolean stereo =
        WavFile.isBegunBy(bytes) && new WavFile(bytes, new Remarks(source)).channels == 2;
    List<Reading> readings = new ArrayList<>();
    for (Side side : stereo ? List.of(Side.L, Side.R) : List.of(Side.M)) {
      readings.add(read(bytes, source, content, side));
    }
    return List.copyOf(readings);
  }

  private static Reading read(byte[] bytes, String source, SoundContent content, Side side)
      throws UnusableInput {
    Remarks remarks = new Remarks(source);
    return WavFile.isBegunBy(bytes)
        ? SoundCapture.read(bytes, remarks, content, side)
        : TextCapture.read(bytes, remarks);
  }

  private static byte[] bytes(Path file, Remarks remarks) throws UnusableInput {
    try {
      OrdinaryFile found = OrdinaryFile.at(file);
      if (found.size() > MOST_BYTES) {
        throw remarks.refuse(
            "the file has " + megabytes(found.size(), 64) + " MB, but at most 64 MB are read",
            "export this one curve as text");
      }
      return found.bytes();
    } catch (OrdinaryFile.NotOrdinaryException e) {
      boolean folder = Files.isDirectory(file);
      throw remarks.refuse("this is " + e.what(), folder ? "name one file in it" : "name a file");
    } catch (NoSuchFileException e) {
      throw remarks.refuse(
          "there is no such file", "check the name and the folder it is looked for in");
    } catch (AccessDeniedException e) {
      throw remarks.refuse("the file may not be read", "give this user the permission to read it");
    } catch (IOException e) {
      throw remarks.refuse(
          "the file cannot be read (" + e.getMessage() + ")",
          "copy it again from where it was exported");
    }
  }

  /** Rounded so that a size above a limit never prints as the limit. */
  static String megabytes(long size, int limit) {
    BigDecimal exact = BigDecimal.valueOf(size).divide(BigDecimal.valueOf(1L << 20));
    return Numbers.against(exact.doubleValue(), limit, 1);
  }
}
