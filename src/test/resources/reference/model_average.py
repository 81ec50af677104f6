"""Makes model_average_units.csv and model_average.csv: the prediction of units by weighted windows, from scratch.

Run: python3 model_average.py (numpy 2.4.6, scipy 1.17.1).
Every error on a unit left out, and on two units left out, is that of a fit made again without them; weights, moderated
variances and both half-widths follow. Shares nothing with the program.
"""
import numpy as np
from scipy import special, stats

N = 12  # bands per octave
HALF = (0, 1, 2, 4, 6)
POOLED = (0, 1, 2)
KAPPA = (0.01, 0.03, 0.1, 0.3, 1.0, 3.0)
rng = np.random.default_rng(20261130)
units, bands = 8, 11
x = np.zeros((units, bands))
d = np.zeros((units, bands))
for i in range(units):
    level, own = 0.0, 0.0
    for b in range(bands):
        level = 0.8 * level + rng.normal()
        own = 0.8 * own + 0.3 * rng.normal()
        x[i, b], d[i, b] = level, own
for b in range(bands):
    d[:, b] += 1.5 + (0.7 if b > 4 else 0.1) * x[:, min(b + 1, bands - 1)]
x, d = np.round(x, 2), np.round(d, 2)


def window(c, h):
    """Old levels around a band; outside the grid 0 after centring."""
    w = np.zeros((units, 2 * h + 1))
    for k in range(2 * h + 1):
        if 0 <= c + k - h < bands:
            w[:, k] = x[:, c + k - h]
    return w


def fit(b, h, pooled, lam, left):
    rows, ys = [], []
    for c in range(b - pooled, b + pooled + 1):
        if 0 <= c < bands:
            w = window(c, h)
            rows.append(w[left] - w[left].mean(0))
            ys.append(d[left, c] - d[left, c].mean())
    w, y = np.vstack(rows), np.concatenate(ys)
    return np.linalg.solve(w.T @ w + lam * np.eye(w.shape[1]), w.T @ y)


def penalty(b, h, pooled, kappa):
    total = 0.0
    for c in range(b - pooled, b + pooled + 1):
        if 0 <= c < bands:
            w = window(c, h)
            total += ((w - w.mean(0)) ** 2).sum()
    return kappa * total / (2 * h + 1)


def error(b, rule, i, left):
    """The error on unit i of a rule fitted on the units left."""
    if rule is None:
        return d[i, b] - d[left, b].mean()
    h, pooled, kappa = rule
    beta = fit(b, h, pooled, penalty(b, h, pooled, kappa), left)
    w = window(b, h)
    return d[i, b] - d[left, b].mean() - (w[i] - w[left].mean(0)) @ beta


RULES = [None] + [(h, p, k) for h in HALF for p in POOLED for k in KAPPA]
everyone = list(range(units))
alone = np.zeros((bands, len(RULES), units))
log_mse = np.zeros((bands, len(RULES)))
log_mse_without = np.zeros((bands, len(RULES), units))
for b in range(bands):
    for r, rule in enumerate(RULES):
        for i in everyone:
            alone[b, r, i] = error(b, rule, i, [j for j in everyone if j != i])
            two = [error(b, rule, j, [k for k in everyone if k not in (i, j)]) for j in everyone if j != i]
            log_mse_without[b, r, i] = np.log(max(1e-6, np.mean(np.square(two))))
        log_mse[b, r] = np.log(max(1e-6, np.mean(alone[b, r] ** 2)))


def near(b, octaves):
    reach = int(N * octaves + 1e-9)
    return slice(max(0, b - reach), min(bands, b + reach + 1))


def weights(b, scores, n):
    prior = np.array([0.7] + [0.3 / (len(RULES) - 1)] * (len(RULES) - 1))
    w = prior * np.exp(-n / 2 * (scores[near(b, 1 / 6)].mean(0) - scores[near(b, 1 / 6)].mean(0).min()))
    w[1:][w[1:] < 1e-9 * w.sum()] = 0
    return w / w.sum()


whole = np.array([weights(b, log_mse, units) for b in range(bands)])
nested = np.zeros((bands, units))
for b in range(bands):
    for i in everyone:
        nested[b, i] = weights(b, log_mse_without[:, :, i], units - 1) @ alone[b, :, i]
s2 = (nested ** 2).mean(1)

# Moderated variances, Smyth 2004 with a trend.
free = units - 1.0
e = np.log(np.maximum(s2, 1e-8)) - special.digamma(free / 2) + np.log(free / 2)
tau = np.array([e[near(b, 1 / 2)].mean() for b in range(bands)])
w = N // 2
v = ((e - tau) ** 2).sum() / (bands - bands / (2 * w + 1)) - special.polygamma(1, free / 2)
d0 = 100.0
if v > 0.02:
    from scipy.optimize import brentq

    d0 = min(100.0, 2 * brentq(lambda y: special.polygamma(1, y) - v, 1e-6, 60))
s0 = np.exp(tau + special.digamma(d0 / 2) - np.log(d0 / 2))
d0 = min(d0, 4.0)
moderated = (d0 * s0 + free * s2) / (d0 + free)
nu = d0 + free
variance = np.array([moderated[near(b, 1 / 6)].mean() for b in range(bands)])
wide = np.array([s2[near(b, 1 / 3)].mean() for b in range(bands)])
half = stats.t.ppf(0.975, nu) * np.sqrt(variance)
whole_half = stats.t.ppf(1 - 0.05 / (2 * bands), free) * np.sqrt(wide)

with open("model_average_units.csv", "w") as out:
    out.write("# Title: 8 units x 11 bands: level on the old fixture (x) and difference (d), for weighted windows\n")
    out.write("# Source: made up (seeded normal numbers rounded to 0.01 dB) by model_average.py.\n")
    out.write("# Units: dB. Neighbouring bands of 1/12 octave.\n")
    out.write("unit," + ",".join(f"{q}{b + 1}" for q in "xd" for b in range(bands)) + "\n")
    for i in everyone:
        out.write(f"{i + 1}," + ",".join(f"{q[i, b]:.2f}" for q in (x, d) for b in range(bands)) + "\n")
with open("model_average.csv", "w") as out:
    out.write("# Title: prediction of single units by weighted windows on model_average_units.csv\n")
    out.write("# Source: computed by model_average.py.\n")
    out.write("# How known: computed with numpy 2.4.6 and scipy 1.17.1 by refitting without each unit and each pair.\n")
    out.write("# Units: dB; variances in dB squared. errors: of units 1 to 8, weights found without them.\n")
    out.write("# shift: what the rule adds to the old level of unit 1.\n")
    out.write("band,offset_weight,errors,loo_rms,variance,degrees_of_freedom,half,whole_half,shift\n")
    for b in range(bands):
        shift = d[:, b].mean()
        for r, rule in enumerate(RULES):
            if rule is not None and whole[b, r] > 0:
                h, pooled, kappa = rule
                wdw = window(b, h)
                beta = fit(b, h, pooled, penalty(b, h, pooled, kappa), everyone)
                shift += whole[b, r] * ((wdw[0] - wdw.mean(0)) @ beta)
        cells = [whole[b, 0], None, np.sqrt(s2[b]), variance[b], nu, half[b], whole_half[b], shift]
        text = [";".join(f"{v:.12g}" for v in nested[b]) if c is None else f"{c:.12g}" for c in cells]
        out.write(f"{b + 1}," + ",".join(text) + "\n")
