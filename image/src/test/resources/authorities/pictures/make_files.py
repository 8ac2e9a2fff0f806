"""Small TIFF, PNG and JPEG pictures of every kind, and what general-purpose picture libraries read in them.

Usage: make_files.py FOLDER

Writes the pictures and pixels.csv: file, row, then one value a column; colours averaged, transparency left out, JPEG made
linear by the sRGB curve (IEC 61966-2-1) on a scale of 0 to 255. The Exif tags are written by exiftool.
"""
import struct
import subprocess
import sys
import zlib
from pathlib import Path

import numpy as np
import tifffile
from PIL import Image

WIDTH, HEIGHT = 16, 12
folder = Path(sys.argv[1])
random = np.random.default_rng(20261125)
lines = ["file,row," + ",".join(f"x{x}" for x in range(WIDTH))]


def sky(level, noise, dtype, planes=1):
    y, x = np.mgrid[0:HEIGHT, 0:WIDTH]
    shape = (HEIGHT, WIDTH) if planes == 1 else (HEIGHT, WIDTH, planes)
    values = level * (1 + 0.01 * x)
    values += 30 * noise * np.exp(-((x - 4.3) ** 2 + (y - 3.6) ** 2) / 2.5)
    return ((values if planes == 1 else values[..., None]) + random.normal(0, noise, shape)).astype(dtype)


def check(name, values):
    values = np.asarray(values, dtype=np.float64)
    grey = values if values.ndim == 2 else values[..., :3].mean(axis=2)
    lines.extend(",".join([name, str(y), *(repr(float(v)) for v in row)]) for y, row in enumerate(grey))


def tiff(name, data, expected=None, **options):
    tifffile.imwrite(folder / name, data, metadata=None, software=False, **options)
    check(name, tifffile.imread(folder / name) if expected is None else expected)


def png(name, data, colour_type):
    """PNG by hand: the library at hand does not write 16-bit colour."""
    depth = data.dtype.itemsize * 8
    raw = b"".join(b"\0" + row.reshape(-1).astype(f">u{data.dtype.itemsize}").tobytes() for row in data)
    parts = [b"\x89PNG\r\n\x1a\n"]
    for kind, body in (
        (b"IHDR", struct.pack(">IIBBBBB", WIDTH, HEIGHT, depth, colour_type, 0, 0, 0)),
        (b"IDAT", zlib.compress(raw)),
        (b"IEND", b""),
    ):
        parts.append(struct.pack(">I", len(body)) + kind + body + struct.pack(">I", zlib.crc32(kind + body)))
    (folder / name).write_bytes(b"".join(parts))
    check(name, data)


def pillow(name, image, **options):
    image.save(folder / name, **options)
    return Image.open(folder / name)


def linear(values):
    v = np.asarray(values, dtype=np.float64) / 255
    return np.where(v <= 0.04045, v / 12.92, ((v + 0.055) / 1.055) ** 2.4) * 255


grey8, grey16 = sky(40, 3, np.uint8), sky(2000, 60, np.uint16)
colour8, colour16 = sky(40, 3, np.uint8, 3), sky(2000, 60, np.uint16, 3)
alpha8 = np.dstack([colour8, np.full((HEIGHT, WIDTH), 255, np.uint8)])

tiff("grey8.tiff", grey8)
tiff("grey16.tiff", grey16)
tiff("grey16-big-endian.tiff", grey16, byteorder=">")
tiff("grey16-strips.tiff", grey16, rowsperstrip=5)
tiff("grey16-tiles.tiff", grey16, tile=(16, 16))
tiff("colour8.tiff", colour8, photometric="rgb")
tiff("colour16.tiff", colour16, photometric="rgb")
planes = np.moveaxis(colour16, 2, 0).copy()
tiff("colour16-planes.tiff", planes, expected=colour16, photometric="rgb", planarconfig="separate")
tiff("alpha8.tiff", alpha8, photometric="rgb", extrasamples=["unassalpha"])
tiff("float32.tiff", sky(500, 9, np.float32))
tiff("white-is-zero.tiff", grey8, expected=255 - grey8.astype(int), photometric="miniswhite")
for name, compression in (("lzw", "tiff_lzw"), ("deflate", "tiff_adobe_deflate"), ("packbits", "packbits")):
    check(f"grey16-{name}.tiff", pillow(f"grey16-{name}.tiff", Image.fromarray(grey16), compression=compression))
    check(f"colour8-{name}.tiff", pillow(f"colour8-{name}.tiff", Image.fromarray(colour8), compression=compression))

png("grey8.png", grey8, 0)
png("grey16.png", grey16, 0)
png("colour8.png", colour8, 2)
png("colour16.png", colour16, 2)
png("alpha8.png", alpha8, 6)
palette = Image.fromarray(colour8).quantize(16)
check("palette.png", np.asarray(pillow("palette.png", palette).convert("RGB")))

check("grey.jpg", linear(pillow("grey.jpg", Image.fromarray(grey8), quality=95)))
check("colour.jpg", linear(pillow("colour.jpg", Image.fromarray(colour8), quality=95, subsampling=0)))
check("progressive.jpg", linear(pillow("progressive.jpg", Image.fromarray(grey8), quality=95, progressive=True)))
(folder / "pixels.csv").write_text("\n".join(lines) + "\n")

# Exif.
COMMON = [
    "-ExifIFD:DateTimeOriginal=2026:11:25 21:00:00",
    "-ExifIFD:SubSecTimeOriginal=25",
    "-ExifIFD:ExposureTime=30",
    "-ExifIFD:FocalLength=135",
    "-IFD0:Model=Larkfell camera",
]
PLANE = [
    "-ExifIFD:FocalPlaneXResolution=2500",
    "-ExifIFD:FocalPlaneResolutionUnit=cm",
    "-ExifIFD:ExifImageWidth=32",
]
for name, tags in {
    "exif-local.jpg": COMMON + PLANE,
    "exif-zone.jpg": COMMON + ["-ExifIFD:OffsetTimeOriginal=+01:00", "-ExifIFD:FocalLengthIn35mmFormat=203"],
    "exif-receiver.jpg": COMMON + ["-GPS:GPSDateStamp=2026:11:25", "-GPS:GPSTimeStamp=20:00:02"],
    "exif-receiver-far.jpg": COMMON + ["-GPS:GPSDateStamp=2026:11:25", "-GPS:GPSTimeStamp=20:03:20"],
    "exif-blank.jpg": ["-ExifIFD:DateTimeOriginal#=0000:00:00 00:00:00", "-ExifIFD:FocalLength=0"],
}.items():
    (folder / name).write_bytes((folder / "grey.jpg").read_bytes())
    subprocess.run(["exiftool", "-q", "-overwrite_original", *tags, folder / name], check=True)
(folder / "exif.png").write_bytes((folder / "grey8.png").read_bytes())
subprocess.run(["exiftool", "-q", "-overwrite_original", *COMMON, folder / "exif.png"], check=True)
(folder / "exif.tiff").write_bytes((folder / "grey16.tiff").read_bytes())
subprocess.run(["exiftool", "-q", "-overwrite_original", *COMMON, *PLANE, folder / "exif.tiff"], check=True)
