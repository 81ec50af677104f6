package org.twinrig.intake;

import org.twinrig.capture.Side;
import org.twinrig.problem.UnusableInput;
import org.twinrig.spectrum.Signal;
import org.twinrig.spectrum.SoundContent;
import org.twinrig.spectrum.SoundSpectrum;
import org.twinrig.spectrum.UnusableSound;

/** A capture as a WAV file: an impulse response, or the recording of a sweep. */
final class CaptureSound {
  private final FileBytes file;
  private final WavChunks chunks;
  private final WavFormat format;
  private final Remarks remarks;

  private CaptureSound(FileBytes file, WavChunks chunks, WavFormat format, Remarks remarks) {
    this.file = file;
    this.chunks = chunks;
    this.format = format;
    this.remarks = remarks;
  }

  static CaptureSound of(FileBytes file, Remarks remarks) throws UnusableInput {
    WavChunks chunks = WavChunks.of(file.bytes(), remarks);
    return new CaptureSound(file, chunks, WavFormat.of(chunks.format(), remarks), remarks);
  }

  int channels() {
    return format.channels();
  }

  /** The curve of a side: of a stereo file channel 1 is left, channel 2 right. */
  Reading read(SoundContent content, Side side) throws UnusableInput {
    if (format.channels() == 2 && side == Side.M) {
      throw remarks.refuse(
          0,
          "the sound file has two channels, left and right, but stands for one curve (side M)",
          "name it in two rows, side L (channel 1) and side R (channel 2), or export one channel");
    }
    return readChannel(content, format.channels() == 2 && side == Side.R ? 2 : 1);
  }

  /**
   * The curve of a channel.
   *
   * @param channel from 1
   */
  Reading readChannel(SoundContent content, int channel) throws UnusableInput {
    Signal signal = WavSamples.of(chunks.data(), format, channel - 1, remarks);
    SoundSpectrum spectrum = spectrum(signal, content);
    spectrum.notes().forEach(note -> remarks.note(0, note));
    if (format.validBits() <= 16 && content.sweep().isEmpty()) {
      // Rounded samples of a tail err together, not at random: a slow tail is lost below a step.
      remarks.note(
          0,
          "an impulse response in "
              + format.validBits()
              + " bits loses its tail below one step: low levels at low"
              + " frequencies may be off by some tenths of a dB, which 24 bits or float avoid");
    }
    SoundLayout layout =
        new SoundLayout(
            format.sample(),
            format.validBits(),
            format.rateHz(),
            format.channels(),
            channel,
            signal.size(),
            content,
            spectrum.onsetMs(),
            spectrum.beforeOnsetMs(),
            spectrum.lengthMs());
    return new Reading(
        spectrum.response(),
        layout,
        remarks.notes(),
        file.sha256(),
        spectrum.response().size(),
        remarks.source());
  }

  private SoundSpectrum spectrum(Signal signal, SoundContent content) throws UnusableInput {
    try {
      return SoundSpectrum.of(signal, content);
    } catch (UnusableSound e) {
      throw remarks.refuse(0, e.getMessage(), e.remedy());
    }
  }
}
