# SPDX-License-Identifier: MIT
"""Writes spectra.csv, which the tests of core/recording read: Welch's estimate and H1 with its
coherence by scipy.signal, of two series that any language can make again.

    python3 spectra.py > spectra.csv

x is noise of a linear congruential generator (Knuth's constants by Numerical Recipes) with a tone
and a large mean on it; y is x passed through a resonance of two poles, with noise of its own.
"""
import numpy as np
import scipy
from scipy import signal

RATE_HZ = 997.3
SAMPLES = 1900


def noise(seed, count):
    values = []
    state = seed
    for _ in range(count):
        state = (1664525 * state + 1013904223) % 2**32
        values.append(state / 2**32 - 0.5)
    return np.array(values)


n = np.arange(SAMPLES)
x = 40 + noise(1, SAMPLES) + 0.3 * np.sin(0.61 * n + 0.2) + 1e-3 * n
own = noise(2, SAMPLES)
y = np.zeros(SAMPLES)
for k in range(SAMPLES):
    y[k] = 0.2 * x[k] + 0.3 * own[k]
    if k >= 1:
        y[k] += 1.5 * y[k - 1]
    if k >= 2:
        y[k] -= 0.9 * y[k - 2]

print(f"# scipy {scipy.__version__}, numpy {np.__version__}")
print("segment,frequency_hz,density,magnitude,phase_deg,coherence")
for segment in (256, 250, 127):
    options = dict(fs=RATE_HZ, window=signal.get_window("hann", segment, fftbins=True),
                   nperseg=segment, noverlap=segment // 2, detrend="constant")
    f, xx = signal.welch(x, scaling="density", **options)
    _, xy = signal.csd(x, y, **options)
    _, coherence = signal.coherence(x, y, **options)
    h = xy / xx
    for row in zip(f, xx, abs(h), np.degrees(np.angle(h)), coherence):
        print(segment, *(f"{value:.12g}" for value in row), sep=",")
