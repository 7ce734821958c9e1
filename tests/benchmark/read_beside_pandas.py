#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Reads one log in turns with read_benchmark and with pandas' C parser (python3-pandas), the same
columns, and prints the CPU times of both.

read_beside_pandas.py READ_BENCHMARK LOG.csv [TURNS]
"""
import os
import statistics
import subprocess
import sys
import time

import pandas

program, log = sys.argv[1:3]
turns = int(sys.argv[3]) if len(sys.argv) > 3 else 5
size = os.path.getsize(log)
own, other = [], []
for _ in range(turns):
    line = subprocess.run([program, log], check=True, capture_output=True, text=True).stdout
    own.append(float(line.split()[0]))
    begin = time.process_time()
    table = pandas.read_csv(log, engine="c", usecols=[0, 1, 2, 3])
    other.append(time.process_time() - begin)
print(line.strip(), f"({len(table)} rows in pandas)")
for name, times in (("read_benchmark", own), ("pandas", other)):
    middle = statistics.median(times)
    print(f"{name}: median {middle:.3f} s of {min(times):.3f} to {max(times):.3f}, {size / middle / 1e6:.0f} MB/s")
print(f"ratio of the medians: {statistics.median(other) / statistics.median(own):.1f}")
