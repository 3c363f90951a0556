"""An independent reckoning of schedules, sharing no code with the program.

Writes designs of every profile, head, top and unit, runs `coilwright courses FILE --json`, and
compares compass radii (0.01 mm), cut bearings (0.001 degrees), lengths, tubes, wire, areas, caps and
their bags, curbs and totals with its own numbers. Curves are found here by bisection on their defining equations,
areas by the midpoint rule, so that no closed form of the program is repeated.

Usage: reckon.py PROGRAM
"""

import json
import math
import pathlib
import subprocess
import sys
import tempfile

INCH = 0.0254
RADIUS_TOLERANCE = 1e-5     # metres
BEARING_TOLERANCE = 1e-3    # degrees


def bisect(function, low, high):
    """The root of a function that changes sign once between low and high."""
    sign = function(low) > 0
    for _ in range(200):
        middle = (low + high) / 2
        if (function(middle) > 0) == sign:
            low = middle
        else:
            high = middle
    return (low + high) / 2


# Profiles: half-width x at height y above the springline, from what defines each curve.

def circle_through(a, h, y):
    """Pointed (h >= a) and segmental (h < a) arcs: the circle that meets (a, 0) upright or (0, h) level."""
    if h >= a:  # centre on the springline at a - rho; passes through (0, h)
        rho = bisect(lambda r: (r - a) ** 2 + h * h - r * r, a, 1e6)
        return math.sqrt(rho * rho - y * y) - (rho - a)
    rho = bisect(lambda r: a * a + (r - h) ** 2 - r * r, h / 2, 1e6)
    return math.sqrt(rho * rho - (rho - h + y) ** 2)


def catenary(a, h, y):
    c = bisect(lambda c: c * (math.cosh(a / c) - 1) - h, a / 500, 1e5)
    return bisect(lambda x: h - c * (math.cosh(x / c) - 1) - y, 0, a)


def parabola(a, h, y):
    return bisect(lambda x: h * (1 - (x / a) ** 2) - y, 0, a)


def cone(a, h, y):
    return a * (1 - y / h)


PROFILES = {
    "pointed": lambda a, h, y: circle_through(a, h, y),
    "round": lambda a, h, y: math.sqrt(a * a - y * y),
    "catenary": catenary,
    "parabola": parabola,
    "drawn": cone,
}


def dome_half_width(design, y):
    if y <= 0:
        return design["a"]
    if y >= design["rise"]:
        return 0.0
    return PROFILES[design["profile"]](design["a"], design["rise"], y)


# Holes: half-width at a height.

def hole_half_width(hole, z):
    top = hole["sill"] + hole["height"]
    if z < hole["sill"] - 1e-9 or z >= top - 1e-9:
        return 0.0
    a = hole["width"] / 2
    head = hole["head"]
    if head == "square":
        return a
    if head == "circle":
        return math.sqrt(max(0.0, a * a - (z - hole["sill"] - a) ** 2))
    springing = top - (a if head == "round" else hole["rise"])
    if z <= springing:
        return a
    if head == "round":
        return math.sqrt(a * a - (z - springing) ** 2)
    return circle_through(a, hole["rise"], z - springing)


def strip_area(r0, r1, a):
    """What a strip |y| <= a takes out of the ring on one side, by the midpoint rule."""
    parts = 4000
    total = 0.0
    for i in range(parts):
        y = (i + 0.5) / parts * a
        total += math.sqrt(r1 * r1 - y * y) - math.sqrt(r0 * r0 - y * y)
    return 2 * total * a / parts


def stadium(w, t):
    return (w - t) * t + math.pi * t * t / 4


def length_text(metres, unit):
    return f"{metres / INCH!r} in" if unit == "ft" else f"{metres!r} m"


def bed_length(radius, gaps, gaps_above):
    """Of a course's centreline, what it and the course above both lay, and in how many stretches.

    Gaps are (bearing, half-width, radius of the circle that it cuts): no two of a course meet.
    """
    half = {}
    for bearing, a, r in gaps + gaps_above:
        half[bearing] = max(half.get(bearing, 0.0), math.asin(a / r))
    return radius * (2 * math.pi - 2 * sum(half.values())), len(half)


def cap_outside(design, n):
    """Outside radius of the disc of course n, which closes a dome: x_ext + w."""
    t, a, rise = design["t"], design["a"], design["rise"]
    w = tamped(design)
    height = lambda course: (course - 0.5 - design["foundation"]) * t - design["springline"]
    if height(n) < rise:
        return dome_half_width(design, height(n)) + w
    if design["profile"] == "pointed":
        rho = (a * a + rise * rise) / (2 * a)
        if rho - a > w / 2:
            return math.sqrt(max(0.0, rho * rho - height(n) ** 2)) - (rho - a) + w
    below = max(course for course in range(1, n) if height(course) < rise)
    slope = dome_half_width(design, height(below - 1)) - dome_half_width(design, height(below))
    return dome_half_width(design, height(below)) - (n - below) * slope + w


def tamped(design):
    return design.get("tamped") or design["lay_flat"] - (math.pi / 2 - 1) * design["t"]


def toml_of(design):
    unit = design["unit"]
    text = lambda value: f'"{length_text(value, unit)}"'
    lines = [
        "coilwright = 1", f'name = "{design["name"]}"', f'unit = "{unit}"', "[course]",
        f"height = {text(design['t'])}", f"foundation = {design['foundation']}",
        f"end_allowance = {text(design['end'])}", f"longest_tube = {text(design['longest'])}",
        f"joint_lap = {text(0.3)}", "[tube.main]", f"lay_flat = {text(design['lay_flat'])}",
        *([f"tamped_width = {text(design['tamped'])}"] if design.get("tamped") else []),
        "[dome.d]", 'use = "store"', f"inside_diameter = {text(2 * design['a'])}",
        f"springline = {text(design['springline'])}", 'tube = "main"',
    ]
    kind = design["profile"]
    if kind == "round":
        lines.append('profile = { kind = "round" }')
    elif kind == "drawn":
        a, h = design["a"], design["rise"]
        points = ", ".join(f"[{text(h * k / 4)}, {text(a * (1 - k / 4))}]" for k in range(5))
        lines.append(f'profile = {{ kind = "drawn", points = [{points}] }}')
    else:
        lines.append(f'profile = {{ kind = "{kind}", rise = {text(design["rise"])} }}')
    if design.get("eye"):
        lines.append(f'top = {{ kind = "skylight", diameter = {text(2 * design["eye"])}, '
                     f'curb = {design["curb"]} }}')
    if design.get("datum"):
        lines.append(f'datum = "{design["datum"]}"')
    for hole in design["holes"]:
        lines += [f"[opening.{hole['id']}]", 'in = "d"',
                  f'use = "{"door" if hole["sill"] == 0 else "window"}"',
                  f"bearing = {hole['bearing']!r}", f"width = {text(hole['width'])}",
                  f"sill = {text(hole['sill'])}", f"height = {text(hole['height'])}"]
        if hole["head"] in ("pointed", "segmental"):
            lines.append(f'head = {{ kind = "{hole["head"]}", rise = {text(hole["rise"])} }}')
        else:
            lines.append(f'head = {{ kind = "{hole["head"]}" }}')
    lines += ["[wire]", f"strands = {design['strands']}", f"lap = {text(design['lap'])}"]
    return "\n".join(lines) + "\n"


class Mismatch(Exception):
    pass


def near(what, found, expected, tolerance):
    if abs(found - expected) > tolerance:
        raise Mismatch(f"{what}: the program says {found}, reckoned {expected}")


def near_bearing(what, found, expected):
    off = abs((found - expected + 180) % 360 - 180)
    if off > BEARING_TOLERANCE:
        raise Mismatch(f"{what}: the program says {found}, reckoned {expected % 360}")


def compare(design, schedule):
    t, foundation = design["t"], design["foundation"]
    w = tamped(design)
    datum = next((h["bearing"] for h in design["holes"] if h["id"] == design.get("datum")),
                 min((h["bearing"] for h in design["holes"]), default=0.0))
    compared = 0
    previous_radius = None
    previous_bed = None  # (course, centreline radius, gaps) of the ring below
    totals = {"tube_length": 0.0, "cut_length": 0.0, "fill_volume": 0.0, "wire_length": 0.0,
              "wall_volume": 0.0}

    def wire(where, above):
        """Of the course below, by what the course above it covers; above: its gaps, [] of a cap."""
        if previous_bed is None:
            return
        course, radius, gaps = previous_bed
        length, stretches = bed_length(radius, gaps, above)
        ends = 2 * w * stretches if stretches else design["lap"]
        near(f"{where} wire below", course["wire_length"], design["strands"] * (length + ends), 1e-4)

    eye_ring = None  # inside radius of a skylight's last ring
    curbs = caps = 0
    for index, course in enumerate(schedule["courses"]):
        n = index + 1
        z = (n - 0.5 - foundation) * t
        where = f"{design['name']}, course {n}"
        near(f"{where} number", course["number"], n, 0)
        near(f"{where} bottom", course["bottom"], (n - 1 - foundation) * t, RADIUS_TOLERANCE)
        ring, = course["rings"]
        r = dome_half_width(design, z - design["springline"])
        is_ring = z < design["springline"] + design["rise"] and r >= w / 2
        if design.get("eye") and (eye_ring is not None or r <= design["eye"]):
            eye_ring = previous_radius if eye_ring is None else eye_ring
            r, is_ring, curbs = eye_ring, True, curbs + 1
            if not ring["curb"]:
                raise Mismatch(f"{where}: no curb, radius reckoned {r}")
        if (ring["kind"] == "ring") != is_ring:
            raise Mismatch(f"{where}: kind {ring['kind']}, radius reckoned {r}")
        for key in totals:
            if key != "wall_volume":
                totals[key] += course[key]
        totals["wall_volume"] += course["wall_area"] * t
        if not is_ring:
            near(f"{where} inside", ring["inside_radius"], 0, 0)
            if caps == 0 and cap_outside(design, n) < w / 2:  # so flat a crown has one disc all the same,
                flat = previous_radius + w / 2                # half a tube on the last ring
                near(f"{where} outside", ring["outside_radius"], flat, RADIUS_TOLERANCE)
            else:
                near(f"{where} outside", ring["outside_radius"], cap_outside(design, n),
                     RADIUS_TOLERANCE)
            caps += 1
            disc = ring["outside_radius"]
            near(f"{where} disc", course["wall_area"], math.pi * disc ** 2, 1e-4)
            # As few bags side by side as are no wider than the tube lies tamped.
            count = next(k for k in range(1, 99) if 2 * disc <= k * w + 2e-6)
            bags, = (run["tubes"] for run in ring["runs"])
            near(f"{where} bags", len(bags), count, 0)
            chords = [2 * math.sqrt(disc ** 2 - ((2 * k + 1) / count - 1) ** 2 * disc ** 2)
                      for k in range(count)]
            for bag, chord in zip(bags, chords):
                near(f"{where} {bag['id']}", bag["length"], chord, 2e-5)
            if caps == 1:
                wire(where, [])
            else:  # on a disc it runs under each bag of this one
                near(f"{where} wire below", schedule["courses"][index - 1]["wire_length"],
                     design["strands"] * sum(chords), 1e-4)
            previous_bed = None
            continue
        compared += 1
        near(f"{where} inside", ring["inside_radius"], r, RADIUS_TOLERANCE)
        near(f"{where} centre", ring["centre_radius"], r + w / 2, RADIUS_TOLERANCE)
        near(f"{where} outside", ring["outside_radius"], r + w, RADIUS_TOLERANCE)
        near(f"{where} chain", ring["chain"], math.hypot(r, z - design["springline"]),
             RADIUS_TOLERANCE)
        step = 0.0 if previous_radius is None else previous_radius - r
        near(f"{where} step-in", ring["step_in"], step, RADIUS_TOLERANCE)
        near(f"{where} bearing", ring["bearing_width"], max(0.0, w - step), RADIUS_TOLERANCE)
        previous_radius = r
        cut_by = [h for h in design["holes"] if 2 * hole_half_width(h, z) >= t - 1e-9]
        if len(ring["cuts"]) != 2 * len(cut_by):
            raise Mismatch(f"{where}: {len(ring['cuts'])} cuts, reckoned {2 * len(cut_by)}")
        gaps = [(h["bearing"], hole_half_width(h, z), r + w / 2) for h in cut_by]
        wire(where, gaps)
        previous_bed = (course, r + w / 2, gaps)
        removed = 0.0
        area = math.pi * ((r + w) ** 2 - r * r)
        for hole in cut_by:
            a = hole_half_width(hole, z)
            area -= strip_area(r, r + w, a)
            removed += 2 * math.asin(a / (r + w / 2))
            for side, sign in (("left", -1), ("right", 1)):
                cut, = (c for c in ring["cuts"] if c["by"] == hole["id"] and c["side"] == side)
                for name, radius in (("inside", r), ("centre", r + w / 2), ("outside", r + w)):
                    near_bearing(f"{where} {hole['id']} {side} {name}", cut[name + "_bearing"],
                                 hole["bearing"] + sign * math.degrees(math.asin(a / radius)))
                turn = (hole["bearing"] + sign * math.degrees(math.asin(a / r)) - datum) % 360
                near(f"{where} {hole['id']} {side} arc", cut["inside_arc_from_datum"],
                     r * math.radians(turn), 5 * RADIUS_TOLERANCE)
                near(f"{where} {hole['id']} half-width", cut["half_width"], a, RADIUS_TOLERANCE)
        near(f"{where} area", course["wall_area"], area, 2e-5)
        total = (2 * math.pi - removed) * (r + w / 2)
        near(f"{where} tube length", course["tube_length"], total, 1e-4)
        near(f"{where} fill", course["fill_volume"], stadium(w, t) * total, 1e-5)
        cuts = 0.0
        for run in ring["runs"]:
            run_total = 0.0
            for tube in run["tubes"]:
                if tube["length"] > design["longest"] + 1e-5:
                    raise Mismatch(f"{where}: tube {tube['id']} is too long")
                outer = tube["length"] / (r + w / 2) * (r + w)
                # A plumb jamb leaves the outer thread more than the ray through the middle does.
                for end in ("start_bearing", "end_bearing"):
                    for hole in cut_by:
                        a = hole_half_width(hole, z)
                        edges = [hole["bearing"] + s * math.degrees(math.asin(a / (r + w / 2)))
                                 for s in (-1, 1)]
                        if any(abs((tube[end] - e + 180) % 360 - 180) < 1e-4 for e in edges):
                            outer += (r + w) * (math.asin(a / (r + w / 2)) - math.asin(a / (r + w)))
                near(f"{where} {tube['id']} cut length", tube["cut_length"],
                     outer + 2 * design["end"], 5e-5)
                run_total += tube["length"]
                cuts += tube["cut_length"]
            near(f"{where} {run['id']}", run["length"], run_total, 1e-4)
        near(f"{where} cut length", course["cut_length"], cuts, 1e-4)
    if design.get("eye"):
        near(f"{design['name']} curb", curbs, design["curb"], 0)
    else:
        if cap_outside(design, n + 1) >= w / 2:
            raise Mismatch(f"{design['name']}: the cap lacks course {n + 1}")
    near(f"{design['name']} wire on the last course", schedule["courses"][-1]["wire_length"], 0, 0)
    for key, value in totals.items():
        near(f"{design['name']} total {key}", schedule["totals"][key], value, 1e-3)
    near(f"{design['name']} courses", schedule["totals"]["courses"], len(schedule["courses"]), 0)
    return compared


def designs():
    """Every profile with every head, in feet and in metres; under a cap and under a skylight."""
    heads = [("square", None), ("pointed", 0.7), ("round", None), ("segmental", 0.2), ("circle", None)]
    number = 0
    for unit, t, lay_flat in (("ft", 5 * INCH, 17 * INCH), ("m", 0.14, 0.45)):
        for profile in PROFILES:
            number += 1
            a = 1.3 + 0.17 * number
            rise = {"pointed": 1.7 * a, "round": a, "catenary": 1.6 * a, "parabola": 1.9 * a,
                    "drawn": 2.2 * a}[profile]
            holes = []
            for k, (head, rise_share) in enumerate(heads):
                width = 0.5 + 0.04 * k
                hole = {"id": f"o{k}", "bearing": 17.25 + 72 * k, "width": width, "head": head,
                        "sill": 0.0 if k == 0 else 2 * t, "height": 8 * t}
                if rise_share:
                    hole["rise"] = width * rise_share
                if head == "circle":
                    hole["height"] = width
                holes.append(hole)
            design = {"name": f"{profile} in {unit}", "unit": unit, "t": t, "lay_flat": lay_flat,
                      "foundation": number % 4, "end": 0.2, "longest": 2.5 + number % 3, "a": a,
                      "rise": rise, "springline": 0.11 * number, "profile": profile, "holes": holes,
                      "datum": f"o{number % 5}" if number % 3 else None,
                      "strands": 1 + number % 3, "lap": 0.1 * number}
            yield design
            yield {**design, "name": f"{profile} in {unit} under a skylight", "eye": 0.35 * a,
                   "curb": number % 4, "tamped": lay_flat - 0.07}


def main(program):
    compared = 0
    count = 0
    with tempfile.TemporaryDirectory() as folder:
        for design in designs():
            path = pathlib.Path(folder) / "design.toml"
            path.write_text(toml_of(design), encoding="utf-8")
            result = subprocess.run([program, "courses", str(path), "--json"], capture_output=True,
                                    text=True, check=False)
            if result.returncode != 0:
                print(f"{design['name']}: exit {result.returncode}\n{result.stderr}")
                return 1
            try:
                compared += compare(design, json.loads(result.stdout))
            except Mismatch as mismatch:
                print(mismatch)
                return 1
            count += 1
    print(f"{count} designs, {compared} ring courses agree")
    return 0 if compared > 100 else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
