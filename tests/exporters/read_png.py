"""Decodes a PNG of 8-bit red, green and blue by the standard's text (ISO/IEC 15948): checks every
chunk's sum and undoes the filters. Prints width and height; writes the bare values."""
import struct
import sys
import zlib

data = open(sys.argv[1], "rb").read()
assert data[:8] == b"\x89PNG\r\n\x1a\n"
at, packed, kinds = 8, b"", []
while at < len(data):
    (size,) = struct.unpack(">I", data[at : at + 4])
    kind, body = data[at + 4 : at + 8], data[at + 8 : at + 8 + size]
    (total,) = struct.unpack(">I", data[at + 8 + size : at + 12 + size])
    assert zlib.crc32(kind + body) == total, kind
    kinds.append(kind)
    if kind == b"IHDR":
        width, height, depth, colour, method, filtering, interlace = struct.unpack(">IIBBBBB", body)
        assert (depth, colour, method, filtering, interlace) == (8, 2, 0, 0, 0)
    elif kind == b"IDAT":
        packed += body
    at += 12 + size
assert kinds[0] == b"IHDR" and kinds[-1] == b"IEND"
raw = zlib.decompress(packed)
row = 3 * width
assert len(raw) == (row + 1) * height
last, values = bytes(row), bytearray()
for y in range(height):
    kind, line = raw[y * (row + 1)], bytearray(raw[y * (row + 1) + 1 : (y + 1) * (row + 1)])
    for i in range(row):
        left = line[i - 3] if i >= 3 else 0
        if kind == 1:
            line[i] = (line[i] + left) & 255
        elif kind == 2:
            line[i] = (line[i] + last[i]) & 255
        elif kind == 3:
            line[i] = (line[i] + (left + last[i]) // 2) & 255
        else:
            assert kind == 0, kind
    last = bytes(line)
    values += line
open(sys.argv[2], "wb").write(values)
print(width, height)
