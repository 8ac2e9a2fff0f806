"""Astrometric places of the Sun, Moon and planets from JPL's DE405, seen from the Earth's centre.

Usage: make_table.py TABLE_F0I DATES SEED > places.csv

TABLE_F0I is table.f0i of the Debian package casacore-data-jpl-de405: 1143 records of 1018 doubles, 32 days each from
JD 2436912.5 (TDB), the layout of DE405's own files without the two leading dates. Dates are drawn evenly from 1972-01-01
to 2060-01-01 by numpy's default generator. Light time is iterated; no aberration, no deflection.
"""
import sys

import numpy as np
from numpy.polynomial import chebyshev

FIRST_JD, DAYS, RECORDS = 2436912.5, 32.0, 1143
AU_KM, EMRAT, C_AU_PER_DAY = 149597870.691, 81.30056, 173.14463268466926
# first coefficient (counted from 0), coefficients, parts of a record
LAYOUT = {
    "MERCURY": (0, 14, 4), "VENUS": (168, 10, 2), "EMB": (228, 13, 2), "MARS": (306, 11, 1), "JUPITER": (339, 8, 1),
    "SATURN": (363, 7, 1), "URANUS": (384, 6, 1), "NEPTUNE": (402, 6, 1), "MOON_GEO": (438, 13, 8), "SUN": (750, 11, 2),
}

raw = open(sys.argv[1], "rb").read()
records = [np.frombuffer(raw, "<f8", 1018, 28 + 8160 * i) for i in range(RECORDS)]


def chebyshev_au(name, jd):
    start, n, parts = LAYOUT[name]
    record, within = divmod((jd - FIRST_JD) / DAYS, 1)
    part, u = divmod(within * parts, 1)
    at = start + int(part) * 3 * n
    return np.array([chebyshev.chebval(2 * u - 1, c) for c in records[int(record)][at:at + 3 * n].reshape(3, n)]) / AU_KM


def barycentric(name, jd):
    if name == "EARTH":
        return chebyshev_au("EMB", jd) - chebyshev_au("MOON_GEO", jd) / (1 + EMRAT)
    if name == "MOON":
        return barycentric("EARTH", jd) + chebyshev_au("MOON_GEO", jd)
    return chebyshev_au(name, jd)


random = np.random.default_rng(int(sys.argv[3]))
dates = np.sort(np.round(2441317.5 + random.random(int(sys.argv[2])) * (2473459.5 - 2441317.5), 3))
print("body,tt_jd,earth_x_au,earth_y_au,earth_z_au,astrometric_x_au,astrometric_y_au,astrometric_z_au")
for jd in dates:
    earth = barycentric("EARTH", jd)
    for body in ("SUN", "MOON", "MERCURY", "VENUS", "MARS", "JUPITER", "SATURN", "URANUS", "NEPTUNE"):
        days = 0.0
        for _ in range(5):
            toward = barycentric(body, jd - days) - earth
            days = np.linalg.norm(toward) / C_AU_PER_DAY
        print(body, f"{jd:.3f}", *(f"{v:.10f}" if body != "MOON" else f"{v:.12f}" for v in (*earth, *toward)), sep=",")
