"""Makes power_mean_bias.csv: how much higher seatings read that were averaged in power and not in decibels.

Run: python3 power_mean_bias.py (numpy 2.4.6).
Monte Carlo: m seatings of one unit scatter normally in dB with standard deviation sd_db; the bias is the mean over
4 000 000 draws of 10 lg(mean of 10^(L/10)) - mean of L, se_db its standard error.
"""
import numpy as np

rng = np.random.default_rng(20)
with open("power_mean_bias.csv", "w") as out:
    out.write("# Title: power mean of seatings minus their mean in decibels, expected\n")
    out.write("# Source: Monte Carlo by numpy 2.4.6; made by power_mean_bias.py beside this file.\n")
    out.write("# Units: dB.\n")
    out.write("sd_db,seatings,bias_db,se_db\n")
    for sd in (0.5, 1, 2, 3):
        for m in (2, 3, 5, 10):
            levels = rng.normal(0, sd, (4_000_000, m))
            bias = 10 * np.log10(np.mean(10 ** (levels / 10), axis=1)) - levels.mean(axis=1)
            out.write(f"{sd},{m},{bias.mean():.6f},{bias.std() / 2000:.6f}\n")
