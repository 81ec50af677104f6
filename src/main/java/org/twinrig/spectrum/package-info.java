/**
 * From sound to a frequency response: onset, window, transform, and the deconvolution of sweeps.
 *
 * <p>{@link org.twinrig.spectrum.SoundSpectrum} is the door: a {@link org.twinrig.spectrum.Signal}
 * goes in together with what the lab says its sound files hold ({@link
 * org.twinrig.spectrum.SoundContent}), a response comes out together with where its onset and
 * window were found. The steps:
 *
 * <pre>
 * SoundSpectrum  silence, clipping, and the steps in turn
 * Deconvolution  a recorded sweep to an impulse response; harmonics end up ahead of it
 * Segment        where the impulse response begins, and the part under the window
 * RestCheck      whether the window holds the response, and how far the rest lies below it
 * Fourier        the discrete transform
 * Magnitudes     levels in dB at the frequencies the window supports
 * LengthCheck    whether the response has died away where the window ends
 * Thinning       points left out where a straight line stands for them
 * </pre>
 *
 * <p>Levels are relative to full scale: 0 dB is the spectrum of one sample at full scale, or of a
 * recording equal to the sweep at full scale. Nothing is smoothed. Below the reciprocal of the
 * window's length nothing is given: a window of 200 ms says nothing below 5 Hz.
 *
 * <p>A sound that cannot be used is refused with {@link org.twinrig.spectrum.UnusableSound}; what
 * the lab should know about one that is used comes as notes.
 */
package org.twinrig.spectrum;
