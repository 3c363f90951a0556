#include "tests/design/whole_design.hpp"

namespace coilwright {

const std::string whole_design = R"(# Every table of the format.
coilwright = 1
name = "Grain store and bath, Alder Flats"
unit = "ft"

[course]
height = "5 in"
foundation = 4
end_allowance = "9 in"
longest_tube = "28 ft"
joint_lap = "20 in"
least_inside_radius = "8 in"
curve = "centre"
edge = "square"
tamp_gap = "1/2 in"
strike_age = 10

[tube.main]
lay_flat = "17 in"
tamped_width = "15 in"
roll = "1000 ft"

[tube.wide]
lay_flat = "22 in"

[dome.vault]
at = ["0 ft", "0 ft"]
use = "store"
inside_diameter = "9 ft"
springline = "20 in"
profile = { kind = "pointed", rise = "9 ft" }
top = { kind = "closed" }
tube = "main"
datum = "door"
chain_height = "30 in"

[dome.bath]
at = [-10, "6 ft"]
use = "shower"
inside_diameter = 6
springline = "fit"
profile = { kind = "pointed", rise_to_span = 1 }
top = { kind = "skylight", diameter = "24 in", curb = 3, glazing_load = "50 plf" }
tube = "wide"
fit = { clear_height = "6 ft 8 in", clear_square = "30 in" }

[dome.drawn]
at = ["30 ft", "0 ft"]
inside_diameter = "9 ft"
springline = 0
profile = { kind = "drawn", points = [["0 in", "54 in"], ["50 in", "43 in"], ["108 in", 0]] }
tube = "main"

[opening.door]
in = "vault"
use = "door"
bearing = 150
width = "32 in"
sill = "0 in"
height = "80 in"
head = { kind = "pointed", rise = "24 in" }
frame = "1 in"
frame_depth = "5 in"
reveal = "plumb"

[opening.eye]
in = "vault"
use = "vent"
bearing = -60
width = "12 in"
sill = "60 in"
height = "12 in"
head = { kind = "circle" }

[opening.fan]
in = "bath"
use = "window"
bearing = 200
width = "24 in"
sill = "30 in"
height = "40 in"
head = { kind = "round", laid = "fan", depth = "14 in" }

[opening.flat]
in = "vault"
bearing = 60
width = "24 in"
sill = "35 in"
height = "40 in"
head = { kind = "segmental", rise = "6 in" }

[opening.gate]
in = "porch"
use = "door"
width = "20 in"
sill = 0
height = "60 in"

[tunnel.porch]
from = "vault"
bearing = 330
width = "36 in"
springline = "45 in"
profile = { kind = "pointed", rise = "36 in" }
reach = "9 ft 6 in"
end = "wall"
wall = "stays"
tube = "main"

[tunnel.link]
from = "vault"
to = "drawn"
width = "36 in"
springline = "45 in"
profile = { kind = "catenary", rise = "36 in" }
tube = "main"

[buttress.flank]
on = "vault"
bearings = [60, 240]
width = "30 in"
height = "40 in"
projection = "30 in"
projection_top = "15 in"

[buttress.four]
on = "vault"
count = 4
first = 45
height = "40 in"
projection = "30 in"

[buttress.beside]
on = "vault"
beside = "door"
gap = "2 in"
height = "40 in"
projection = "30 in"

[join.bath]
between = ["vault", "bath"]
keep = "vault"
bond = "butt"

[sleeve.water]
in = "bath"
bearing = 300
height = "10 in"
diameter = "4 in"

[finish]
inside_plaster = "1-1/2 in"
outside_plaster = "2 in"
floor_build_up = "4 in"

[ground]
level = "-6 in"
frost_depth = "24 in"
bearing_capacity = "1500 psf"
friction = 0.45
unit_weight = "18 kN/m3"
friction_angle = 30
slope = 0.05

[trench]
gravel_depth = "6 in"
width = "21 in"
drain = false
outfall = 90

[site]
wind_pressure = "20 psf"
seismic_acceleration = "0.2 g"
snow = "30 psf"

[fill.main]
density = "115 pcf"
dry_density = "105 pcf"
strength = "150 psi"
cohesion = "10 kPa"
friction_angle = 32
stabiliser = "cement"
ratio = 0.08
by = "volume"
age_per_lift = 1

[fill.base]
kind = "gravel"
courses = [1, 4]

[wire]
strands = 1
lap = "20 in"
breaking = "900 lbf"
joint_factor = 0.4
hoop_tension = true

[joint]
friction = 0.6
friction_bare = 0.35
factor = 2

[compass]
pole_diameter = "2 in"
chain_height = "25 in"
arm = "chain"

[as_laid]
top = { 9 = "25-1/4 in", 10 = "30-1/4 in" }

[rules.shower]
clear_height = "6 ft 6 in"

[dome.barn]
at = ["0 ft", "60 ft"]
inside_diameter = "12 ft"
springline = "40 in"
profile = { kind = "round" }
tube = "main"
lower_tube = "wide"
lower_height = "30 in"
second_wythe = "15 in"

[opening.hatch]
in = "barn"
bearing = 10
width = "24 in"
sill = "10 in"
height = "20 in"
head = { kind = "square", lintel = { kind = "concrete", bearing = "14 in", depth = "6 in", width = "9 in" } }

[opening.shelf]
in = "barn"
use = "niche"
bearing = 100
width = "20 in"
sill = "30 in"
height = "20 in"
head = { kind = "round" }
depth = "7 in"

[opening.slit]
in = "porch"
use = "vent"
width = "8 in"
sill = "30 in"
height = "10 in"
side = "right"
along = "8 ft"

[sleeve.pipe]
in = "link"
side = "left"
along = "13 ft"
height = "20 in"
diameter = "2 in"

[context.bed]
file = "furniture/bed.obj"
at = ["1 ft", "-2 ft"]
base = "4 in"
bearing = 45
unit = "cm"
scale = 1.5
up = "y"
)";

std::string replaced(std::string text, const std::string& part, const std::string& with) {
    return text.replace(text.find(part), part.size(), with);
}

std::string codes_of(const DesignReading& reading) {
    std::string codes;
    for (const Diagnostic& diagnostic : reading.diagnostics)
        codes += (codes.empty() ? "" : " ") + diagnostic.code;
    return codes;
}

} // namespace coilwright
