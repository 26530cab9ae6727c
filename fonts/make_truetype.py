# SPDX-License-Identifier: MIT
"""Turns an OpenType face with CFF outlines into a TrueType face: make_truetype.py FROM.otf TO.ttf

The same input gives the same bytes: no clock is written. Cubic curves become quadratic ones with an error of at most
a thousandth of the size of the letters, 0.02 mm in the largest figure of a card: far below what a printer shows."""

import os
import sys

from fontTools.pens.cu2quPen import Cu2QuPen
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.ttLib import TTFont, newTable

GREATEST_ERROR = 1e-3  # of the em


def quadratic_glyphs(font):
    outlines = font.getGlyphSet()
    error = GREATEST_ERROR * font["head"].unitsPerEm
    glyphs = {}
    for name in font.getGlyphOrder():
        pen = TTGlyphPen(None)
        # TrueType winds its contours the other way round.
        outlines[name].draw(Cu2QuPen(pen, error, reverse_direction=True))
        glyphs[name] = pen.glyph()
    return glyphs


def convert(font):
    glyphs = quadratic_glyphs(font)
    font["loca"] = newTable("loca")
    glyf = font["glyf"] = newTable("glyf")
    glyf.glyphs = glyphs
    glyf.glyphOrder = font.getGlyphOrder()
    for gone in ("CFF ", "VORG"):
        if gone in font:
            del font[gone]

    glyf.compile(font)  # so that every glyph knows its bounds
    for name, glyph in glyphs.items():
        advance, _ = font["hmtx"][name]
        font["hmtx"][name] = (advance, getattr(glyph, "xMin", 0))

    maxp = font["maxp"]
    maxp.tableVersion = 0x00010000
    maxp.maxZones = 1
    for field in ("maxTwilightPoints", "maxStorage", "maxFunctionDefs", "maxInstructionDefs", "maxStackElements",
                  "maxSizeOfInstructions", "maxComponentElements", "maxPoints", "maxContours", "maxCompositePoints",
                  "maxCompositeContours", "maxComponentDepth"):
        setattr(maxp, field, 0)  # those that count outlines are filled in on saving

    font["post"].formatType = 3.0
    font.sfntVersion = "\x00\x01\x00\x00"


def main():
    source, target = sys.argv[1:3]
    # Without this, the time of the run would stand in the file.
    font = TTFont(source, recalcTimestamp=False)
    convert(font)
    part = target + ".part"
    os.makedirs(os.path.dirname(target), exist_ok=True)
    font.save(part)
    os.replace(part, target)


if __name__ == "__main__":
    main()
