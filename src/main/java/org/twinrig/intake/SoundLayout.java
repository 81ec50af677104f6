package org.twinrig.intake;

import java.util.Objects;
import org.twinrig.spectrum.SoundContent;

/**
 * What a sound file was taken to be.
 *
 * @param sample how one sample stands in the file
 * @param validBits how many bits of a sample are used, the upper ones
 * @param rateHz samples per second
 * @param channels 1 or 2
 * @param channel the one that was read, from 1
 * @param content what the lab says the file holds, and the window asked for
 * @param onsetMs from the start of the recording to the onset
 * @param beforeOnsetMs from the start of the window to the onset
 * @param lengthMs from the onset to the end of the window
 */
public record SoundLayout(
    SampleFormat sample,
    int validBits,
    int rateHz,
    int channels,
    int channel,
    int samples,
    SoundContent content,
    double onsetMs,
    double beforeOnsetMs,
    double lengthMs)
    implements CaptureLayout {

  public SoundLayout {
    Objects.requireNonNull(sample, "sample");
    Objects.requireNonNull(content, "content");
    if (channel < 1 || channel > channels) {
      throw new IllegalArgumentException("channel " + channel + " of " + channels);
    }
  }
}
