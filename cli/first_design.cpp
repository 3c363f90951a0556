#include "cli/first_design.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

/// Sizes that go together. Lengths in metres, made from round numbers of the unit.
struct Sizes {
    double course;
    double lay_flat;
    double tamped;
    double roll;
    int stem; // courses from the floor to the springline
    double door_width;
    int door_courses; // its height; in a room to live in that of a square one
    int door_head;    // rise of a pointed door head, courses
    double window_width;
    int window_sill; // courses above the floor
    int window_courses;
    int window_head;
    int door_springing = 0; // of a door's arched head in a room to live in, courses above the floor
};

/// Tubes of 17 and 22 in lay-flat, or their metric neighbours, by the diameter they serve.
Sizes store_sizes(const FirstDesign& wish) {
    const bool small = wish.diameter < 2.3;
    if (wish.unit == DisplayUnit::feet) {
        const double in = metres_per_inch;
        const bool wide = wish.diameter > 15 * metres_per_foot;
        const double door = (wide ? 36 : small ? 28 : 32) * in;
        const double window = (small ? 16 : 24) * in;
        return wide
                   ? Sizes{6 * in, 22 * in, 19 * in, 1500 * metres_per_foot, 4, door, 14, 5, window,
                           6,      5,       3}
                   : Sizes{5 * in, 17 * in, 15 * in, 1500 * metres_per_foot, 4, door, 16, 5, window,
                           7,      6,       4};
    }
    const bool wide = wish.diameter > 4.5;
    const double door = wide ? 0.9 : small ? 0.7 : 0.8;
    const double window = small ? 0.4 : 0.6;
    return wide ? Sizes{0.15, 0.56, 0.485, 500, 4, door, 14, 5, window, 6, 5, 3}
                : Sizes{0.12, 0.43, 0.38, 500, 4, door, 17, 6, window, 7, 6, 4};
}

bool is_lived_in(Use use) {
    return use == Use::habitable || use == Use::tiny_house;
}

/// Rooms to live in have a door that 32 in by 78 in stay clear of, after plaster and frame (the way
/// out, IRC R311.2), and windows for their light; both go far into the leaning wall, so their stem
/// is high. A round dome turns in so soon that its stem must be high enough for any door.
Sizes sizes_for(const FirstDesign& wish) {
    Sizes sizes = store_sizes(wish);
    const bool feet = wish.unit == DisplayUnit::feet;
    if (is_lived_in(wish.use)) {
        const bool wide = sizes.course > 0.14;
        sizes.stem = wide ? 10 : 12;
        sizes.door_width = feet ? 38 * metres_per_inch : 0.97;
        sizes.door_springing = wide ? 14 : feet ? 16 : 17;
        sizes.door_courses = sizes.door_springing + 1;
        sizes.window_width = wish.diameter < 2.3 ? sizes.window_width
                             : feet              ? 30 * metres_per_inch
                                                 : 0.75;
        sizes.window_sill = 6;
        sizes.window_courses = wide ? 7 : 8;
    } else if (wish.profile == ProfileKind::round && wish.diameter < 3.5) {
        sizes.stem = feet ? 10 : 12;
    }
    return sizes;
}

/// As tall as wide above the springline is practice for a pointed dome. The other curves are
/// flatter at the crown, and a small dome is thick for its size: while it is open, its leaning
/// rings find their thrust within the wall only if it is taller.
double rise_to_diameter(const FirstDesign& wish) {
    switch (wish.profile) {
    case ProfileKind::catenary:
        return 1.45;
    case ProfileKind::parabola:
        return is_lived_in(wish.use) ? 1.6 : 1.5;
    default:
        return is_lived_in(wish.use) || wish.diameter < 2.7 ? 1.2 : 1;
    }
}

/// A length as a person would write it in a design, quoted: "12 ft", "9 ft 6 in", "2.75 m".
std::string quoted(double metres, DisplayUnit unit) {
    std::string text;
    if (unit == DisplayUnit::feet) {
        text = feet_and_inches(metres);
        const std::string no_inches = " ft 0 in";
        if (text.size() > no_inches.size() && text.ends_with(no_inches)) {
            text.resize(text.size() - 5);
        }
    } else {
        text = trimmed_text(metres, 3) + " m";
    }
    return '"' + text + '"';
}

/// Parts of a wall are written in whole inches, as forms and tubes are sold: "80 in".
std::string quoted_part(double metres, DisplayUnit unit) {
    return unit == DisplayUnit::feet ? '"' + fixed_text(metres / metres_per_inch, 0) + " in\""
                                     : quoted(metres, unit);
}

/// A TOML basic string. Control characters cannot stand in one.
std::string toml_string(const std::string& text) {
    std::string quoted_text = "\"";
    for (const char c : text) {
        if (c == '"' || c == '\\') {
            quoted_text += '\\';
        }
        const bool control = static_cast<unsigned char>(c) < 0x20 || c == 0x7f;
        quoted_text += control ? ' ' : c;
    }
    return quoted_text + '"';
}

/// Writes lines `key = value   # comment` with the comments in one column.
class Lines {
public:
    void add(const std::string& key, const std::string& value, const std::string& comment = {}) {
        std::string line = key + " = " + value;
        if (!comment.empty()) {
            line.append(line.size() < column ? column - line.size() : 1, ' ');
            line += "# " + comment;
        }
        text += line + "\n";
    }
    void table(const std::string& header) { text += "\n[" + header + "]\n"; }
    void note(const std::string& comment) { text += "# " + comment + "\n"; }

    std::string text;

private:
    static constexpr std::size_t column = 36;
};

/// What the springline of a small dome is fitted to. A larger one, a store and a room have a plumb
/// stem of `Sizes::stem` courses, which is enough for the first and checked for the others.
struct Wish {
    const char* height_feet;
    const char* height_metres;
    const char* key;
    const char* side_feet;
    const char* side_metres;
    const char* why;
};
std::optional<Wish> wish_for(const FirstDesign& wish) {
    constexpr double small = 8 * metres_per_foot;
    if (wish.diameter > small) {
        return std::nullopt;
    }
    switch (wish.use) {
    case Use::tiny_house:
        return Wish{"6 ft 8 in", "2.032 m", "clear_circle", "5 ft", "1.5 m", "where people stand"};
    case Use::bath:
    case Use::shower:
        return Wish{"6 ft 8 in", "2.032 m", "clear_square",
                    "30 in",     "0.762 m", "under the shower head"};
    case Use::habitable:
    case Use::store:
        break;
    }
    return std::nullopt;
}

void write_dome(const FirstDesign& wish, const Sizes& sizes, Lines& lines) {
    lines.table("dome.main");
    lines.add("use", '"' + word(wish.use) + '"',
              "habitable, bath, shower, tiny-house or store: the headroom rule");
    lines.add("inside_diameter", quoted(wish.diameter, wish.unit), "between the bags' faces");
    const auto fit = wish_for(wish);
    if (fit) {
        lines.add("springline", "\"fit\"", "the lowest that gives the wish in [dome.main.fit]");
    } else {
        lines.add("springline", quoted_part(sizes.stem * sizes.course, wish.unit),
                  "where the wall starts to lean in");
    }
    const double step = wish.unit == DisplayUnit::feet ? metres_per_inch : 0.01;
    const double share = rise_to_diameter(wish);
    const double height =
        share == 1 ? wish.diameter : std::ceil(share * wish.diameter / step - 1e-6) * step;
    const std::string rise =
        wish.profile == ProfileKind::round ? "" : ", rise = " + quoted(height, wish.unit);
    lines.add("profile", "{ kind = \"" + word(wish.profile) + "\"" + rise + " }");
    lines.add("top", "{ kind = \"closed\" }");
    lines.add("tube", "\"wall\"");
    if (wish.door) {
        lines.add("datum", "\"door\"", "bearings and arcs are measured from its middle");
    }
    if (fit) {
        const bool feet = wish.unit == DisplayUnit::feet;
        lines.table("dome.main.fit");
        lines.add("clear_height",
                  std::string("\"") + (feet ? fit->height_feet : fit->height_metres) + '"',
                  "after the inside plaster");
        lines.add(fit->key, std::string("\"") + (feet ? fit->side_feet : fit->side_metres) + '"',
                  fit->why);
    }
}

/// A head of the kind, with its rise where it needs one; over a square one a lintel.
std::string head_text(HeadKind kind, double rise, DisplayUnit unit) {
    const std::string start = "{ kind = \"" + word(kind) + '"';
    if (kind == HeadKind::square) {
        return start + ", lintel = {} }";
    }
    const bool has_rise = kind == HeadKind::pointed || kind == HeadKind::segmental;
    return start + (has_rise ? ", rise = " + quoted_part(rise, unit) : "") + " }";
}

/// Two, or in a room to live in as many as give its floor light.
int windows_for(const FirstDesign& wish) {
    const double feet = wish.diameter / metres_per_foot;
    return !is_lived_in(wish.use) || feet <= 12.2 ? 2 : feet <= 15.2 ? 3 : 4;
}

/// Height of the door in courses. A store's is the same under any head.
int door_courses(const FirstDesign& wish, const Sizes& sizes) {
    if (*wish.door == HeadKind::square || !is_lived_in(wish.use))
        return sizes.door_courses;
    const double rise = *wish.door == HeadKind::segmental ? sizes.course
                        : *wish.door == HeadKind::round   ? sizes.door_width / 2
                                                          : sizes.door_head * sizes.course;
    return sizes.door_springing + static_cast<int>(std::ceil(rise / sizes.course - 1e-9));
}

void write_openings(const FirstDesign& wish, const Sizes& sizes, Lines& lines) {
    const auto on_joint = [&](int courses) {
        return quoted_part(courses * sizes.course, wish.unit);
    };
    if (wish.door) {
        lines.table("opening.door");
        lines.note("Width, sill and height are of the rough hole, as the form is made.");
        lines.add("in", "\"main\"");
        lines.add("use", "\"door\"");
        lines.add("bearing", "180", "degrees clockwise from north, seen from above");
        lines.add("width", quoted_part(sizes.door_width, wish.unit));
        lines.add("sill", quoted_part(0, wish.unit), "above the finished floor");
        lines.add("height", on_joint(door_courses(wish, sizes)),
                  "whole courses: the head ends on a joint");
        const int rise = *wish.door == HeadKind::segmental ? 1 : sizes.door_head;
        if (*wish.door == HeadKind::square) {
            lines.note(
                "Nothing but its lintel carries the wall over a square head: have it sized.");
        }
        lines.add("head", head_text(*wish.door, rise * sizes.course, wish.unit));
    }
    // Evenly in what the door leaves, or all round; halves of degrees are fine enough to set out.
    const int windows = wish.windows.value_or(windows_for(wish));
    const int places = windows + (wish.door ? 1 : 0);
    for (int i = 1; i <= windows; ++i) {
        const double step = 360.0 / places;
        const double bearing =
            std::round(2 * std::fmod(180 + (wish.door ? i : i - 1) * step, 360)) / 2;
        lines.table("opening.window-" + std::to_string(i));
        lines.add("in", "\"main\"");
        lines.add("use", "\"window\"");
        lines.add("bearing", fixed_text(bearing, std::fmod(bearing, 1) == 0 ? 0 : 1));
        lines.add("width", quoted_part(sizes.window_width, wish.unit));
        lines.add("sill", on_joint(sizes.window_sill));
        lines.add("height", on_joint(sizes.window_courses));
        lines.add("head",
                  head_text(HeadKind::pointed, sizes.window_head * sizes.course, wish.unit));
    }
}

} // namespace

std::string first_design(const FirstDesign& wish) {
    const Sizes sizes = sizes_for(wish);
    const bool feet = wish.unit == DisplayUnit::feet;
    Lines lines;
    lines.note("A design for Coilwright. Change a value, then run: coilwright check FILE");
    lines.note("Numbers in quotes carry their unit; bare numbers are in `unit`.");
    lines.note(
        "A drawing aid, not engineering: follow the local code, and have the design reviewed by");
    lines.note("a licensed professional.");
    lines.text += "\n";
    lines.add("coilwright", "1", "version of this file's format");
    lines.add("name", toml_string(wish.name));
    lines.add("unit", feet ? "\"ft\"" : "\"m\"", "how results are shown: ft or m");

    lines.table("course");
    lines.add("height", quoted_part(sizes.course, wish.unit), "of one course, tamped");
    lines.add("foundation", "3", "whole courses below the floor");
    if (!feet) { // the defaults are round in inches
        lines.add("end_allowance", "\"20 cm\"", "at each end of a tube, to fold under");
        lines.add("longest_tube", "\"9 m\"", "longer runs are laid of several");
        lines.add("joint_lap", "\"45 cm\"", "of joints to those of the course below");
    }

    lines.table("tube.wall");
    lines.add("lay_flat", quoted_part(sizes.lay_flat, wish.unit), "width of the empty tube");
    lines.add("tamped_width", quoted_part(sizes.tamped, wish.unit), "measure it on a test bag");
    lines.add("roll", quoted(sizes.roll, wish.unit), "length of tube on a roll");

    write_dome(wish, sizes, lines);
    write_openings(wish, sizes, lines);

    if (!feet) {
        lines.table("wire");
        lines.add("lap", "\"60 cm\"", "where two wires join");
    }

    lines.table("finish");
    lines.add("inside_plaster", feet ? "\"1-1/2 in\"" : "\"40 mm\"");
    lines.add("outside_plaster", feet ? "\"2 in\"" : "\"50 mm\"");

    lines.table("ground");
    lines.add("level", feet ? "\"-3 in\"" : "\"-0.05 m\"", "ground against the finished floor");
    return lines.text;
}

} // namespace coilwright
