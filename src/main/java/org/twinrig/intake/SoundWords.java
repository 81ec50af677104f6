package org.twinrig.intake;

import java.util.List;
import org.twinrig.internal.Numbers;
import org.twinrig.spectrum.Sweep;

/** What a sound file was taken to be, in plain sentences. */
final class SoundWords {
  private SoundWords() {}

  static List<String> of(SoundLayout layout) {
    return List.of(file(layout), content(layout), window(layout), level(layout));
  }

  private static String file(SoundLayout layout) {
    return "The sound is WAV, "
        + layout.sample().words(layout.validBits())
        + ", "
        + layout.rateHz()
        + " Hz, "
        + (layout.channels() == 1 ? "one channel" : "channel " + layout.channel() + " of 2")
        + " ("
        + (layout.channels() == 1 ? "any side" : layout.channel() == 1 ? "side L" : "side R")
        + "), "
        + Numbers.count(layout.samples(), "sample", "samples")
        + " ("
        + Numbers.fixed((double) layout.samples() / layout.rateHz(), 3)
        + " s).";
  }

  private static String content(SoundLayout layout) {
    return layout
        .content()
        .sweep()
        .map(SoundWords::sweep)
        .orElse("It was taken for an impulse response.");
  }

  private static String sweep(Sweep sweep) {
    return "It was taken for the recording of an exponential sweep from "
        + Numbers.hertz(sweep.fromHz())
        + " to "
        + Numbers.hertz(sweep.toHz())
        + " in "
        + Numbers.fixed(sweep.seconds(), 2)
        + " s and divided by that sweep; the second harmonic lies "
        + Numbers.fixed(sweep.leadMs(2), 1)
        + " ms ahead of the response.";
  }

  private static String window(SoundLayout layout) {
    return "The onset lies at "
        + Numbers.fixed(layout.onsetMs(), 3)
        + " ms; the window opens "
        + Numbers.fixed(layout.beforeOnsetMs(), 1)
        + " ms before it and closes "
        + Numbers.fixed(layout.lengthMs(), 1)
        + " ms after it, its ends raised cosines of up to "
        + Numbers.fixed(layout.content().window().fadeMs(), 1)
        + " ms.";
  }

  private static String level(SoundLayout layout) {
    return layout.content().sweep().isPresent()
        ? "Levels are relative to full scale: a recording equal to the sweep at full scale is 0 dB."
        : "Levels are relative to full scale: one sample at full scale is 0 dB at every frequency.";
  }
}
