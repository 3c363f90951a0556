"""An independent reckoning of what a dome has beside plain rings, sharing no code with the program.

Lower tubes, second wythes, niches, fans, lintels, forms, frames, compass readings from a pole's face and
on a chain, anchor plates and the notes about the pole: `coilwright courses FILE --json` against numbers
of this file. Lengths in inches here, in metres in the schedule.

Usage: reckon_parts.py PROGRAM
"""

import json
import math
import subprocess
import sys

sys.dont_write_bytecode = True
from reckon import INCH, PROFILES, Mismatch, near, near_bearing  # noqa: E402

FORM_MARGIN = 0.05  # metres a form is longer than the wall is deep


def quoted(inches):
    return f'"{inches!r} in"'


def toml_of(design):
    t, dome = design["t"], design
    lines = ["coilwright = 1", f'name = "{design["name"]}"', 'unit = "ft"', "[course]",
             f"height = {quoted(t)}", f"foundation = {design['foundation']}", 'joint_lap = "12 in"',
             *design.get("course", []), "[tube.main]", f"lay_flat = {quoted(design['w'] + 2)}",
             f"tamped_width = {quoted(design['w'])}"]
    if design.get("lower"):
        lines += ["[tube.wide]", f"lay_flat = {quoted(design['lower'][0] + 2)}",
                  f"tamped_width = {quoted(design['lower'][0])}"]
    lines += ["[dome.d]", f"inside_diameter = {quoted(2 * dome['a'])}",
              f"springline = {quoted(dome['springline'])}", 'tube = "main"']
    kind = design["profile"]
    lines.append('profile = { kind = "round" }' if kind == "round"
                 else f'profile = {{ kind = "{kind}", rise = {quoted(design["rise"])} }}')
    if design.get("lower"):
        lines += ['lower_tube = "wide"', f"lower_height = {quoted(design['lower'][1])}"]
    if design.get("wythe"):
        lines.append(f"second_wythe = {quoted(design['wythe'])}")
    if design.get("eye"):
        lines.append(f'top = {{ kind = "skylight", diameter = {quoted(2 * design["eye"])}, '
                     f'curb = {design["curb"]} }}')
    if design.get("dome_chain") is not None:
        lines.append(f"chain_height = {quoted(design['dome_chain'])}")
    lines += ["[compass]", f"pole_diameter = {quoted(design['pole'])}"]
    if design.get("chain") is not None:
        lines.append(f"chain_height = {quoted(design['chain'])}")
    for hole in design["holes"]:
        lines += [f"[opening.{hole['id']}]", 'in = "d"', f'use = "{hole["use"]}"',
                  f"bearing = {hole['bearing']!r}", f"width = {quoted(hole['width'])}",
                  f"sill = {quoted(hole['sill'])}", f"height = {quoted(hole['height'])}",
                  f"head = {{ {hole['toml_head']} }}"]
        if "depth" in hole:
            lines.append(f"depth = {quoted(hole['depth'])}")
    return "\n".join(lines) + "\n"


class Building:
    """The design's own numbers, in inches."""

    def __init__(self, design):
        self.d = design
        self.t, self.w, self.foundation = design["t"], design["w"], design["foundation"]
        self.last_ring = max(n for n in range(1, 300) if self.is_ring(n))

    def middle(self, n):
        return (n - 0.5 - self.foundation) * self.t

    def curve(self, z):
        y = z - self.d["springline"]
        if y <= 0:
            return self.d["a"]
        return PROFILES[self.d["profile"]](self.d["a"], self.d["rise"], y) if y < self.d["rise"] else 0.0

    def is_ring(self, n):
        r = self.curve(self.middle(n))
        return r >= self.w / 2 and r > self.d.get("eye", 0)

    def inside(self, n):
        return self.curve(self.middle(min(n, self.last_ring)))

    def joint_over(self, height):
        """The top of the last course whose middle lies below a height."""
        n = 1
        while self.middle(n) < height - 1e-5:
            n += 1
        return self.middle(n) - self.t / 2

    def first_width(self, z):
        lower = self.d.get("lower")
        return lower[0] if lower and z < self.joint_over(lower[1]) - 1e-5 else self.w

    def has_second(self, n):
        return bool(self.d.get("wythe")) and self.middle(n) < self.joint_over(self.d["wythe"])

    def bands(self, n):
        """(inside, outside) of each ring of a course."""
        r = self.inside(n)
        first = (r, r + self.first_width(self.middle(n)))
        return [first, (first[1], first[1] + self.w)] if self.has_second(n) else [first]

    def outside(self, n):
        return self.bands(n)[-1][1]


def rise_of(hole):
    return {"square": 0.0, "circle": hole["width"] / 2, "round": hole["width"] / 2,
            "pointed": hole.get("rise"), "segmental": hole.get("rise")}[hole["head"]]


def springing_of(hole):
    return hole["sill"] + hole["height"] - rise_of(hole)


def half_width(hole, z):
    a, y = hole["width"] / 2, z - springing_of(hole)
    if not hole["sill"] - 1e-5 <= z < hole["sill"] + hole["height"] - 1e-5:
        return 0.0
    if hole["head"] == "circle":
        return math.sqrt(max(0.0, a * a - y * y))
    if hole["head"] == "square" or y <= 0:
        return a
    h = rise_of(hole)
    if h >= a:  # pointed or round: a centre on the springing
        rho = (a * a + h * h) / (2 * a)
        return math.sqrt(rho * rho - y * y) - (rho - a)
    rho = (a * a + h * h) / (2 * h)
    return math.sqrt(rho * rho - (rho - h + y) ** 2)


def fan_half_width(hole, depth, y):
    """Of the outer curve; beside a skewback the courses end at the skewback."""
    a, h = hole["width"] / 2, rise_of(hole)
    if h >= a:
        rho = (a * a + h * h) / (2 * a)
        square = (rho + depth) ** 2 - y * y
        return max(0.0, math.sqrt(square) - (rho - a)) if square > 0 else 0.0
    rho = (a * a + h * h) / (2 * h)
    square = (rho + depth) ** 2 - (rho - h + y) ** 2
    curve = math.sqrt(square) if square > 0 else 0.0
    return min(curve, a + y * math.tan(math.asin(a / rho)))


def laid_half_width(building, hole, n):
    """What the tubes of a course keep clear of; 0: they run on."""
    z = building.middle(n)
    if z < 0 or n > building.last_ring:
        return 0.0
    if hole.get("fan") and z >= springing_of(hole) - 1e-5:
        a = fan_half_width(hole, hole["fan"], z - springing_of(hole))
    elif hole.get("lintel"):
        lintel = hole["lintel"]
        courses = math.ceil(lintel["depth"] / building.t - 1e-9)
        top = hole["sill"] + hole["height"]
        over = [k for k in range(1, 300) if building.middle(k) >= top - 1e-5][:courses]
        a = hole["width"] / 2 + lintel["bearing"] if n in over else half_width(hole, z)
    else:
        a = half_width(hole, z)
    return a if 2 * a >= building.t - 1e-5 else 0.0


def integral(function, low, high, parts=4000):
    return sum(function(low + (i + 0.5) * (high - low) / parts) for i in range(parts)) * (high - low) / parts


def compare_ring(where, building, ring, n, wythe):
    design, (r, out) = building.d, building.bands(n)[wythe - 1]
    z = building.middle(n)
    metres = lambda inches: inches * INCH
    near(f"{where} inside", ring["inside_radius"], metres(r), 1e-5)
    near(f"{where} outside", ring["outside_radius"], metres(out), 1e-5)
    near(f"{where} centre", ring["centre_radius"], metres((r + out) / 2), 1e-5)
    near(f"{where} width", ring["width"], metres(out - r), 1e-5)
    p = design.get("dome_chain")
    p = design.get("chain") if p is None else p
    p = design["springline"] if p is None else p
    near(f"{where} chain", ring["chain"], metres(math.hypot(r, z - p)), 1e-5)
    near(f"{where} pole's face", ring["pole_face"], metres(r - design["pole"] / 2), 1e-5)
    below = building.bands(n - 1) if n > 1 else []
    if len(below) >= wythe:
        step = below[wythe - 1][0] - r
        bearing = min(out, below[wythe - 1][1]) - max(r, below[wythe - 1][0])
        near(f"{where} step-in", ring["step_in"], metres(step), 1e-5)
        near(f"{where} bearing", ring["bearing_width"], metres(max(0.0, bearing)), 1e-5)
    elif n == 1:
        near(f"{where} step-in", ring["step_in"], 0, 0)
        near(f"{where} bearing", ring["bearing_width"], metres(out - r), 1e-5)
    if n <= building.last_ring and wythe == 1:
        e = 1e-4
        slope = (building.curve(z + e) - building.curve(z - e)) / (2 * e)
        near(f"{where} radius per height", ring["radius_per_height"], slope, 1e-3 * abs(slope) + 1e-5)
    cut_by = {h["id"]: laid_half_width(building, h, n) for h in design["holes"]}
    cut_by = {name: a for name, a in cut_by.items() if a > 0}
    if {c["by"] for c in ring["cuts"]} != set(cut_by) or len(ring["cuts"]) != 2 * len(cut_by):
        raise Mismatch(f"{where}: cuts by {sorted({c['by'] for c in ring['cuts']})}, reckoned {sorted(cut_by)}")
    for cut in ring["cuts"]:
        hole = next(h for h in design["holes"] if h["id"] == cut["by"])
        a, sign = cut_by[cut["by"]], 1 if cut["side"] == "right" else -1
        near(f"{where} {cut['by']} half-width", cut["half_width"], metres(a), 1e-5)
        for name, radius in (("inside", r), ("centre", (r + out) / 2), ("outside", out)):
            near_bearing(f"{where} {cut['by']} {name}", cut[name + "_bearing"],
                         hole["bearing"] + sign * math.degrees(math.asin(a / radius)))


def compare_courses(building, schedule):
    design, rings = building.d, 0
    for index, course in enumerate(schedule["courses"]):
        n, where = index + 1, f"{design['name']}, course {index + 1}"
        if course["rings"][0]["kind"] == "cap":
            if n <= building.last_ring:
                raise Mismatch(f"{where}: a cap, reckoned a ring")
            continue
        bands = building.bands(n)
        if [ring["wythe"] for ring in course["rings"]] != list(range(1, len(bands) + 1)):
            raise Mismatch(f"{where}: {len(course['rings'])} rings, reckoned {len(bands)}")
        for ring in course["rings"]:
            compare_ring(f"{where}, ring {ring['wythe']}", building, ring, n, ring["wythe"])
            rings += 1
        r, out, z = bands[0][0], bands[-1][1], building.middle(n)
        area = math.pi * (out * out - r * r)
        for hole in design["holes"]:
            a = half_width(hole, z) if z > 0 and n <= building.last_ring else 0.0
            if 2 * a < building.t - 1e-5:
                continue
            back = r + hole["depth"] if "depth" in hole else math.inf
            area -= 2 * integral(lambda y: min(back, math.sqrt(out * out - y * y))
                                 - math.sqrt(r * r - y * y), 0, a)
        near(f"{where} area", course["wall_area"], area * INCH * INCH, 2e-5)
    return rings


def compare_openings(building, schedule):
    design = building.d
    for hole in design["holes"]:
        where = f"{design['name']}, {hole['id']}"
        found = next(o for o in schedule["elements"]["openings"] if o["id"] == hole["id"])
        courses = [n for n in range(1, building.last_ring + 1)
                   if building.middle(n) > 0 and 2 * half_width(hole, building.middle(n)) >= building.t - 1e-5]
        near(f"{where} first course", found["first_course"], courses[0], 0)
        near(f"{where} last course", found["last_course"], courses[-1], 0)
        corner = lambda radius, n: math.sqrt(radius ** 2 - half_width(hole, building.middle(n)) ** 2)
        innermost = min(corner(building.inside(n), n) for n in courses)
        if "depth" in hole:  # its back is flat, and no frame goes through the wall
            outermost = max(building.inside(n) for n in courses) + hole["depth"]
            if found["frame_band"] is not None:
                raise Mismatch(f"{where}: a frame band in a niche, {found['frame_band']}")
        else:
            outermost = max(building.outside(n) for n in courses)
            start = max(building.inside(n) for n in courses)
            end = min(corner(building.outside(n), n) for n in courses)
            near(f"{where} frame band from", found["frame_band"][0], start * INCH, 1e-5)
            near(f"{where} frame band to", found["frame_band"][1], max(start, end) * INCH, 1e-5)
        near(f"{where} form", found["form_depth"], (outermost - innermost) * INCH + FORM_MARGIN, 1e-5)


def compare_fans(building, schedule):
    fans = {fan["opening"]: fan for fan in schedule["elements"]["fans"]}
    for hole in building.d["holes"]:
        if not hole.get("fan"):
            continue
        where, fan = f"{building.d['name']}, fan of {hole['id']}", fans.pop(hole["id"])
        a, h, depth = hole["width"] / 2, rise_of(hole), hole["fan"]
        width = building.first_width(springing_of(hole) + 1e-4)
        if h >= a:
            rho = (a * a + h * h) / (2 * a)
            beyond = rho - a
            inner, outer = (2 * radius * math.acos(beyond / radius) for radius in (rho, rho + depth))
            top = math.sqrt((rho + depth) ** 2 - beyond ** 2)
            face = 2 * integral(lambda y: math.sqrt((rho + depth) ** 2 - y * y) - beyond -
                                (math.sqrt(rho * rho - y * y) - beyond if y < h else 0), 0, top, 200000)
        else:
            rho = (a * a + h * h) / (2 * h)
            skew = math.asin(a / rho)
            inner, outer = 2 * rho * skew, 2 * (rho + depth) * skew
            face = skew * ((rho + depth) ** 2 - rho ** 2)
        bags = outer / width
        count = min(range(1, 99, 2), key=lambda k: (abs(k - bags), -k))
        near(f"{where} depth", fan["depth"], depth * INCH, 1e-5)
        near(f"{where} inner arc", fan["inner_arc"], inner * INCH, 1e-5)
        near(f"{where} outer arc", fan["outer_arc"], outer * INCH, 1e-5)
        near(f"{where} count", fan["count"], count, 0)
        near(f"{where} face", fan["face_area"], face * INCH ** 2, 1e-5)
        near(f"{where} fill", fan["fill_volume"], face * width * INCH ** 3, 1e-5)
    if fans:
        raise Mismatch(f"{building.d['name']}: fans {sorted(fans)} were not asked for")


def compare_lintels(building, schedule):
    for lintel in schedule["elements"]["lintels"]:
        hole = next(h for h in building.d["holes"] if h["id"] == lintel["opening"])
        where, asked = f"{building.d['name']}, lintel of {hole['id']}", hole["lintel"]
        top = hole["sill"] + hole["height"]
        width = asked.get("width", building.first_width(top + 1e-4) - building.t)
        near(f"{where} width", lintel["width"], width * INCH, 1e-5)
        near(f"{where} length", lintel["length"], (hole["width"] + 2 * asked["bearing"]) * INCH, 1e-5)
        # No place of it bears on more of the ring below, to the last thousandth.
        n = lintel["first_course"] - 1
        r, out = building.inside(n), building.outside(n)
        half = hole["width"] / 2

        def bearing(centre):
            reach = lambda y: max(0.0, min(centre + width / 2, math.sqrt(out * out - y * y))
                                  - max(centre - width / 2, math.sqrt(r * r - y * y)))
            return 2 * integral(reach, half, half + asked["bearing"], 400)

        best = max(bearing(r - 10 + 0.1 * k) for k in range(400))
        near(f"{where} bearing", lintel["bearing_area"], best * INCH ** 2, 1e-3 * best * INCH ** 2)


def notes(schedule, when, what):
    """(course number, element) of the notes of one kind."""
    return [(course["number"], note["element"]) for course in schedule["courses"]
            for note in course["set"][when] if note["what"] == what]


def compare_notes(building, schedule):
    design, name = building.d, building.d["name"]
    last, t = building.last_ring, building.t
    top = last + (design["curb"] if design.get("eye") else 0)
    # Plumb every fourth course (a judgement); the pole comes out when the last ring lies under a cap, or
    # after all under a skylight, whose last ring is tied before its curb and whose frame goes on its top.
    expected = {
        "pole check": [(n, "d") for n in range(4, last, 4)],
        "curb hoop": [(last, "d")] if design.get("eye") and design["curb"] > 0 else [],
        "pole": [(top if design.get("eye") else last, "d")],
        "skylight frame": [(top, "d")] if design.get("eye") else [],
    }
    for what, places in expected.items():
        if notes(schedule, "after", what) != places:
            raise Mismatch(f"{name}: {what} {notes(schedule, 'after', what)}, reckoned {places}")
    # Anchor plates lie on the joints nearest to 1/8, 3/8, 5/8 and 7/8 of a jamb, never more than four
    # courses apart.
    plates = notes(schedule, "after", "anchor plates")
    for hole in design["holes"]:
        found = [n for n, element in plates if element == hole["id"]]
        jamb = springing_of(hole) - hole["sill"]
        if hole["use"] == "niche" or jamb < 2 * t - 1e-5:
            if found:
                raise Mismatch(f"{name}: plates of {hole['id']} on {found}, reckoned none")
            continue
        joints = [building.middle(n) + t / 2 for n in range(1, 300)]
        wanted = set()
        for eighths in (1, 3, 5, 7):
            height = hole["sill"] + eighths / 8 * jamb
            apart = [abs(joint - height) for joint in joints]
            nearest = [n + 1 for n, d in enumerate(apart) if d < min(apart) + 1e-5]
            # Halfway between two either will do; none in the sill or the springing.
            inside = [n for n in nearest if hole["sill"] + 1e-5 < joints[n - 1] < springing_of(hole) - 1e-5]
            if len(inside) == len(nearest) and not set(inside) & set(found):
                raise Mismatch(f"{name}: no plate of {hole['id']} on {nearest}, found {found}")
            wanted |= set(inside) & set(found)
        if any(b - a > 4 for a, b in zip(found, found[1:])) or found != sorted(set(found)):
            raise Mismatch(f"{name}: plates of {hole['id']} on {found}")
        for n in set(found) - wanted:
            under, over = max(m for m in wanted if m < n), min(m for m in wanted if m > n)
            if over - under <= 4:
                raise Mismatch(f"{name}: plate of {hole['id']} on {n} too, reckoned {sorted(wanted)}")


def hole(name, bearing, width, sill, height, head, use="window", **more):
    made = {"id": name, "bearing": bearing, "width": width, "sill": sill, "height": height, "head": head,
            "use": use, **more}
    text = f'kind = "{head}"'
    if "rise" in more:
        text += f", rise = {quoted(more['rise'])}"
    if "fan" in more:
        text += ', laid = "fan"' + ("" if more.get("own_depth") else f", depth = {quoted(more['fan'])}")
    if "lintel" in more:
        text += ", lintel = { " + ", ".join(
            f"{key} = {quoted(value)}" for key, value in more["lintel"].items()) + " }"
    made["toml_head"] = text
    return made


def designs():
    base = {"t": 5.0, "w": 15.0, "foundation": 3, "a": 54.0, "springline": 20.0, "profile": "pointed",
            "rise": 108.0, "pole": 4.0, "holes": []}
    door = hole("door", 150.0, 32.0, 0.0, 80.0, "pointed", "door", rise=24.0)
    yield {**base, "name": "a pole and a chain of its own", "dome_chain": 12.0, "chain": 7.0,
           "holes": [door, hole("win", 40.0, 24.0, 35.0, 30.0, "round")]}
    yield {**base, "name": "a chain of the compass", "chain": 33.0, "profile": "catenary", "rise": 120.0,
           "eye": 18.0, "curb": 2, "pole": 0.0, "holes": [door, hole("slit", 270.0, 6.0, 30.0, 55.0, "square")]}
    yield {**base, "name": "a parabola without a curb", "profile": "parabola", "rise": 130.0, "eye": 15.0,
           "curb": 0, "holes": [door]}
    yield {**base, "name": "fans and a lintel over a lower tube that ends below", "a": 55.5,
           "springline": 31.0, "rise": 88.8, "lower": (18.0, 12.0), "holes": [
               hole("door", 150.0, 32.0, 0.0, 76.0, "round", "door", fan=10.0),
               hole("e", 50.0, 24.0, 20.0, 25.0, "square", lintel={"depth": 7.0, "bearing": 9.0, "width": 9.0}),
               hole("w", 275.5, 20.0, 35.0, 31.0, "segmental", rise=6.0, fan=15.0, own_depth=True)]}
    yield {**base, "name": "a fan and a lintel in courses of the lower tube", "springline": 70.0,
           "lower": (22.0, 65.0), "holes": [
               hole("o", 90.0, 24.0, 20.0, 22.0, "round", fan=22.0, own_depth=True),
               hole("p", 270.0, 24.0, 20.0, 20.0, "square", lintel={"depth": 5.0, "bearing": 12.0}),
               hole("q", 180.0, 20.0, 20.0, 40.0, "pointed", rise=20.0, fan=12.0)]}
    yield {**base, "name": "two wythes, the first of a wider tube below", "lower": (20.0, 20.0), "wythe": 60.0}
    yield {**base, "name": "two wythes and holes through both", "wythe": 45.0, "holes": [
        door, hole("low", 40.0, 20.0, 10.0, 25.0, "square"), hole("high", 300.0, 20.0, 40.0, 25.0, "round")]}
    yield {**base, "name": "niches in the stem and in the leaning wall", "springline": 50.0, "holes": [
        hole("shelf", 90.0, 24.0, 20.0, 20.0, "square", "niche", depth=8.0),
        hole("arch", 180.0, 20.0, 60.0, 30.0, "round", "niche", depth=6.0),
        hole("lamp", 250.0, 10.0, 75.0, 10.0, "circle", "niche", depth=4.0)]}
    yield {**base, "name": "jambs of many heights", "springline": 60.0, "holes": [
        hole(f"h{k}", 36.0 * k, 14.0, 5.0 * (k % 3) + 5, 8.0 + 9.5 * k, "square", "window") for k in range(1, 10)]}


def main(program):
    rings = 0
    try:
        for design in designs():
            result = subprocess.run([program, "courses", "-", "--json"], input=toml_of(design),
                                    capture_output=True, text=True, check=False)
            if result.returncode != 0:
                print(f"{design['name']}: exit {result.returncode}\n{result.stderr}")
                return 1
            building, schedule = Building(design), json.loads(result.stdout)
            rings += compare_courses(building, schedule)
            for compare in (compare_openings, compare_fans, compare_lintels, compare_notes):
                compare(building, schedule)
    except Mismatch as mismatch:
        print(mismatch)
        return 1
    print(f"{rings} rings agree")
    return 0 if rings > 200 else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
