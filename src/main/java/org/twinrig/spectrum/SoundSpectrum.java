package org.twinrig.spectrum;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.internal.Numbers;
import org.twinrig.response.Response;

/**
 * The frequency response of a sound, levels in dB relative to full scale, and how it was found.
 *
 * @param onsetMs from the sound's start to the onset; after deconvolution, to the moment the
 *     sweep's response begins
 * @param beforeOnsetMs from the window's start to the onset
 * @param lengthMs from the onset to the window's end; shorter than asked for when the sound ends
 *     first
 * @param notes what the lab should know, one clause each
 */
public record SoundSpectrum(
    Response response, double onsetMs, double beforeOnsetMs, double lengthMs, List<String> notes) {

  /** What filters of converters may ring ahead (common practice, no source). */
  private static final double EARLIEST_ONSET_MS = 1;

  /** One step below full scale in 16 bits; the coarsest scale that is read. */
  private static final double FULL_SCALE = 32_767.0 / 32_768;

  /** Two samples may touch full scale by chance; three in a row were cut (common practice). */
  private static final int CLIPPED_RUN = 3;

  public SoundSpectrum {
    notes = List.copyOf(notes);
  }

  /**
   * The response of a sound, which is what {@code content} says.
   *
   * @throws UnusableSound when it is silent, clipped, too short, or not what {@code content} says
   */
  public static SoundSpectrum of(Signal sound, SoundContent content) throws UnusableSound {
    checkLevel(sound);
    Signal impulse = sound;
    int lead = 0;
    if (content.sweep().isPresent()) {
      Deconvolution.Result result = Deconvolution.of(sound, content.sweep().get());
      impulse = result.impulse();
      lead = result.lead();
    }
    int onset = Segment.onset(impulse, searchMs(impulse, content));
    if (impulse.milliseconds(lead - onset) > EARLIEST_ONSET_MS) {
      throw new UnusableSound(
          "divided by the sweep, the response begins %s ms before the recording does"
              .formatted(Numbers.fixed(impulse.milliseconds(lead - onset), 1)),
          "start to record before the sweep is played, or correct `sweep` in study.yaml");
    }
    Segment segment = Segment.of(impulse, onset, content);
    RestCheck rest = new RestCheck(segment, content.sweep().isPresent());
    rest.check();
    Magnitudes.Span span = Magnitudes.Span.of(segment, content);
    Response response = Magnitudes.of(segment, rest.offset(), span);
    List<String> notes = notes(sound, content, segment, rest);
    LengthCheck.note(response, segment, rest.offset(), span).ifPresent(notes::add);
    return new SoundSpectrum(
        response.resolving(1000 / segment.lengthMs()),
        impulse.milliseconds(onset - lead),
        impulse.milliseconds(onset - segment.from()),
        segment.lengthMs(),
        notes);
  }

  /** Can the samples be a sound at all: neither silent nor clipped. */
  static void checkLevel(Signal signal) throws UnusableSound {
    if (signal.peak(0, signal.size()) == 0) {
      throw new UnusableSound("every sample is zero", "export the channel that was recorded");
    }
    int run = 0;
    for (int i = 0; i < signal.size(); i++) {
      boolean same = i > 0 && Math.signum(signal.sample(i)) == Math.signum(signal.sample(i - 1));
      run = Math.abs(signal.sample(i)) < FULL_SCALE ? 0 : same ? run + 1 : 1;
      if (run == CLIPPED_RUN) {
        throw new UnusableSound(
            "the sound is clipped: %s samples in a row stand at full scale from sample %s on"
                .formatted(CLIPPED_RUN, i + 2 - CLIPPED_RUN),
            "lower the level and measure again");
      }
    }
  }

  /** Distortion of a sweep lies ahead of the response and must not be taken for its onset. */
  private static double searchMs(Signal impulse, SoundContent content) {
    return content.sweep().isPresent()
        ? content.beforeOnsetMs() / 2
        : impulse.milliseconds(impulse.size());
  }

  private static List<String> notes(
      Signal sound, SoundContent content, Segment segment, RestCheck rest) {
    List<String> notes = new ArrayList<>();
    if (segment.impulse().samplesIn(content.window().lengthMs()) > segment.to() - segment.onset()) {
      notes.add(
          "the file ends %s ms after the onset, before the window does; levels below %s are left out"
              .formatted(
                  Numbers.fixed(segment.lengthMs(), 1), Numbers.hertz(1000 / segment.lengthMs())));
    }
    double mean = Math.abs(sound.mean());
    if (content.sweep().isPresent() && mean > 1e-2 * sound.peak(0, sound.size())) {
      notes.add(
          "the mean of the recording, "
              + Numbers.fixed(100 * mean, 1)
              + " % of full scale, was taken off");
    }
    notes.addAll(rest.notes());
    return notes;
  }
}
