"""Small FITS files of every kind of pixel, and what a general-purpose astronomy library reads in them.

Usage: make_files.py FOLDER

Writes the FITS files, pixels.csv (file, row, then one value a column; planes of colour averaged) and times.csv (header
cards, then the middle of the exposure in UTC).
"""
import sys
from pathlib import Path

import numpy as np
from astropy.io import fits
from astropy.time import Time, TimeDelta

WIDTH, HEIGHT = 16, 12
folder = Path(sys.argv[1])
random = np.random.default_rng(20261125)


def sky(level, noise, dtype):
    """A sloping sky with two stars and some noise."""
    y, x = np.mgrid[0:HEIGHT, 0:WIDTH]
    values = level * (1 + 0.01 * x) + random.normal(0, noise, (HEIGHT, WIDTH))
    for x0, y0, peak in ((4.3, 3.6, 40), (11.8, 8.1, 15)):
        values += peak * noise * np.exp(-((x - x0) ** 2 + (y - y0) ** 2) / 2.5)
    return values.astype(dtype)


def rows(name, values):
    return [",".join([name, str(y), *(repr(float(v)) for v in row)]) for y, row in enumerate(values)]


def written(name, *units):
    fits.HDUList(list(units)).writeto(folder / name, overwrite=True)
    return name


lines = ["file,row," + ",".join(f"x{x}" for x in range(WIDTH))]


def check(name, unit=0):
    with fits.open(folder / name) as file:
        data = np.array(file[unit].data, dtype=np.float64)
    lines.extend(rows(name, data.mean(axis=0) if data.ndim == 3 else data))


# Plain pixels of each type.
for name, data in {
    "uint8.fits": sky(40, 3, np.uint8),
    "int16.fits": sky(-200, 30, np.int16),
    "uint16.fits": sky(33000, 90, np.uint16),
    "int32.fits": sky(-70000, 900, np.int32),
    "uint32.fits": sky(3_000_000_000, 90000, np.uint32),
    "int64.fits": sky(-5_000_000, 900, np.int64),
    "float32.fits": sky(0.5, 0.01, np.float32),
    "float64.fits": sky(1234.5, 12, np.float64),
}.items():
    if data.dtype.kind == "f":
        data[5, 7] = np.nan
    check(written(name, fits.PrimaryHDU(data)))

# Scaled integers with a value for pixels that have none.
stored = ((sky(1000, 20, np.float64) - 100) / 0.25).astype(np.int16)
stored[2, 3] = -32768
written("scaled.fits", fits.PrimaryHDU(stored))
with fits.open(folder / "scaled.fits", mode="update", do_not_scale_image_data=True) as file:
    file[0].header["BSCALE"] = 0.25
    file[0].header["BZERO"] = 100.0
    file[0].header["BLANK"] = -32768
check("scaled.fits")

# Three planes of colour.
colour = np.stack([sky(level, 20, np.uint16) for level in (900, 1400, 700)])
check(written("colour.fits", fits.PrimaryHDU(colour)))

# The picture in an extension, after a table, and keywords in the first header.
first = fits.PrimaryHDU()
first.header["DATE-OBS"] = "2026-11-25T20:00:00"
first.header["EXPTIME"] = 30.0
first.header["FOCALLEN"] = 530.0
first.header["XPIXSZ"] = 3.76
first.header["INSTRUME"] = "Larkfell guide camera"
table = fits.BinTableHDU.from_columns([fits.Column("STEP", "J", array=np.arange(5))])
check(written("extension.fits", first, table, fits.ImageHDU(sky(500, 9, np.int16))), 2)
written("no-image.fits", fits.PrimaryHDU(), table)

# Compressed by tiles.
counts = sky(1500, 20, np.uint16)
for name, options in {
    "rice.fits": {"compression_type": "RICE_1"},
    "gzip1.fits": {"compression_type": "GZIP_1"},
    "gzip2.fits": {"compression_type": "GZIP_2"},
    "hcompress.fits": {"compression_type": "HCOMPRESS_1", "tile_size": (WIDTH, HEIGHT), "hcomp_scale": 0},
}.items():
    check(written(name, fits.PrimaryHDU(), fits.CompImageHDU(counts, **options)), 1)
check(written("plio.fits", fits.PrimaryHDU(), fits.CompImageHDU(sky(300, 9, np.int16), compression_type="PLIO_1")), 1)
check(written("rice-tiles.fits", fits.PrimaryHDU(), fits.CompImageHDU(sky(900, 9, np.int32), tile_size=(5, 7))), 1)
check(
    written(
        "rice-float.fits",
        fits.PrimaryHDU(),
        fits.CompImageHDU(
            sky(50, 4, np.float32), compression_type="RICE_1", quantize_level=16, quantize_method=1, dither_seed=7
        ),
    ),
    1,
)
check(
    written(
        "gzip-float.fits",
        fits.PrimaryHDU(),
        fits.CompImageHDU(sky(50, 4, np.float32), compression_type="GZIP_2", quantize_level=0),
    ),
    1,
)
(folder / "pixels.csv").write_text("\n".join(lines) + "\n")

# The middle of an exposure, in UTC.
S = TimeDelta(1, format="sec")


def utc(time):
    return Time(time.utc, precision=6).isot + "Z"


start = "2026-11-25T20:00:00.25"
cases = [
    ("DATE-OBS='2026-11-25T20:00:00.25' EXPTIME=30.0", Time(start, scale="utc") + 15 * S),
    ("DATE-OBS='2026-11-25T23:59:50' EXPOSURE=60.0", Time("2026-11-25T23:59:50", scale="utc") + 30 * S),
    ("DATE-OBS='2026-11-25T20:00:00' EXPTIME=30.0 DATE-AVG='2026-11-25T20:00:16.5'", Time("2026-11-25T20:00:16.5")),
    ("DATE-BEG='2026-11-25T20:00:00' DATE-END='2026-11-25T20:02:00'", Time("2026-11-25T20:01:00")),
    ("DATE-END='2026-11-25T20:02:00' XPOSURE=60.0", Time("2026-11-25T20:01:30")),
    ("DATE-OBS='2026-11-25T20:00:00.25' EXPTIME=30.0 TIMESYS='TT'", Time(start, scale="tt") + 15 * S),
    ("DATE-OBS='2026-11-25T20:00:00.25' EXPTIME=30.0 TIMESYS='TDT'", Time(start, scale="tt") + 15 * S),
    ("DATE-OBS='2026-11-25T20:00:00.25' EXPTIME=30.0 TIMESYS='TAI'", Time(start, scale="tai") + 15 * S),
    ("DATE-OBS='1998-06-30T12:00:00' EXPTIME=0.0 TIMESYS='TAI'", Time("1998-06-30T12:00:00", scale="tai")),
    ("DATE-OBS='2026-11-25T20:00:00.25' EXPTIME=30.0 TIMESYS='GPS'", Time(start, scale="tai") + 34 * S),
    ("DATE-OBS='2026-11-25' TIME-OBS='20:00:00.25' EXPTIME=30.0", Time(start) + 15 * S),
    ("DATE-OBS='25/11/97' TIME-OBS='20:00:00.25' EXPTIME=30.0", Time("1997-11-25T20:00:00.25") + 15 * S),
    ("MJD-OBS=61369.84375 EXPTIME=30.0", Time(61369.84375, format="mjd", scale="utc") + 15 * S),
    ("MJD-AVG=61369.123456789", Time(61369.123456789, format="mjd", scale="utc")),
    ("MJD-AVG=61369.123456789 TIMESYS='TT'", Time(61369.123456789, format="mjd", scale="tt")),
    ("DATE-OBS='2026-11-25T20:00Z' EXPTIME='30.0'", Time("2026-11-25T20:00:00") + 15 * S),
]
(folder / "times.csv").write_text(
    "\n".join(["cards,middle_utc", *(f"{cards},{utc(middle)}" for cards, middle in cases)]) + "\n"
)
