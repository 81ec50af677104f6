"""Makes resonance_peaks.csv: the most prominent peak of made-up curves by scipy.signal.

Run: python3 resonance_peaks.py (scipy 1.17.1, numpy 2.4.6).
find_peaks, peak_prominences and peak_widths at half prominence; the vertex by numpy.polyfit through three points.
Curves are random walks over 30 bands, in steps of 0.001 dB; a notch is a peak of the curve's negative.
"""
import numpy as np
from scipy import signal

rng = np.random.default_rng(71)
with open("resonance_peaks.csv", "w") as out:
    out.write("# Title: the most prominent peak and notch of made-up curves\n")
    out.write("# Source: scipy.signal 1.17.1 (find_peaks, peak_prominences, peak_widths), numpy 2.4.6 (polyfit);\n")
    out.write("# made by resonance_peaks.py beside this file.\n")
    out.write("# Units: place and width in bands from the first, prominence and levels in dB.\n")
    out.write("shape,place,prominence_db,width_bands," + ",".join(f"b{b}" for b in range(30)) + "\n")
    for k in range(16):
        curve = np.round(np.cumsum(rng.normal(0, 1, 30)), 3)
        shape = "PEAK" if k % 2 == 0 else "NOTCH"
        x = curve if shape == "PEAK" else -curve
        peaks, _ = signal.find_peaks(x)
        prominences = signal.peak_prominences(x, peaks)[0]
        best = peaks[np.argmax(prominences)]
        width = signal.peak_widths(x, [best], rel_height=0.5)[0][0]
        a, b, _ = np.polyfit([-1, 0, 1], x[best - 1 : best + 2], 2)
        place = best - b / (2 * a)
        out.write(f"{shape},{place:.12g},{prominences.max():.12g},{width:.12g},"
                  + ",".join(f"{v:.3f}" for v in curve) + "\n")
