"""The bodies of DE405 for Skyfield (Debian package python3-skyfield), which reads other ephemeris files by itself."""
import numpy as np
from skyfield.vectorlib import VectorFunction

from de405 import De405

TARGETS = {"SUN": 10, "MOON": 301, "EARTH": 399, "MERCURY": 199, "VENUS": 299, "MARS": 499, "JUPITER": 599,
           "SATURN": 699, "URANUS": 799, "NEPTUNE": 899}


class Body(VectorFunction):
    center = 0
    center_name = "0 SOLAR SYSTEM BARYCENTER"

    def __init__(self, name, table):
        self.table = table
        self.name = name
        self.target = TARGETS[name]
        self.target_name = f"{self.target} {name}"
        self.ephemeris = None

    @property
    def vector_name(self):
        return "DE405"

    def _at(self, t):
        jds = np.atleast_1d(t.tdb)
        both = np.array([self.table.barycentric(self.name, jd) for jd in jds])
        place, speed = both[:, 0].T, both[:, 1].T
        if np.ndim(t.tdb) == 0:
            place, speed = place[:, 0], speed[:, 0]
        return place, speed, None, None


class Ephemeris(dict):
    def __getitem__(self, key):
        if key in TARGETS.values():
            key = {v: k for k, v in TARGETS.items()}[key]
        return super().__getitem__(str(key).upper())


def bodies_of(table):
    """By their names, in capitals, or by their numbers."""
    de405 = De405(table)
    bodies = Ephemeris({name: Body(name, de405) for name in TARGETS})
    for body in bodies.values():
        body.ephemeris = bodies
    return bodies
