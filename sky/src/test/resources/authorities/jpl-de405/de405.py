"""JPL's DE405 as table.f0i of the Debian package casacore-data-jpl-de405 holds it.

1143 records of 1018 doubles, 32 days each from JD 2436912.5 (TDB), the layout of DE405's own files without the two leading
dates. Used by make_table.py here, ../risings/make_tables.py and sun-places in the module app.
"""
import numpy as np
from numpy.polynomial import chebyshev

FIRST_JD, DAYS, RECORDS = 2436912.5, 32.0, 1143
AU_KM, EMRAT = 149597870.691, 81.30056
# first coefficient (counted from 0), coefficients, parts of a record
LAYOUT = {
    "MERCURY": (0, 14, 4), "VENUS": (168, 10, 2), "EMB": (228, 13, 2), "MARS": (306, 11, 1), "JUPITER": (339, 8, 1),
    "SATURN": (363, 7, 1), "URANUS": (384, 6, 1), "NEPTUNE": (402, 6, 1), "MOON_GEO": (438, 13, 8), "SUN": (750, 11, 2),
}


class De405:
    def __init__(self, table):
        with open(table, "rb") as file:
            raw = file.read()
        self.records = np.array([np.frombuffer(raw, "<f8", 1018, 28 + 8160 * i) for i in range(RECORDS)])

    def chebyshev_au(self, name, jd):
        """Position (3) and velocity a day (3), au."""
        start, n, parts = LAYOUT[name]
        record, within = divmod((jd - FIRST_JD) / DAYS, 1)
        part, u = divmod(within * parts, 1)
        at = start + int(part) * 3 * n
        c = self.records[int(record)][at:at + 3 * n].reshape(3, n)
        place = np.array([chebyshev.chebval(2 * u - 1, k) for k in c]) / AU_KM
        speed = np.array([chebyshev.chebval(2 * u - 1, chebyshev.chebder(k)) for k in c]) * 2 * parts / DAYS / AU_KM
        return np.array([place, speed])

    def barycentric(self, name, jd):
        """The same, from the barycentre of the solar system."""
        if name == "EARTH":
            return self.chebyshev_au("EMB", jd) - self.chebyshev_au("MOON_GEO", jd) / (1 + EMRAT)
        if name == "MOON":
            return self.barycentric("EARTH", jd) + self.chebyshev_au("MOON_GEO", jd)
        return self.chebyshev_au(name, jd)
