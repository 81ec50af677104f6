#!/usr/bin/env python3
"""Makes the WAV files and the levels beside this script.

Tool: Python 3, numpy, scipy.signal.sosfilt, scipy.signal.sosfreqz, scipy.io.wavfile.write.
Run:  python3 make_wav_reference.py   (in this folder; prints the versions used)

The filter is a chain of two second-order sections: a peak of 8 dB at 3 kHz, Q 4, after R. Bristow-Johnson's
audio equaliser cookbook, and a second-order Butterworth high-pass at 40 Hz. Its impulse response, scaled by 0.25
and delayed by 480 samples, is written at several rates and in several sample formats; the sweep recordings are the filtered
sweep with a second and a third harmonic of the sweep added (10 % and 5 %), each only while it lies below 0.45 of
the sampling rate. levels_*.csv holds what sosfreqz says, at 1/24-octave
steps from 20 Hz to 20 kHz, at 48 kHz in steps of 1/96 octave, fine enough for band levels.
"""
import struct

import numpy as np
import scipy
from scipy import signal
from scipy.io import wavfile

GAIN = 0.25
DELAY = 480


def sections(rate):
    w0 = 2 * np.pi * 3000 / rate
    a = 10 ** (8 / 40)
    alpha = np.sin(w0) / (2 * 4)
    b = np.array([1 + alpha * a, -2 * np.cos(w0), 1 - alpha * a])
    d = np.array([1 + alpha / a, -2 * np.cos(w0), 1 - alpha / a])
    peak = np.concatenate([b / d[0], d / d[0]])
    return np.vstack([peak, signal.butter(2, 40, "highpass", fs=rate, output="sos")])


def levels(rate, gain):
    steps = 96 if rate == 48000 else 24
    hz = 1000 * 2 ** (np.arange(-6 * steps, 5 * steps) / steps)
    _, h = signal.sosfreqz(sections(rate), worN=hz, fs=rate)
    return hz, 20 * np.log10(gain * np.abs(h))


def write_levels(name, rate, gain):
    hz, db = levels(rate, gain)
    with open(name, "w") as out:
        out.write("# Title: levels of the filter in make_wav_reference.py, sampled at %d Hz, gain %s.\n" % (rate, gain))
        out.write("# Source: scipy.signal.sosfreqz, scipy %s. Units: Hz, dB relative to full scale.\n" % scipy.__version__)
        out.write("hz,level_db\n")
        for f, level in zip(hz, db):
            if 20 <= f <= 20000:
                out.write("%.9f,%.9f\n" % (f, level))


def write24(name, rate, x):
    """scipy.io.wavfile writes no 24-bit samples: plain chunks by struct."""
    whole = np.round(x * 2**23).astype(int)
    data = b"".join(struct.pack("<i", v)[:3] for v in whole.ravel())
    channels = 1 if whole.ndim == 1 else whole.shape[1]
    fmt = struct.pack("<HHIIHH", 1, channels, rate, rate * 3 * channels, 3 * channels, 24)
    body = b"WAVE" + b"fmt " + struct.pack("<I", 16) + fmt + b"data" + struct.pack("<I", len(data)) + data
    with open(name, "wb") as out:
        out.write(b"RIFF" + struct.pack("<I", len(body)) + body)


def impulse(rate, ms):
    x = np.zeros(int(rate * ms / 1000))
    x[DELAY] = GAIN
    return signal.sosfilt(sections(rate), x)


def sweep_phase(rate, f1, f2, seconds):
    t = np.arange(int(round(rate * seconds))) / rate
    scale = seconds / np.log(f2 / f1)
    return 2 * np.pi * f1 * scale * np.expm1(t / scale), f1 * np.exp(t / scale)


def recording(rate, f1, f2, seconds):
    phase, hz = sweep_phase(rate, f1, f2, seconds)
    y = np.sin(phase)
    played = np.concatenate([np.zeros(DELAY), y, np.zeros(rate // 2)])
    out = GAIN * signal.sosfilt(sections(rate), played)
    for order, share in ((2, 0.1), (3, 0.05)):
        harmonic = np.where(order * hz < 0.45 * rate, np.sin(order * phase), 0.0)
        out[DELAY : DELAY + len(harmonic)] += GAIN * share * harmonic
    return out


def main():
    for rate in (44100, 48000, 96000):
        write_levels("levels_%d.csv" % rate, rate, GAIN)
        h = impulse(rate, 260)
        if rate == 48000:
            wavfile.write("impulse_48000_int16.wav", rate, np.round(2 * h * 2**15).astype(np.int16))
            wavfile.write("impulse_48000_int32.wav", rate, np.round(h * 2**31).astype(np.int32))
            wavfile.write("impulse_48000_float32.wav", rate, h.astype(np.float32))
            wavfile.write("impulse_48000_float64.wav", rate, h)
            both = np.column_stack([h, 0.5 * h])
            wavfile.write("impulse_48000_stereo_float32.wav", rate, both.astype(np.float32))
        write24("impulse_%d_int24.wav" % rate, rate, h)
    swept = recording(48000, 10, 22000, 4)
    wavfile.write("sweep_48000_int16.wav", 48000, np.round(swept * 2**15).astype(np.int16))
    print("numpy", np.__version__, "scipy", scipy.__version__)


main()
