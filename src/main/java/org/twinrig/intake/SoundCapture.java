package org.twinrig.intake;

import java.util.List;
import org.twinrig.capture.Side;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.UnusableInput;
import org.twinrig.spectrum.Signal;
import org.twinrig.spectrum.SoundContent;
import org.twinrig.spectrum.SoundSpectrum;
import org.twinrig.spectrum.Sweep;
import org.twinrig.spectrum.UnusableSound;

/** A capture as a WAV file: an impulse response, or the recording of a sweep. */
final class SoundCapture {
  private SoundCapture() {}

  /** The curve of a side: of a stereo file channel 1 is left, channel 2 right. */
  static Reading read(byte[] bytes, Remarks remarks, SoundContent content, Side side)
      throws UnusableInput {
    WavFile wav = new WavFile(bytes, remarks);
    if (wav.channels == 2 && side == Side.M) {
      throw remarks.refuse(
          "the sound file has two channels, left and right, but stands for one curve (side M)",
          "name it in two rows, side L (channel 1) and side R (channel 2), or export one channel");
    }
    int channel = wav.channels == 2 && side == Side.R ? 2 : 1;
    Signal signal = wav.channel(channel);
    SoundSpectrum spectrum = spectrum(signal, content, remarks);
    spectrum.notes().forEach(note -> remarks.note(0, note));
    boolean sweep = content.sweep().isPresent();
    if (wav.validBits <= 16 && !sweep) {
      // Rounded samples of a tail err together, not at random: a slow tail is lost below a step.
      remarks.note(
          0,
          "an impulse response in "
              + wav.validBits
              + " bits loses its tail below one step: low levels at low"
              + " frequencies may be off by some tenths of a dB, which 24 bits or float avoid");
    }
    List<String> understood =
        List.of(
            Reading.extent(spectrum.response()) + ".",
            file(wav, channel, signal.size()),
            content
                .sweep()
                .map(SoundCapture::sweep)
                .orElse("It was taken for an impulse response."),
            window(spectrum, content.window().fadeMs()),
            "The resolution is %s: bands that are narrower are coarse points."
                .formatted(Numbers.hertz(1000 / spectrum.lengthMs())),
            "Levels are relative to full scale: "
                + (sweep
                    ? "a recording equal to the sweep at full scale is 0 dB."
                    : "one sample at full scale is 0 dB at every frequency."));
    return remarks.reading(spectrum.response(), understood, bytes, spectrum.response().size());
  }

  private static SoundSpectrum spectrum(Signal signal, SoundContent content, Remarks remarks)
      throws UnusableInput {
    try {
      return SoundSpectrum.of(signal, content);
    } catch (UnusableSound e) {
      throw remarks.refuse(e.getMessage(), e.remedy());
    }
  }

  private static String file(WavFile wav, int channel, int samples) {
    String used =
        wav.validBits == wav.sample.bits ? "" : ", of which " + wav.validBits + " bits are used";
    String which =
        wav.channels == 1
            ? "one channel (any side)"
            : "channel " + channel + " of 2 (side " + (channel == 1 ? "L" : "R") + ")";
    String seconds = Numbers.fixed((double) samples / wav.rateHz, 3);
    return "The sound is WAV, %s%s, %s Hz, %s, %s (%s s)."
        .formatted(
            wav.sample.words(),
            used,
            wav.rateHz,
            which,
            Numbers.count(samples, "sample", "samples"),
            seconds);
  }

  private static String sweep(Sweep sweep) {
    String told =
        "It was taken for the recording of an exponential sweep from %s to %s in %s s and divided by"
            + " that sweep; the second harmonic lies %s ms ahead of the response.";
    return told.formatted(
        Numbers.hertz(sweep.fromHz()),
        Numbers.hertz(sweep.toHz()),
        Numbers.fixed(sweep.seconds(), 2),
        Numbers.fixed(sweep.leadMs(2), 1));
  }

  private static String window(SoundSpectrum spectrum, double fadeMs) {
    String told =
        "The onset lies at %s ms; the window opens %s ms before it and closes %s ms after it, its"
            + " ends raised cosines of up to %s ms.";
    return told.formatted(
        Numbers.fixed(spectrum.onsetMs(), 3),
        Numbers.fixed(spectrum.beforeOnsetMs(), 1),
        Numbers.fixed(spectrum.lengthMs(), 1),
        Numbers.fixed(fadeMs, 1));
  }
}
