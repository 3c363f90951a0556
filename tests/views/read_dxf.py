"""Reads a DXF file with ezdxf and prints what is in it, one fact a line, tabs between the words:
  audit    code, message           each fault or mended fault
  version, unit
  layer    name, colour, line type, weight
  entity   type, layer, how many
  other    type, what is not drawn by its layer
  empty    type, handle            nothing to see
  dimension  value, what it measures, entities of its block, text in it
  arc      layer, radius
  text     layer, text
  area     layer, area             of closed polylines and circles
  hatch    layer, area             signed, of its loops as the reader flattens them
  dangling name                    a block that is no dimension's
"""
import math
import sys
from collections import Counter

import ezdxf
from ezdxf import path as paths
from ezdxf.lldxf.encoding import decode_dxf_unicode


def put(*words):
    print("\t".join(str(word) for word in words))


doc = ezdxf.readfile(sys.argv[1])
audit = doc.audit()
for fault in audit.errors + audit.fixes:
    put("audit", fault.code, fault.message)
put("version", doc.dxfversion)
put("unit", doc.header["$INSUNITS"])
space = doc.modelspace()
for layer in doc.layers:
    put("layer", layer.dxf.name, layer.color, layer.dxf.linetype, layer.dxf.lineweight)
counts = Counter((one.dxftype(), one.dxf.layer) for one in space)
for (kind, layer), count in sorted(counts.items()):
    put("entity", kind, layer, count)


def empty(one):
    kind = one.dxftype()
    if kind == "LINE":
        return (one.dxf.start - one.dxf.end).magnitude < 1e-6
    if kind in ("ARC", "CIRCLE"):
        return one.dxf.radius < 1e-6
    if kind == "LWPOLYLINE":
        return len(one) < 2 or (len(one) == 2 and one[0][:2] == one[1][:2])
    if kind == "TEXT":
        return not one.dxf.text.strip() or one.dxf.height <= 0
    if kind == "HATCH":
        return len(one.paths) == 0
    if kind == "DIMENSION":
        return not list(doc.blocks.get(one.dxf.geometry))
    raise ValueError(kind)


def exact_area(one):
    """Of a circle or of a closed polyline with arcs: chords, and the segments beyond them."""
    if one.dxftype() == "CIRCLE":
        return math.pi * one.dxf.radius**2
    points = list(one.get_points("xyb"))
    total = 0
    for (x0, y0, bulge), (x1, y1, _) in zip(points, points[1:] + points[:1]):
        total += (x0 * y1 - y0 * x1) / 2
        if bulge:
            sweep = 4 * math.atan(bulge)
            radius = math.hypot(x1 - x0, y1 - y0) / (2 * math.sin(abs(sweep) / 2))
            total += radius**2 * (sweep - math.sin(sweep)) / 2
    return total


used = set()
for one in space:
    kind = one.dxftype()
    for name in ("color", "linetype", "lineweight", "true_color"):
        if one.dxf.hasattr(name):
            put("other", kind, name)
    if empty(one):
        put("empty", kind, one.dxf.handle)
    if kind == "DIMENSION":
        block = doc.blocks.get(one.dxf.geometry)
        used.add(block.name)
        drawn = list(block)
        texts = [part.dxf.text for part in drawn if part.dxftype() == "TEXT"]
        for part in drawn:
            if empty(part):
                put("empty", part.dxftype(), part.dxf.handle)
        what = one.get_xdata("COILWRIGHT")[0].value if one.has_xdata("COILWRIGHT") else ""
        # Both the value that is stored and what the reader measures between the points.
        put("dimension", one.dxf.actual_measurement, what, len(drawn), " ".join(texts),
            one.get_measurement())
    if kind == "CIRCLE" or (kind == "LWPOLYLINE" and one.closed):
        put("area", one.dxf.layer, exact_area(one))
    if kind in ("ARC", "CIRCLE"):
        put("arc", one.dxf.layer, one.dxf.radius)
    elif kind == "LWPOLYLINE":
        for entity in one.virtual_entities():
            if entity.dxftype() == "ARC":
                put("arc", one.dxf.layer, entity.dxf.radius)
    elif kind == "TEXT":
        put("text", one.dxf.layer, decode_dxf_unicode(one.plain_text()))
    elif kind == "HATCH" and one.dxf.solid_fill == 0:
        total = 0
        for outline in one.paths:
            flat = list(paths.from_hatch_boundary_path(outline).flattening(0.001, 16))
            total += sum(a.x * b.y - a.y * b.x for a, b in zip(flat, flat[1:] + flat[:1])) / 2
        put("hatch", one.dxf.layer, total)
for block in doc.blocks:
    if block.name.startswith("*D") and block.name not in used:
        put("dangling", block.name)
