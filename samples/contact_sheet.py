#!/usr/bin/env python3
"""Puts grey pictures (PGM, as pdftoppm -gray makes them) side by side on one sheet, in rows.

usage: contact_sheet.py OUT.png COLUMNS PICTURE.pgm…   Python's standard library alone.
"""

import struct
import sys
import zlib

GAP = 24
PAPER, TABLE, EDGE = 255, 225, 170


def read_pgm(name):
    """A binary PGM of 8 bits: width, height, rows."""
    with open(name, "rb") as file:
        data = file.read()
    fields, at = [], 0
    while len(fields) < 4:
        end = at
        while not data[end : end + 1].isspace():
            end += 1
        fields.append(data[at:end])
        at = end + 1
    width, height = int(fields[1]), int(fields[2])
    return [data[at + y * width : at + (y + 1) * width] for y in range(height)]


def edged(picture):
    """With a hairline around, so that paper is told from the table it lies on."""
    line = bytes([EDGE]) * (len(picture[0]) + 2)
    return [line] + [bytes([EDGE]) + row + bytes([EDGE]) for row in picture] + [line]


def beside(pictures, width):
    """One row of pictures, aligned at the top, on a table of this width."""
    rows = []
    for y in range(max(len(picture) for picture in pictures)):
        row = bytes([TABLE]) * GAP
        for picture in pictures:
            row += picture[y] if y < len(picture) else bytes([TABLE]) * len(picture[0])
            row += bytes([TABLE]) * GAP
        rows.append(row.ljust(width, bytes([TABLE])))
    return rows


def write_png(name, rows):
    """A grey picture of 8 bits as PNG (W3C, Portable Network Graphics, Third Edition)."""

    def chunk(kind, body):
        return struct.pack(">I", len(body)) + kind + body + struct.pack(">I", zlib.crc32(kind + body))

    header = struct.pack(">IIBBBBB", len(rows[0]), len(rows), 8, 0, 0, 0, 0)
    lines = b"".join(b"\0" + row for row in rows)
    with open(name, "wb") as file:
        file.write(b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", header))
        file.write(chunk(b"IDAT", zlib.compress(lines, 9)) + chunk(b"IEND", b""))


def main():
    out, columns, names = sys.argv[1], int(sys.argv[2]), sys.argv[3:]
    pictures = [edged(read_pgm(name)) for name in names]
    lines = [pictures[i : i + columns] for i in range(0, len(pictures), columns)]
    width = max(GAP + sum(len(p[0]) + GAP for p in line) for line in lines)
    space = [bytes([TABLE]) * width] * GAP
    rows = list(space)
    for line in lines:
        rows += beside(line, width) + space
    write_png(out, rows)


main()
