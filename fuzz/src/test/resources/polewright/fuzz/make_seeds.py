#!/usr/bin/env python3
"""Writes the seeds that are not among other tests' files (raw files, nights, rigs, tables, forms) and the dictionaries.

    make_seeds.py .        (from this folder; needs nothing but Python and the repository)
"""
import pathlib
import re
import struct
import sys
from urllib.parse import urlencode

HERE = pathlib.Path(sys.argv[1] if len(sys.argv) > 1 else ".")
DOCS = pathlib.Path(__file__).resolve().parents[6] / "docs"


def keep(folder, name, content):
    path = HERE / folder / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(content if isinstance(content, bytes) else content.encode())


def segment(marker, body):
    return struct.pack(">BBH", 0xFF, marker, len(body) + 2) + body


def grey_jpeg(width, height):
    """A picture in one grey: every block is a difference of nothing, then its end (ITU-T T.81, annex F)."""
    blocks = ((width + 7) // 8) * ((height + 7) // 8)
    bits = "00" * blocks
    bits += "1" * (-len(bits) % 8)
    scan = bytes(int(bits[i : i + 8], 2) for i in range(0, len(bits), 8)).replace(b"\xff", b"\xff\x00")
    return (
        b"\xff\xd8"
        + segment(0xDB, b"\0" + b"\1" * 64)
        + segment(0xC0, struct.pack(">BHHBBBB", 8, height, width, 1, 1, 0x11, 0))
        + segment(0xC4, b"\x00" + bytes([1] + [0] * 15) + b"\x00")
        + segment(0xC4, b"\x10" + bytes([1] + [0] * 15) + b"\x00")
        + segment(0xDA, b"\1\1\0\0\x3f\0")
        + scan
        + b"\xff\xd9"
    )


def directory(order, at, entries, following=0):
    """A TIFF directory of short and long values (TIFF 6.0, section 2)."""
    body = struct.pack(order + "H", len(entries))
    for tag, kind, value in sorted(entries):
        code = {"short": 3, "long": 4, "byte": 1}[kind]
        packed = struct.pack(order + ("H2x" if kind == "short" else "I"), value) if kind != "byte" else bytes(value)
        body += struct.pack(order + "HHI", tag, code, 4 if kind == "byte" else 1) + packed
    return body + struct.pack(order + "I", following)


def raw_like_tiff(magic, order, picture, thumbnail=b"", dng=False, mark=b""):
    start = 8 + len(mark)
    first_size = 2 + 12 * (5 + (1 if dng else 0)) + 4
    second_size = 2 + 12 * 4 + 4
    second = start + first_size
    thumbnail_at = second + second_size
    picture_at = thumbnail_at + len(thumbnail)
    entries = [
        (0x0100, "long", 4000),
        (0x0101, "long", 3000),
        (0x0103, "short", 6),
        (0x0111, "long", thumbnail_at),
        (0x0117, "long", len(thumbnail)),
    ] + ([(0xC612, "byte", (1, 4, 0, 0))] if dng else [])
    preview = [(0x0103, "short", 6), (0x0106, "short", 32803), (0x0201, "long", picture_at), (0x0202, "long", len(picture))]
    return (
        magic
        + struct.pack(order + "I", start)
        + mark
        + directory(order, start, entries, second)
        + directory(order, second, preview)
        + thumbnail
        + picture
    )


def raws():
    folder = "FrameFuzzTestInputs/rawPreview"
    large, small = grey_jpeg(640, 8), grey_jpeg(160, 8)
    keep(folder, "dng-little.raw", raw_like_tiff(b"II*\0", "<", large, small, dng=True))
    keep(folder, "dng-big.raw", raw_like_tiff(b"MM\0*", ">", large, small, dng=True))
    keep(folder, "marked.raw", raw_like_tiff(b"II*\0", "<", large, small, mark=b"CR\2\0\0\0\0\0"))
    keep(folder, "other-magic.raw", raw_like_tiff(b"IIRO", "<", large))
    keep(folder, "searched.raw", b"detector 1.0" + bytes(52) + small + b"\xff\xd8\xff" + large + b"tail")
    keep(folder, "boxed.raw", b"\0\0\0\x18ftypcrx \0\0\0\1crx isom\0\0\0\0mdat" + large)
    keep(folder, "thumbnail-only.raw", raw_like_tiff(b"II*\0", "<", small, dng=True))
    keep("FrameFuzzTestInputs/jpeg", "one-grey.jpg", grey_jpeg(16, 16))


def nights():
    text = (DOCS / "events.md").read_text()
    folder = "TextFuzzTestInputs/jsonLines"
    blocks = re.findall(r"```jsonl?\n(.*?)```", text, re.S)
    begin = next(b for b in blocks if '"begin"' in b).splitlines()[0]
    for block in blocks:
        lines = block.strip().splitlines()
        kind = re.search(r'"event":"(\w+)"', lines[0]).group(1)
        if len(lines) > 3:
            keep(folder, "whole-night.jsonl", block)
        elif kind == "begin":
            keep(folder, "begin-%d.jsonl" % len(lines[0]), lines[0] + "\n")
        elif kind in ("withdraw", "correct_turn", "unlogged_turn"):
            turn = '{"at":"2026-01-15T18:40:00Z","event":"turn","azimuth_turns":-1}'
            keep(folder, kind + ".jsonl", "\n".join([begin, turn, turn] + lines) + "\n")
        else:
            keep(folder, kind + ".jsonl", "\n".join([begin] + lines) + "\n")
    rigs = re.findall(r'"rig":(\{.*\}),"allowance"', text)
    for rig in rigs:
        keep("TextFuzzTestInputs/rig", "fork.json", rig + "\n")
    screw = '{"geometry":{"kind":"push_screw","thread_pitch_mm":1.25,"arm_mm":95},"clockwise":"%s"}'
    keep(
        "TextFuzzTestInputs/rig",
        "tracker.json",
        '{\n  "name": "tracker",\n  "kind": "tracker",\n  "azimuth_screw": %s,\n  "altitude_screw": %s,\n'
        '  "level_sigma_deg": 1,\n  "clamp_sigma_arcmin": 4\n}\n' % (screw % "right", screw % "lowers"),
    )


def tables():
    folder = "TextFuzzTestInputs/centrings"
    keep(folder, "usual.csv", "time,star,ra,dec\n2026-11-25T20:00Z,capella,5h17m38s,+46d12m36s\n2026-11-25T20:04Z,rigel,78.71,-8.12\n2026-11-25T20:09Z,vega,18h37m41s,+38d48m\n2026-11-25T20:12Z,deneb,20h41m50s,+45d20m\n")
    keep(folder, "hour-angles.csv", "# from the hand box\ntime;star;ha;dec;sigma_arcmin\n2026-11-25T21:00+01:00;vega;4h10m;+38d48m;0.5\n2026-11-25 20:05Z;M 31;-1h;41.3;\n")
    keep(folder, "j2000.csv", "\ufefftime\tstar\tra\tdec\tequinox\n2026-11-25T20:00:30Z\t279.23,38.78\t279.2\t38.8\tj2000\n2026-11-25T20:00:30Z\tjupiter\t100\t23\tdate\n")
    folder = "TextFuzzTestInputs/skyline"
    keep(folder, "commas.csv", "azimuth,altitude\n0,8\n95,22.5\n180,4\n270,15\n")
    keep(folder, "blanks.csv", "# garden\n\n0 8\n90\t22.5\n90;0\n359.9 , -1\n")


def forms():
    folder = "TextFuzzTestInputs/formPost"
    known = {"key": "press-of-a-seed", "night": "1", "if-last-is": "2", "done-at": "2026-11-25T20:04:30.250Z"}
    for form, fields in {
        "begin": {"site": "54.60,-2.90,240", "name": "Larkfell", "for": "casual look", "allow": "5"},
        "horizon": {"corners": "0,8 95,22.5 180,4"},
        "compass": {"bearing": "12,5", "declination": "-1.5", "sigma": "3"},
        "scale": {"altitude": "54.5", "from-zenith": "yes"},
        "shadow": {"angle": "-12", "body": "moon"},
        "bearing": {"star": "alp Lyr", "angle": "-30.5"},
        "altitude": {"star": "M 31", "difference": "-3"},
        "still": {"star": "polaris", "distance": "0.2", "toward": "4.5", "with": "finder", "view": "inverted"},
        "drift": {"star": "rigel", "minutes": "5", "moved": "2.5", "unit": "arcsec", "toward": "south", "west": "3"},
        "centre": {"body": "capella", "reads": "5h17m38s,+46d12m36s", "hour-angle": "yes", "sigma": "1"},
        "turn": {"azimuth": "2 ccw then 1/2 cw", "altitude": "1 1/4", "instead-of": "3"},
        "note": {"text": "- dew, \u00fc & 100 % cloud"},
        "undo": {"seq": "2"},
        "clamp": {},
        "allow-for": {"for": "long guided subs", "focal-length": "1200", "pixel": "3.76", "size": "4000x3000", "binning": "2"},
        "allow-limit": {"arcmin": "5"},
        "allow-look": {"name": "M 13", "field": "0.8", "stay": "15", "go-to": "10", "target": "M 13", "at": "2026-11-25T22:00Z"},
        "allow-shot": {"name": "nebula", "exposure": "120", "total": "60", "guided": "25", "tolerance": "2px", "declination": "-5", "hours": "2E,1.5W"},
        "allow-drop": {"name": "nebula"},
        "target": {"body": "83.82,-5.39"},
        "practice-begin": {"seed": "7", "site": "-43.95,170.40,710", "at": "2026-11-25T10:00Z", "camera": "yes"},
        "practice-screw": {"screw": "azimuth", "turns": "3/8 ccw"},
        "practice-move": {"right": "-1.5", "up": "0.5"},
        "practice-drift": {"star": "rigel", "minutes": "5"},
        "practice-wait": {"minutes": "10"},
        "devices-revoke": {"device": "all"},
    }.items():
        keep(folder, form + ".post", form + "\n" + urlencode({**fields, **known}))


def dictionary(name, entries):
    def entry(bytes_):
        return '"' + "".join(chr(b) if 32 <= b < 127 and chr(b) not in '"\\' else "\\x%02x" % b for b in bytes_) + '"'

    distinct = dict.fromkeys(e if isinstance(e, bytes) else e.encode() for e in entries)
    keep("dictionaries", name, "".join(entry(e) + "\n" for e in distinct))


def dictionaries():
    cards = "SIMPLE XTENSION BITPIX NAXIS NAXIS1 NAXIS2 NAXIS3 PCOUNT GCOUNT GROUPS EXTEND BZERO BSCALE BLANK TFIELDS THEAP"
    cards += " TTYPE1 TFORM1 TTYPE2 TFORM2 TZERO1 TSCAL1 ZIMAGE ZBITPIX ZNAXIS ZNAXIS1 ZNAXIS2 ZTILE1 ZTILE2 ZCMPTYPE ZQUANTIZ"
    cards += " ZDITHER0 ZNAME1 ZVAL1 ZNAME2 ZVAL2 ZBLANK ZSCALE ZZERO BAYERPAT COLORTYP ROWORDER DATE-OBS DATE-AVG EXPTIME"
    cards += " TIMESYS INSTRUME FOCALLEN XPIXSZ XBINNING SATURATE DATAMAX CONTINUE HIERARCH END"
    values = "T F 8 16 32 64 -32 -64 0 1 999 32768 2147483647 4294967296 -1 1E300 'IMAGE   ' 'BINTABLE' 'RICE_1  ' 'GZIP_1  '"
    values += " 'GZIP_2  ' 'HCOMPRESS_1' 'PLIO_1  ' 'COMPRESSED_DATA' 'UNCOMPRESSED_DATA' 'GZIP_COMPRESSED_DATA' 'ZSCALE  ' 'ZZERO   '"
    values += " 'NO_DITHER' 'SUBTRACTIVE_DITHER_1' '1PB(8)' '1QB(8)' '1PI(8)' '1PJ(8)' '1D' 'BLOCKSIZE' 'BYTEPIX' 'SCALE' 'SMOOTH'"
    values += " 'RGGB' '2026-11-25T20:00:00.5'"
    values_all = re.findall(r"'[^']*'|\S+", values)
    dictionary(
        "fits.dict",
        [("%-8s=" % c) for c in cards.split()] + ["%20s" % v for v in values_all] + ["%-80s" % "END"],
    )
    tags = [0x100, 0x101, 0x102, 0x103, 0x106, 0x110, 0x111, 0x115, 0x116, 0x117, 0x11C, 0x13D, 0x140, 0x142, 0x143, 0x144, 0x145]
    tags += [0x14A, 0x152, 0x153, 0x15B, 0x201, 0x202, 0x828D, 0x829A, 0x8769, 0x8825, 0x9003, 0x9011, 0x920A, 0xA20E, 0xC612]
    compressions = [1, 2, 3, 4, 5, 6, 7, 8, 32773, 32946, 34712, 50000]
    dictionary(
        "tiff.dict",
        [struct.pack("<H", t) for t in tags]
        + [struct.pack("<HHHI", t, 3, 0, 1)[:4] for t in tags]
        + [struct.pack("<HHIH", 0x103, 3, 1, c) for c in compressions]
        + [struct.pack("<HHIH", 0x106, 3, 1, c) for c in (0, 1, 2, 3, 5, 6, 8, 32803, 34892)]
        + [b"II*\0", b"MM\0*", b"IIRO", b"II+\0", b"\xff\xd8\xff", b"ftypcrx ", b"CR\2\0"]
        + [struct.pack("<I", n) for n in (0, 1, 0xFFFF, 0x10000, 0x7FFFFFFF, 0xFFFFFFFF)],
    )
    dictionary(
        "png.dict",
        [b"\x89PNG\r\n\x1a\n"]
        + "IHDR PLTE IDAT IEND tRNS gAMA cHRM sRGB iCCP tEXt zTXt iTXt bKGD pHYs sBIT sPLT hIST tIME eXIf acTL".split()
        + [b"\x08\x06\0\0\1", b"\x10\x00\0\0\0", b"\x01\x03\0\0\0", b"\x7f\xff\xff\xff", b"\x78\x9c"],
    )
    markers = [0xC0, 0xC1, 0xC2, 0xC3, 0xC4, 0xC8, 0xC9, 0xCA, 0xCC, 0xD0, 0xD7, 0xD8, 0xD9, 0xDA, 0xDB, 0xDD, 0xE0, 0xE1, 0xE2, 0xEE, 0xFE]
    dictionary(
        "jpeg.dict",
        [bytes([0xFF, m]) for m in markers]
        + [b"JFIF\0", b"Exif\0\0", b"Adobe\0", b"ICC_PROFILE\0", b"\xff\xd8\xff", b"\xff\xff", b"\xff\0", b"\0\x11\x08"],
    )
    events = (DOCS / "events.md").read_text()
    keys = sorted(set(re.findall(r'"([a-z_0-9]+)":', events)))
    words = sorted(set(re.findall(r':"([a-z_0-9 ]+)"', events)) | set(re.findall(r"`([a-z_]+)`", events)))
    odd = ["null", "true", "false", "NaN", "-Infinity", "1e400", "1e-400", "-0.0", "1E999999999", "[]", "{}", "[{", "}]", "\\u0000", "\\ud800"]
    dictionary("events.dict", ['"%s":' % k for k in keys] + ['"%s"' % w for w in words] + odd)
    dictionary(
        "centrings.dict",
        "time star ra ha dec equinox sigma_arcmin date j2000 capella rigel vega polaris moon jupiter".split()
        + ["M 31", "NGC 7000", "alp Lyr", "2026-11-25T20:00Z", "+01:00", "5h17m38s", "+46d12m36s", ",", ";", "\t", "#", "\n", "NaN", "1e400", "-0"],
    )
    source = (DOCS.parent / "web/src/main/java/polewright/web/form").glob("*Forms.java")
    names = sorted(set(re.findall(r'(?:option|positional)\(\s*"([a-z-]+)"', "".join(f.read_text() for f in sorted(source)))))
    dictionary(
        "forms.dict",
        ["&%s=" % n for n in names]
        + ["&key=", "&night=", "&if-last-is=", "&done-at=", "%00", "%0A", "%ff", "%zz", "+", "%2C", "-", "--", "NaN", "1e400", "1/0", "then", "ccw"],
    )


raws()
dictionaries()
nights()
tables()
forms()
