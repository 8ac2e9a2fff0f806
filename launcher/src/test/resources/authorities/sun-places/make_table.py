"""The Sun over eight sites on a hundred random dates and eight days of solar eclipses, by Skyfield with JPL's DE405.

Usage: /usr/bin/python3 make_table.py TABLE_F0I FOLDER

TABLE_F0I is table.f0i of the Debian package casacore-data-jpl-de405. It is read by the modules
in sky/src/test/resources/authorities/jpl-de405. Skyfield's own table of delta T; no polar motion; no network.

Writes sun.csv into FOLDER. A row is one site at one time:
  sun_ha_deg, sun_dec_deg    topocentric apparent place of the Sun's centre, true equator of date, hour angle west positive
  sun_az_deg, sun_alt_deg    the same, airless
  mercury_deg, venus_deg     topocentric apparent separation of the planet from the Sun's centre
  sunset, sunrise            of the night that is under way, or by day of the one to come: centre at -0.8333 degrees, airless
  sunset_az_deg, sunrise_az_deg   the Sun's azimuth then
The four columns of a night are given for all sites on eclipse days, for one site after another on random dates; they are
empty where the Sun does not both set and rise within a day.
Eclipse days: the Moon's and the Sun's apparent centres as seen from the Earth's centre are nearest at that minute.
"""
import csv
import datetime
import os
import sys

import numpy as np
from skyfield import almanac
from skyfield.api import load, wgs84

PROJECT = os.path.join(os.path.dirname(os.path.abspath(__file__)), *[".."] * 6)
sys.path.append(os.path.join(PROJECT, "sky", "src", "test", "resources", "authorities", "jpl-de405"))
from skyfield_bodies import bodies_of

bodies = bodies_of(sys.argv[1])
timescale = load.timescale(builtin=True)
earth, sun, moon = bodies["EARTH"], bodies["SUN"], bodies["MOON"]

SITES = [(54.6, -2.9, 240), (-43.95, 170.4, 710), (0.0, 30.0, 1200), (69.6, 18.9, 10), (-33.9, 18.5, 300),
         (35.2, -111.6, 2100), (-54.8, -68.3, 30), (19.8, -155.5, 4000)]
# Solar eclipses of 2025 to 2028: F. Espenak and J. Meeus, Five Millennium Canon of Solar Eclipses, NASA/TP-2006-214141.
ECLIPSES = ["2025-03-29", "2025-09-21", "2026-02-17", "2026-08-12", "2027-02-06", "2027-08-02", "2028-01-26", "2028-07-22"]


def stamp(t):
    return t.utc_strftime("%Y-%m-%dT%H:%M:%SZ")


def greatest(day):
    """The minute at which the centres are nearest, and how near, degrees."""
    year, month, date = (int(part) for part in day.split("-"))
    t = timescale.utc(year, month, date, 0, range(24 * 60))
    step = []
    for one in t:
        here = earth.at(one)
        step.append(here.observe(sun).apparent().separation_from(here.observe(moon).apparent()).degrees)
    at = int(np.argmin(step))
    return t[at], step[at]


def night_of(topos, here, t):
    """Sunset, azimuth, sunrise, azimuth of the night under way or to come; blanks where there is none."""
    up = almanac.sunrise_sunset(bodies, topos)
    up.step_days = 0.02
    changes, values = almanac.find_discrete(timescale.tt_jd(t.tt - 1), timescale.tt_jd(t.tt + 2), up)
    sets = [c for c, v in zip(changes, values) if v == 0]
    rises = [c for c, v in zip(changes, values) if v == 1 and c.tt > t.tt]
    if bool(up(t)):
        sets = [c for c in sets if c.tt > t.tt][:1]
    else:
        sets = [c for c in sets if c.tt <= t.tt][-1:]
    rises = [c for c in rises if sets and c.tt > sets[0].tt][:1]
    if not rises or rises[0].tt - sets[0].tt > 1 or sets[0].tt - t.tt > 1:
        return ["", "", "", ""]
    night = []
    for at in (sets[0], rises[0]):
        _, azimuth, _ = here.at(at).observe(sun).apparent().altaz()
        night += [stamp(at), f"{azimuth.degrees:.3f}"]
    return night


random = np.random.default_rng(20261129)
times = []
for number in range(100):
    day = datetime.date(2000, 1, 1) + datetime.timedelta(days=int(random.integers(0, 40 * 365)))
    times.append(("random", timescale.utc(day.year, day.month, day.day, 0, int(random.integers(0, 24 * 60)))))
for day in ECLIPSES:
    t, nearest = greatest(day)
    # Any eclipse has the centres within 1.6 degrees as seen from the Earth's centre.
    assert nearest < 1.6, (day, nearest)
    times.append(("eclipse", t))

with open(sys.argv[2] + "/sun.csv", "w", newline="") as out:
    rows = csv.writer(out, lineterminator="\n")
    rows.writerow("date,kind,lat_deg,lon_east_deg,height_m,utc,sun_ha_deg,sun_dec_deg,sun_az_deg,sun_alt_deg,mercury_deg,"
                  "venus_deg,sunset,sunset_az_deg,sunrise,sunrise_az_deg".split(","))
    for number, (kind, t) in enumerate(times, 1):
        for place, (lat, lon, height) in enumerate(SITES):
            topos = wgs84.latlon(lat, lon, height)
            here = earth + topos
            seen = here.at(t).observe(sun).apparent()
            ha, dec, _ = seen.hadec()
            alt, az, _ = seen.altaz()
            planets = [here.at(t).observe(bodies[name]).apparent().separation_from(seen).degrees
                       for name in ("MERCURY", "VENUS")]
            night = ["", "", "", ""]
            if kind == "eclipse" or number % len(SITES) == place:
                night = night_of(topos, here, t)
            signed = (ha._degrees + 180) % 360 - 180
            rows.writerow((number, kind, lat, lon, height, stamp(t), f"{signed:.5f}", f"{dec.degrees:.5f}", f"{az.degrees:.5f}",
                           f"{alt.degrees:.5f}", *(f"{p:.4f}" for p in planets), *night))
