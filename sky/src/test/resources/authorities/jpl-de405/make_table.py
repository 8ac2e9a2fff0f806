"""Astrometric places of the Sun, Moon and planets from JPL's DE405, seen from the Earth's centre.

Usage: make_table.py TABLE_F0I DATES SEED > places.csv

TABLE_F0I is table.f0i of the Debian package casacore-data-jpl-de405 (read by de405.py). Dates are drawn
evenly from 1972-01-01 to 2060-01-01 by numpy's default generator. Light time is iterated; no aberration, no deflection.
"""
import sys

import numpy as np

from de405 import De405

C_AU_PER_DAY = 173.14463268466926

de405 = De405(sys.argv[1])


def barycentric(name, jd):
    return de405.barycentric(name, jd)[0]


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
