"""Where astropy puts pixels by each WCS header: NAME.csv beside NAME.hdr.

Usage: python3 make_tables.py NAME.hdr [NAME.hdr ...]

Columns: x, y of a pixel (FITS counting, the first is 1), right ascension and declination in degrees (ICRS).
"""

import sys
import warnings

import astropy
from astropy.io import fits
from astropy.wcs import WCS

# The header stands alone: no pixels follow it.
warnings.simplefilter("ignore")

for name in sys.argv[1:]:
    header = fits.Header.fromfile(name)
    wcs = WCS(header)
    width, height = header["NAXIS1"], header["NAXIS2"]
    with open(name.removesuffix(".hdr") + ".csv", "w", encoding="ascii") as table:
        table.write(f"# astropy {astropy.__version__} (wcslib {astropy.wcs._wcs.__version__}), all_pix2world, origin 1\n")
        for row in range(5):
            for column in range(5):
                x = 1 + column * (width - 1) / 4
                y = 1 + row * (height - 1) / 4
                ra, dec = wcs.all_pix2world(x, y, 1)
                table.write(f"{x!r},{y!r},{float(ra)!r},{float(dec)!r}\n")
