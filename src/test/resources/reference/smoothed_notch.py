"""Makes smoothed_notch.csv: a notch after smoothing over 1/n octave, by numerical integration.

Run: python3 smoothed_notch.py (scipy 1.17.1, numpy 2.4.6).
The notch is the minimum-phase second-order (s^2 + A s/Q + 1)/(s^2 + s/Q + 1), A = 10^(-depth/20), s = jf/1 kHz.
Its level is the mean over log frequency of 10^(L/10) (POWER) or of L (DB), by scipy.integrate.quad, over
f*G^(-1/2n) to f*G^(1/2n), G = 10^0.3 (IEC 61260-1:2014, base ten).
"""
import numpy as np
from scipy.integrate import quad


def level(f, depth, q):
    s = 1j * f / 1000
    return 20 * np.log10(abs((s * s + 10 ** (-depth / 20) * s / q + 1) / (s * s + s / q + 1)))


with open("smoothed_notch.csv", "w") as out:
    out.write("# Title: a notch at 1 kHz after smoothing over 1/fraction octave\n")
    out.write("# Source: scipy.integrate.quad (scipy 1.17.1), numpy 2.4.6; made by smoothed_notch.py beside this file.\n")
    out.write("# Units: depth and level in dB, at_hz in Hz.\n")
    out.write("depth_db,q,fraction,domain,at_hz,level_db\n")
    for depth, q in ((15, 8), (25, 4), (6, 2)):
        for n in (3, 6, 12, 24):
            half = np.log(10**0.3) / 2 / n
            for at in (1000, round(1000 * 10**0.04, 9)):
                middle = np.log(at / 1000)
                kinks = [0] if middle - half < 0 < middle + half else None
                for domain, f, g in (("POWER", lambda x: 10 ** (x / 10), lambda x: 10 * np.log10(x)),
                                     ("DB", lambda x: x, lambda x: x)):
                    mean = quad(lambda u: f(level(1000 * np.exp(u), depth, q)), middle - half, middle + half,
                                points=kinks, epsabs=1e-12, epsrel=1e-12, limit=200)[0] / 2 / half
                    out.write(f"{depth},{q},{n},{domain},{at},{g(mean):.9f}\n")
