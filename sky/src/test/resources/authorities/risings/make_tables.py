"""Risings, settings, transits, twilight, the Moon's phase and planets, by Skyfield with JPL's DE405.

Usage: /usr/bin/python3 make_tables.py TABLE_F0I FOLDER

TABLE_F0I is table.f0i of the Debian package casacore-data-jpl-de405 (read by ../jpl-de405). Writes events.csv
and moments.csv into FOLDER. Skyfield from the Debian package python3-skyfield; its own table of delta T; no polar motion; no
network. Rising and setting: Sun and its twilights by skyfield.almanac.dark_twilight_day (centre at -0.8333, -6, -12, -18
degrees), planets and a star by risings_and_settings (-0.5667 degrees), the Moon by its upper edge at -34 arcminutes
(radius 1737.4 km at its topocentric distance), all airless and topocentric; transits by meridian_transits.
"""
import csv
import os
import sys

import numpy as np
from skyfield import almanac
from skyfield.api import Star, load, wgs84
from skyfield import magnitudelib

sys.path.append(os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "jpl-de405"))
from skyfield_bodies import TARGETS, bodies_of

bodies = bodies_of(sys.argv[1])
timescale = load.timescale(builtin=True)
# Vega as ICRS, J2000.0 (Hipparcos).
VEGA = Star(ra_hours=(18, 36, 56.33635), dec_degrees=(38, 47, 1.2802), ra_mas_per_year=200.94,
            dec_mas_per_year=286.23, parallax_mas=130.23, radial_km_per_s=-20.6)
NAMES = {"SUN": "Sun", "MOON": "Moon"}

random = np.random.default_rng(20261125)
latitudes = [54.6, -43.95, 0.0, 23.4, -33.0, 48.0, 55.0, 57.0, 58.5, 60.0, 61.5, 63.0, 64.5, 66.0, 67.5, 69.0, 70.0,
             -55.0, -60.0, -66.0, -69.5, 35.0, -15.0, 42.0, 51.5]
cases = []
for turn in range(2):
    for i, lat in enumerate(latitudes):
        lon = -2.9 if lat == 54.6 else 170.4 if lat == -43.95 else round(float(random.uniform(-180, 180)), 2)
        height = 240 if lat == 54.6 else 710 if lat == -43.95 else int(random.integers(0, 4000))
        year = int(random.integers(2000, 2040))
        day = int(random.integers(0, 365))
        start = timescale.utc(year, 1, 1 + day, 12 - round(lon / 15))
        cases.append((len(cases) + 1, lat, lon, height, start))


def moon_up(topos):
    def f(t):
        apparent = (bodies["EARTH"] + topos).at(t).observe(bodies["MOON"]).apparent()
        alt, _, distance = apparent.altaz()
        return np.degrees(alt.radians + np.arcsin(1737.4 / distance.km)) > -34 / 60
    f.step_days = 0.02
    f.rough_period = 0.02
    return f


def magnitude_of(name, seen, here):
    """As magnitudelib.planetary_magnitude, but from the Sun itself: that function takes the barycentre for it."""
    to_planet = seen.position.au
    from_sun = to_planet - here.observe(bodies["SUN"]).position.au
    r, delta = np.linalg.norm(from_sun), np.linalg.norm(to_planet)
    phase = np.degrees(np.arccos(np.dot(from_sun, to_planet) / r / delta))
    function = magnitudelib._FUNCTIONS[TARGETS[name]]
    pole = {"SATURN": magnitudelib._SATURN_POLE, "URANUS": magnitudelib._URANUS_POLE}.get(name)
    if pole is not None:
        latitudes = [np.degrees(np.arccos(np.dot(pole, v) / np.linalg.norm(v))) - 90 for v in (from_sun, to_planet)]
        return float(function(r, delta, phase, *latitudes))
    if name == "NEPTUNE":
        return float(function(r, delta, phase, seen.t.J))
    return float(function(r, delta, phase))


def stamp(t):
    return t.utc_strftime("%Y-%m-%dT%H:%M:%SZ")


with open(sys.argv[2] + "/events.csv", "w", newline="") as out, \
        open(sys.argv[2] + "/moments.csv", "w", newline="") as places:
    events, moments = csv.writer(out, lineterminator="\n"), csv.writer(places, lineterminator="\n")
    events.writerow("case,lat_deg,lon_east_deg,height_m,from_utc,body,event,utc".split(","))
    moments.writerow("case,lat_deg,lon_east_deg,height_m,utc,body,ra_apparent_deg,dec_apparent_deg,magnitude,"
                     "sun_separation_deg,moon_separation_deg,phase_angle_deg,lit_share".split(","))
    for case, lat, lon, height, start in cases:
        topos = wgs84.latlon(lat, lon, height)
        end = timescale.tt_jd(start.tt + 1)
        rows = []

        def add(body, function, names):
            # Half-hour steps: at its own step of six hours a short dip below the horizon is missed.
            function.step_days = 0.02
            times, values = almanac.find_discrete(start, end, function)
            rows.extend((body, names(v, i), stamp(t)) for i, (t, v) in enumerate(zip(times, values)))

        twilight = almanac.dark_twilight_day(bodies, topos)
        before = int(twilight(start))
        times, values = almanac.find_discrete(start, end, twilight)
        depth = ["ASTRONOMICAL", "NAUTICAL", "CIVIL", "SUNSET"]
        for t, v in zip(times, values):
            rows.append(("SUN", depth[max(int(v), before) - 1] + ("_RISING" if v > before else "_SETTING"), stamp(t)))
            before = int(v)
        add("MOON", moon_up(topos), lambda v, i: "RISING" if v else "SETTING")
        for name in ("VENUS", "JUPITER", "NEPTUNE"):
            add(name, almanac.risings_and_settings(bodies, bodies[name], topos),
                lambda v, i: "RISING" if v else "SETTING")
        add("VEGA", almanac.risings_and_settings(bodies, VEGA, topos), lambda v, i: "RISING" if v else "SETTING")
        for name in ("SUN", "MOON", "JUPITER"):
            times, values = almanac.find_discrete(start, end, almanac.meridian_transits(bodies, bodies[name], topos))
            rows.extend((name, "TRANSIT", stamp(t)) for t, v in zip(times, values) if v == 1)
        for row in rows:
            events.writerow((case, lat, lon, height, stamp(start), *row))

        t = timescale.tt_jd(start.tt + 0.5 + (case % 7) / 20)
        here = (bodies["EARTH"] + topos).at(t)
        sun = here.observe(bodies["SUN"]).apparent()
        moon = here.observe(bodies["MOON"]).apparent()
        for name in ("SUN", "MOON", "MERCURY", "VENUS", "MARS", "JUPITER", "SATURN", "URANUS", "NEPTUNE"):
            seen = here.observe(bodies[name])
            apparent = seen.apparent()
            ra, dec, _ = apparent.radec("date")
            phase, lit = "", ""
            if name == "MOON":
                to_sun = sun.position.au - apparent.position.au
                angle = np.arccos(np.dot(to_sun, -apparent.position.au)
                                  / np.linalg.norm(to_sun) / np.linalg.norm(apparent.position.au))
                phase, lit = f"{np.degrees(angle):.4f}", f"{(1 + np.cos(angle)) / 2:.6f}"
            magnitude = "" if name in NAMES else f"{magnitude_of(name, seen, here):.3f}"
            moments.writerow((case, lat, lon, height, stamp(t), name, f"{ra._degrees:.6f}", f"{dec.degrees:.6f}", magnitude,
                              f"{apparent.separation_from(sun).degrees:.5f}",
                              f"{apparent.separation_from(moon).degrees:.5f}", phase, lit))
