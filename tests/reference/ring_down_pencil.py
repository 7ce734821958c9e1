#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Poles of invented decays by the matrix pencil (Hua & Sarkar 1990), independent of the program.

Writes ring_down_pencil.csv beside itself: case, frequency_hz, loss_factor as the pencil finds them
in the noisy samples. The samples come from decays() below, which the test repeats."""
import csv
import pathlib

import numpy as np

# rate, samples, noise, modes (Hz, loss, amplitude a column, phase)
CASES = [
    (500.0, 500, 0.02, [(20.0, 0.08, (1.0, 0.5, -0.3), 0.3), (21.0, 0.10, (-0.4, 0.8, 0.6), 1.2)]),
    (1000.0, 700, 0.02, [(14.6, 0.07, (1.0,), 0.0), (22.3, 0.12, (0.8,), -0.8),
                         (37.5, 0.09, (0.5,), 2.0)]),
    (100.0, 150, 0.01, [(9.3, 0.22, (1.0, 0.2), 0.5), (23.1, 0.15, (0.3, -0.9), 0.1)]),
]


def decays(case):
    rate, samples, noise, modes = case
    state = 12345
    values = np.zeros((samples, len(modes[0][2])))
    for n in range(samples):
        for c in range(values.shape[1]):
            for f, loss, amplitude, phase in modes:
                w, z = 2 * np.pi * f, loss / 2
                values[n, c] += (amplitude[c] * np.exp(-z * w * n / rate)
                                 * np.cos(w * np.sqrt(1 - z * z) * n / rate + phase))
            state = (1664525 * state + 1013904223) % 2**32
            values[n, c] += noise * np.sqrt(12) * (state / 2**32 - 0.5)
    return values


def pencil(values, rate, poles):
    samples, columns = values.shape
    length = samples // 2
    hankel = np.hstack([np.array([values[k:k + length, c] for k in range(samples - length + 1)]).T
                        for c in range(columns)])
    left = np.linalg.svd(hankel, full_matrices=False)[0][:, :2 * poles]
    shift = np.linalg.lstsq(left[:-1], left[1:], rcond=None)[0]
    s = np.log(np.linalg.eigvals(shift)) * rate
    s = s[s.imag > 0]
    found = sorted((abs(p) / (2 * np.pi), -2 * p.real / abs(p)) for p in s)
    return found


with open(pathlib.Path(__file__).with_suffix(".csv"), "w", newline="") as file:
    out = csv.writer(file, lineterminator="\n")
    out.writerow(["case", "frequency_hz", "loss_factor"])
    for number, case in enumerate(CASES):
        for f, loss in pencil(decays(case), case[0], len(case[3])):
            out.writerow([number, f"{f:.6f}", f"{loss:.6f}"])
