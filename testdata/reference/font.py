#!/usr/bin/python3
"""Makes the font of the sheets, layout/lettering/sans.ttf, and its accents, accents.txt.

    python3 testdata/reference/font.py Go-Regular.ttf sans.ttf accents.txt

Go-Regular.ttf comes with the Go module golang.org/x/image v0.25.0, in font/gofont/ttfs.
Needs fontTools (Debian: python3-fonttools). Kept are the letters of Latin, Greek and
Cyrillic and the signs among them; hints for screens go, outlines and widths stay as they
are. It gets a name of its own, since it is not the whole font.

accents.txt gets a line for every letter with an accent that the font has: the letter, and
the letter and the combining mark that it is made of, by the Unicode data of python.
"""
import sys, unicodedata
from fontTools import subset
from fontTools.ttLib import TTFont

KEPT = [(0x20, 0x7E), (0xA0, 0x24F), (0x1E00, 0x1EFF), (0x370, 0x3FF), (0x400, 0x52F),
        (0x2010, 0x205E), (0x20A0, 0x20BF), (0x2100, 0x214F), (0x2190, 0x2195),
        (0x2200, 0x22FF), (0x25A1, 0x25A1)]
NAME = "Ribwright Sans"


def main(source, to, pairs):
    font = TTFont(source, recalcTimestamp=False)
    o = subset.Options()
    o.hinting, o.layout_features, o.legacy_cmap, o.notdef_outline = False, [], False, True
    o.name_IDs = [0, 1, 2, 3, 4, 6, 13]
    s = subset.Subsetter(o)
    s.populate(unicodes=[u for u in font.getBestCmap() if any(a <= u <= b for a, b in KEPT)])
    s.subset(font)
    font["name"].removeNames(platformID=1)
    for number, text in {1: NAME, 2: "Regular", 3: NAME + " 1", 4: NAME, 6: NAME.replace(" ", "")}.items():
        font["name"].setName(text, number, 3, 1, 0x409)
    font["cmap"].tables = [t for t in font["cmap"].tables if (t.platformID, t.platEncID, t.format) == (3, 1, 4)]
    font.save(to)
    kept = sorted(font.getBestCmap())
    with open(pairs, "w", encoding="utf-8") as out:
        for u in kept:
            d = unicodedata.decomposition(chr(u)).split()
            if len(d) == 2 and unicodedata.category(chr(u))[0] == "L" and not d[0].startswith("<") and unicodedata.combining(chr(int(d[1], 16))):
                out.write("%s %s%s\n" % (chr(u), chr(int(d[0], 16)), chr(int(d[1], 16))))
    print(len(kept), "characters,", font["maxp"].numGlyphs, "glyphs")


main(*sys.argv[1:])
