// One small change of a sound design for every fault: its code, its place, its subject, and that
// the example it offers works.
#include "tests/design/whole_design.hpp"

#include "geometry/base/utf8.hpp"

#include <catch2/catch.hpp>

#include <fstream>
#include <iterator>
#include <regex>
#include <set>
#include <vector>

using namespace coilwright;

namespace {

// `with` replaces `part` in the whole design (an empty part: appended to it). The fault is expected
// where '^' stands in `with`, else where `where` first stands.
struct Case {
    std::string code;
    std::string subject;
    std::string part, with, where;
};

const std::string door_head = "head = { kind = \"pointed\", rise = \"24 in\" }";
const std::string vault_profile = "profile = { kind = \"pointed\", rise = \"9 ft\" }";
const std::string vault_springline = "springline = \"20 in\"\n" + vault_profile;

const std::vector<Case>& cases() {
    static const std::vector<Case> all{
        // Tables and keys.
        {"unknown-table", "colour", "", "[^colour]\n", ""},
        {"unknown-table", "wier", "[wire]", "[^wier]", ""},
        {"unknown-table", "foundation", "unit = \"ft\"", "unit = \"ft\"\n^foundation = 3", ""},
        {"missing-key", "name", "name = \"Grain store and bath, Alder Flats\"\n", "", "# Every"},
        {"missing-key", "opening.door.width", "width = \"32 in\"\n", "", "[opening.door]"},
        {"missing-key", "opening.door.bearing", "bearing = 150\n", "", "[opening.door]"},
        {"missing-key", "tunnel.porch.bearing", "bearing = 330\n", "", "[tunnel.porch]"},
        {"missing-key", "dome.vault.profile", vault_profile + "\n", "", "[dome.vault]"},
        {"missing-key", "dome.vault.profile.kind", vault_profile, "profile = { rise = \"9 ft\" }",
         "{ rise = \"9 ft\" }"},
        {"missing-key", "dome.vault.profile.rise", vault_profile,
         "profile = { kind = \"pointed\" }", "{ kind = \"pointed\" }"},
        {"missing-key", "dome.vault.profile.rise", vault_profile,
         "profile = { kind = \"parabola\" }", "{ kind = \"parabola\" }"},
        {"missing-key", "dome.vault.profile.points", vault_profile,
         "profile = { kind = \"drawn\" }", "{ kind = \"drawn\" }"},
        {"missing-key", "dome.bath.top.diameter", "diameter = \"24 in\", ", "",
         "{ kind = \"skylight\""},
        {"missing-key", "opening.flat.head.rise", "kind = \"segmental\", rise = \"6 in\"",
         "kind = \"segmental\"", "{ kind = \"segmental\" }"},
        {"missing-key", "tunnel.porch.reach", "reach = \"9 ft 6 in\"\nend = \"wall\"\n", "",
         "[tunnel.porch]"},
        {"missing-key", "buttress.flank.bearings", "bearings = [60, 240]\n", "",
         "[buttress.flank]"},
        {"missing-key", "course.height", "height = \"5 in\"\n", "", "[course]"},
        {"missing-key", "rules.store.clear_height", "", "[rules.store]\nshare = 1\n",
         "[rules.store]"},
        {"unknown-key", "opening.door.widht", "width = \"32 in\"", "^widht = \"32 in\"", ""},
        {"unknown-key", "opening.door.bering", "bearing = 150", "^bering = 150", ""},
        {"unknown-key", "opening.door.colour", "bearing = 150", "bearing = 150\n^colour = 3", ""},
        {"unknown-key", "dome.vault.profile.rice", vault_profile,
         "profile = { kind = \"pointed\", ^rice = \"9 ft\" }", ""},
        {"unknown-key", "buttress.flank.bearing", "bearings = [60, 240]", "^bearing = [60, 240]",
         ""},
        {"unknown-key", "tunnel.porch.reech", "reach = \"9 ft", "^reech = \"9 ft", ""},
        {"unknown-key", "dome.bath.fit.clear_hight", "fit = { clear_height", "fit = { ^clear_hight",
         ""},
        {"unknown-key", "rules.kitchen", "", "[rules.^kitchen]\nclear_height = 6\n", ""},
        {"element-without-name", "sleeve.in", "", "", ""}, // own text below
        {"contradictory-keys", "dome.vault.profile.arc_radius", vault_profile,
         "profile = { kind = \"pointed\", rise = \"9 ft\", arc_radius = ^\"9 ft\" }", ""},
        {"contradictory-keys", "dome.bath.fit.clear_circle", "clear_square = \"30 in\"",
         "clear_square = \"30 in\", clear_circle = ^\"40 in\"", ""},
        {"contradictory-keys", "tunnel.link.reach", "to = \"drawn\"",
         "to = \"drawn\"\nreach = ^\"12 ft\"", ""},
        {"contradictory-keys", "buttress.flank.count", "bearings = [60, 240]",
         "bearings = [60, 240]\ncount = ^4", ""},
        {"key-out-of-place", "dome.vault.profile.rise", vault_profile,
         "profile = { kind = \"round\", rise = ^\"9 ft\" }", ""},
        {"key-out-of-place", "dome.vault.profile.arc_radius", vault_profile,
         "profile = { kind = \"catenary\", rise = 9, arc_radius = ^\"9 ft\" }", ""},
        {"key-out-of-place", "dome.vault.top.diameter", "top = { kind = \"closed\" }",
         "top = { kind = \"closed\", diameter = ^\"2 ft\" }", ""},
        {"key-out-of-place", "opening.eye.head.rise", "{ kind = \"circle\" }",
         "{ kind = \"circle\", rise = ^\"2 in\" }", ""},
        {"key-out-of-place", "opening.door.head.laid", door_head,
         "head = { kind = \"square\", laid = ^\"fan\" }", ""},
        {"key-out-of-place", "opening.fan.head.depth", "laid = \"fan\", depth = \"14 in\"",
         "depth = ^\"14 in\"", ""},
        {"key-out-of-place", "tunnel.link.end", "to = \"drawn\"", "to = \"drawn\"\nend = ^\"open\"",
         ""},
        {"key-out-of-place", "buttress.flank.first", "bearings = [60, 240]",
         "bearings = [60, 240]\nfirst = ^4", ""},
        {"key-out-of-place", "buttress.flank.gap", "bearings = [60, 240]",
         "bearings = [60, 240]\ngap = ^\"1 in\"", ""},
        {"key-out-of-place", "dome.drawn.inside_diameter",
         "inside_diameter = \"9 ft\"\nspringline = 0",
         "inside_diameter = ^\"fit\"\nspringline = 0\nfit = { floor_area = 60 }", ""},

        // Values.
        {"wrong-version", "coilwright", "coilwright = 1", "coilwright = ^2", ""},
        {"wrong-type", "coilwright", "coilwright = 1", "coilwright = ^\"1\"", ""},
        {"wrong-type", "course", "coilwright = 1", "", ""}, // own text below
        {"wrong-type", "opening.door.width", "width = \"32 in\"", "width = ^true", ""},
        {"wrong-type", "opening.door.width", "width = \"32 in\"", "width = ^1979-05-27", ""},
        {"wrong-type", "opening.door.bearing", "bearing = 150", "bearing = ^\"150\"", ""},
        {"wrong-type", "opening.flat.in", "in = \"vault\"\nbearing = 60", "in = ^3\nbearing = 60",
         ""},
        {"wrong-type", "opening.door.head", door_head, "head = ^\"pointed\"", ""},
        {"wrong-type", "ground.bearing_capacity", "bearing_capacity = \"1500 psf\"",
         "bearing_capacity = ^1500", ""},
        {"wrong-type", "course.foundation", "foundation = 4", "foundation = ^4.5", ""},
        {"wrong-type", "trench.drain", "drain = false", "drain = ^\"no\"", ""},
        {"wrong-type", "dome.vault.at", "at = [\"0 ft\", \"0 ft\"]", "at = ^[0, 0, 0]", ""},
        {"wrong-type", "dome.vault.at", "at = [\"0 ft\", \"0 ft\"]", "at = [0, ^false]", ""},
        {"wrong-type", "dome.vault.use", "use = \"store\"", "use = ^1", ""},
        {"wrong-type", "name", "name = \"Grain store and bath, Alder Flats\"", "name = ^5", ""},
        {"wrong-type", "join.bath.between", "[\"vault\", \"bath\"]", "^[\"vault\"]", ""},
        {"wrong-type", "join.bath.keep", "keep = \"vault\"", "keep = ^true", ""},
        {"wrong-type", "fill.base.courses", "courses = [1, 4]", "courses = ^[1, 900]", ""},
        {"wrong-type", "fill.base.courses", "courses = [1, 4]", "courses = ^\"1 to 4\"", ""},
        {"wrong-type", "as_laid.top", "top = { 9 = \"25-1/4 in\", 10 = \"30-1/4 in\" }",
         "top = ^\"30 in\"", ""},
        {"wrong-type", "dome.drawn.profile.points", "[\"50 in\", \"43 in\"]", "^[\"50 in\"]", ""},
        {"wrong-type", "dome.drawn.profile.points", "[\"50 in\", \"43 in\"]", "^\"50 in\"", ""},
        {"unreadable-measure", "opening.door.width", "width = \"32 in\"", "width = ^\"32 inn\"",
         ""},
        {"unreadable-measure", "opening.door.width", "width = \"32 in\"", "width = ^\"\"", ""},
        {"unreadable-measure", "dome.vault.springline", "springline = \"20 in\"",
         "springline = ^\"fitted\"", ""},
        {"unreadable-measure", "ground.bearing_capacity", "\"1500 psf\"", "^\"1500 ft\"", ""},
        {"unreadable-measure", "wire.breaking", "\"900 lbf\"", "^\"900\"", ""},
        {"out-of-range", "dome.vault.inside_diameter", "inside_diameter = \"9 ft\"",
         "inside_diameter = ^\"200 ft\"", ""},
        {"out-of-range", "dome.bath.inside_diameter", "inside_diameter = 6",
         "inside_diameter = ^nan", ""},
        {"out-of-range", "dome.bath.inside_diameter", "inside_diameter = 6",
         "inside_diameter = ^-inf", ""},
        {"out-of-range", "course.height", "height = \"5 in\"", "height = ^\"1 in\"", ""},
        {"out-of-range", "course.foundation", "foundation = 4", "foundation = ^51", ""},
        {"out-of-range", "course.foundation", "foundation = 4", "foundation = ^-1", ""},
        {"out-of-range", "opening.door.bearing", "bearing = 150", "bearing = ^361", ""},
        {"out-of-range", "name", "\"Grain store and bath, Alder Flats\"", "^\" \"", ""},
        {"out-of-range", "name", "\"Grain store and bath, Alder Flats\"", "^\"a\\u0000b\"", ""},
        {"out-of-range", "buttress.flank.bearings", "bearings = [60, 240]", "bearings = ^[]", ""},
        {"out-of-range", "as_laid.top", "9 = \"25-1/4 in\"", "nine = ^\"25-1/4 in\"", ""},
        {"out-of-range", "as_laid.top", "9 = \"25-1/4 in\"", "0 = ^\"25-1/4 in\"", ""},
        {"out-of-range", "dome.drawn.profile.points",
         "[[\"0 in\", \"54 in\"], [\"50 in\", \"43 in\"], [\"108 in\", 0]]", "^[[0, \"54 in\"]]",
         ""},
        {"unknown-word", "unit", "unit = \"ft\"", "unit = ^\"feet\"", ""},
        {"unknown-word", "dome.vault.use", "use = \"store\"", "use = ^\"stor\"", ""},
        {"unknown-word", "opening.door.head.kind", door_head, "head = { kind = ^\"gothic\" }", ""},
        {"unknown-word", "dome.vault.profile.kind", vault_profile,
         "profile = { kind = ^\"segmental\", rise = \"9 ft\" }", ""},
        {"unknown-word", "join.bath.keep", "keep = \"vault\"", "keep = ^\"drawn\"", ""},

        // Names.
        {"bad-id", "opening.Eye", "[opening.eye]", "^[opening.Eye]", ""},
        {"bad-id", "opening.a-very-long-name", "[opening.eye]", "^[opening.a-very-long-name]", ""},
        {"bad-id", "sleeve.neither", "[sleeve.water]", "^[sleeve.neither]", ""},
        {"bad-id", "sleeve.", "[sleeve.water]", "^[sleeve.\"\"]", ""},
        {"repeated-id", "sleeve.door", "[sleeve.water]", "^[sleeve.door]", ""},
        {"repeated-id", "opening.main", "[opening.eye]", "^[opening.main]", ""},
        {"unknown-reference", "dome.vault.tube", "tube = \"main\"\ndatum",
         "tube = ^\"mian\"\ndatum", ""},
        {"unknown-reference", "sleeve.water.in", "in = \"bath\"\nbearing = 300",
         "in = ^\"\"\nbearing = 300", ""},
        {"unknown-reference", "dome.vault.datum", "datum = \"door\"", "datum = ^\"north\"", ""},
        {"wrong-reference", "dome.vault.tube", "tube = \"main\"\ndatum", "tube = ^\"door\"\ndatum",
         ""},
        {"wrong-reference", "dome.vault.datum", "datum = \"door\"", "datum = ^\"fan\"", ""},
        {"wrong-reference", "buttress.beside.beside", "beside = \"door\"", "beside = ^\"fan\"", ""},

        // Contradictions.
        {"fit-without-wish", "dome.vault.springline", "springline = \"20 in\"",
         "springline = ^\"fit\"", ""},
        {"fit-without-wish", "dome.bath.springline", "fit = { clear_height = \"6 ft 8 in\", ",
         "fit = { ", "\"fit\""},
        {"fit-without-wish", "dome.vault.profile.rise", vault_profile,
         "profile = { kind = \"pointed\", rise = ^\"fit\" }", ""},
        {"fit-without-wish", "dome.vault.inside_diameter",
         "inside_diameter = \"9 ft\"\nspringline = \"20 in\"",
         "inside_diameter = ^\"fit\"\nspringline = \"20 in\"", ""},
        {"wish-without-fit", "dome.bath.fit.apex", "clear_square = \"30 in\" }",
         "clear_square = \"30 in\", apex = ^\"12 ft\" }", ""},
        {"wish-without-fit", "dome.bath.fit.floor_area", "clear_square = \"30 in\" }",
         "clear_square = \"30 in\", floor_area = ^\"30 sq ft\" }", ""},
        {"impossible-tamped-width", "tube.main.tamped_width", "tamped_width = \"15 in\"",
         "tamped_width = ^\"17 in\"", ""},
        {"impossible-tamped-width", "tube.main.tamped_width", "tamped_width = \"15 in\"",
         "tamped_width = ^\"5 in\"", ""},
        {"tube-too-narrow", "tube.wide.lay_flat", "lay_flat = \"22 in\"", "lay_flat = ^\"7 in\"",
         ""},
        {"profile-too-flat", "dome.vault.profile.rise", vault_profile,
         "profile = { kind = \"pointed\", rise = ^\"4 ft\" }", ""},
        {"profile-too-flat", "dome.vault.profile.arc_radius", vault_profile,
         "profile = { kind = \"pointed\", arc_radius = ^\"4 ft\" }", ""},
        {"profile-too-flat", "dome.bath.profile.rise_to_span", "rise_to_span = 1",
         "rise_to_span = ^0.4", ""},
        {"skylight-too-wide", "dome.bath.top.diameter", "diameter = \"24 in\"",
         "diameter = ^\"6 ft\"", ""},
        {"plaster-fills-dome", "dome.bath.inside_diameter", "", "", ""}, // own text below
        {"drawn-points", "dome.drawn.profile.points", "[\"0 in\", \"54 in\"]",
         "^[\"1 in\", \"54 in\"]", ""},
        {"drawn-points", "dome.drawn.profile.points", "[\"0 in\", \"54 in\"]",
         "^[\"0 in\", \"53 in\"]", ""},
        {"drawn-points", "dome.drawn.profile.points", "[\"50 in\", \"43 in\"]",
         "^[\"50 in\", \"55 in\"]", ""},
        {"drawn-points", "dome.drawn.profile.points", "[\"108 in\", 0]", "^[\"50 in\", 0]", ""},
        {"drawn-points", "dome.drawn.profile.points", "[\"108 in\", 0]", "^[\"108 in\", \"1 in\"]",
         ""},
        {"circle-not-round", "opening.eye.height", "height = \"12 in\"", "height = ^\"13 in\"", ""},
        {"head-too-high", "opening.door.head.rise", door_head,
         "head = { kind = \"pointed\", rise = ^\"81 in\" }", ""},
        {"head-too-high", "opening.door.height", "height = \"80 in\"\n" + door_head,
         "height = ^\"20 in\"\nhead = { kind = \"pointed\" }", ""},
        {"head-too-high", "opening.fan.height", "height = \"40 in\"", "height = ^\"11 in\"", ""},
        {"head-too-flat", "opening.door.head.rise", door_head,
         "head = { kind = \"pointed\", rise = ^\"15 in\" }", ""},
        {"head-too-steep", "opening.flat.head.rise", "rise = \"6 in\"", "rise = ^\"13 in\"", ""},
        {"same-dome-twice", "tunnel.link.to", "to = \"drawn\"", "to = ^\"vault\"", ""},
        {"same-dome-twice", "join.bath.between", "[\"vault\", \"bath\"]", "^[\"vault\", \"vault\"]",
         ""},
        {"repeated-join", "join.again", "",
         "^[join.again]\nbetween = [\"bath\", \"vault\"]\nkeep = \"neither\"\n", ""},
        {"domes-in-one-place", "tunnel.link.to", "at = [\"30 ft\", \"0 ft\"]", "at = [0, 0]",
         "\"drawn\"\nwidth"},
        {"tunnel-off-its-line", "tunnel.link.bearing", "to = \"drawn\"",
         "to = \"drawn\"\nbearing = ^100", ""},
        {"projection-grows", "buttress.flank.projection_top", "projection_top = \"15 in\"",
         "projection_top = ^\"31 in\"", ""},
        {"repeated-bearing", "buttress.flank.bearings", "bearings = [60, 240]",
         "bearings = [60, ^-300]", ""},
        {"density-order", "fill.main.dry_density", "dry_density = \"105 pcf\"",
         "dry_density = ^\"120 pcf\"", ""},
        {"stabiliser-without-ratio", "fill.main.stabiliser", "ratio = 0.08\n", "", "\"cement\""},
        {"stabiliser-without-ratio", "fill.main.ratio", "stabiliser = \"cement\"\nratio = 0.08",
         "ratio = ^0.08", ""},
        {"backward-courses", "fill.base.courses", "courses = [1, 4]", "courses = ^[4, 1]", ""},
        {"overlapping-fills", "fill.more.courses", "", "[fill.more]\ncourses = ^[4, 6]\n", ""},
        {"tops-not-rising", "as_laid.top.10", "10 = \"30-1/4 in\"", "10 = ^\"25-1/4 in\"", ""},
        {"low-height-over-clear", "rules.shower.low_height", "clear_height = \"6 ft 6 in\"",
         "clear_height = \"6 ft 6 in\"\nlow_height = ^\"7 ft\"", ""},
    };
    return all;
}

struct Made {
    std::string text;
    SourcePlace place;
};

SourcePlace place_in(const std::string& text, std::size_t at) {
    const auto line_start = text.rfind('\n', at == 0 ? std::string::npos : at - 1);
    const std::size_t start = at == 0 || line_start == std::string::npos ? 0 : line_start + 1;
    int line = 1;
    for (std::size_t i = 0; i < start; ++i)
        line += text[i] == '\n' ? 1 : 0;
    return {line, static_cast<int>(character_count(text.substr(start, at - start))) + 1};
}

Made made(const Case& a_case) {
    Made result;
    result.text = a_case.part.empty() ? whole_design + a_case.with
                                      : replaced(whole_design, a_case.part, a_case.with);
    auto at = result.text.find('^');
    if (at != std::string::npos)
        result.text.erase(at, 1);
    else
        at = result.text.find(a_case.where);
    REQUIRE(at != std::string::npos);
    result.place = place_in(result.text, at);
    return result;
}

// The text with the value that the diagnostic points at replaced by that of its example; empty
// where the example is no assignment of the key on that line.
std::string with_example(const std::string& text, const Diagnostic& diagnostic) {
    const auto equals = diagnostic.example.find(" = ");
    if (equals == std::string::npos)
        return {};
    const std::string key = diagnostic.example.substr(0, equals);
    std::size_t start = 0;
    for (int line = 1; line < diagnostic.place.line; ++line)
        start = text.find('\n', start) + 1;
    const std::size_t end = text.find('\n', start);
    const std::string line = text.substr(start, end - start);
    const std::regex value("(^|[ {,])" + key + " = (\"[^\"]*\"|\\[.*\\]|\\{.*\\}|[^,\"\\[{} ]+)");
    std::smatch match;
    if (!std::regex_search(line, match, value))
        return {};
    const std::string mended = std::string(match.prefix()) + match[1].str() + diagnostic.example +
                               std::string(match.suffix());
    return text.substr(0, start) + mended + text.substr(end);
}

bool has_own_text(const Case& a_case) {
    return a_case.where.empty() && a_case.with.empty();
}

} // namespace

TEST_CASE("each fault is one diagnostic with its code, place and subject") {
    for (const Case& a_case : cases()) {
        if (has_own_text(a_case))
            continue;
        const Made text = made(a_case);
        const DesignReading reading = read_design(text.text);
        CAPTURE(a_case.part, a_case.with);
        CHECK(codes_of(reading) == a_case.code);
        if (reading.diagnostics.size() != 1)
            continue;
        const Diagnostic& found = reading.diagnostics.front();
        CAPTURE(diagnostic_text(found, "file", text.text));
        CHECK(found.subject == a_case.subject);
        CHECK(found.place.line == text.place.line);
        CHECK(found.place.column == text.place.column);
        CHECK_FALSE(found.message.empty());
        CHECK_FALSE(found.allowed.empty());
        CHECK_FALSE(found.example.empty());
    }
}

TEST_CASE("the example that a diagnostic offers works in its place") {
    int tried = 0;
    for (const Case& a_case : cases()) {
        if (has_own_text(a_case))
            continue;
        const Made text = made(a_case);
        const DesignReading reading = read_design(text.text);
        if (reading.diagnostics.size() != 1)
            continue;
        const Diagnostic& found = reading.diagnostics.front();
        const std::string mended = with_example(text.text, found);
        const std::string same_key = found.subject.substr(found.subject.rfind('.') + 1) + " = ";
        // Where two keys contradict each other, one goes; nothing in its place mends it.
        if (found.code == "contradictory-keys" || found.code == "key-out-of-place")
            continue;
        if (mended.empty() || found.example.rfind(same_key, 0) != 0 || found.code == "unknown-key")
            continue;
        ++tried;
        CAPTURE(diagnostic_text(found, "file", text.text));
        CHECK(codes_of(read_design(mended)) == "");
    }
    CHECK(tried > 50);
}

TEST_CASE("faults of the file as a whole") {
    CHECK(codes_of(read_design("coilwright = 1\nname = \"a\"\nunit = \"m\"\n")) ==
          "missing-table missing-table");
    CHECK(codes_of(read_design("")) ==
          "missing-key missing-key missing-key missing-table missing-table");
    const DesignReading nameless =
        read_design(replaced(whole_design, "[sleeve.water]", "[sleeve]"));
    CHECK(codes_of(nameless) == "element-without-name");
    const DesignReading scalar =
        read_design("course = 5\n" + replaced(whole_design, "[course]", "[cours.x]"));
    CHECK(codes_of(scalar) == "wrong-type unknown-table");
    const DesignReading plaster = read_design(
        replaced(replaced(whole_design, "inside_diameter = 6", "inside_diameter = \"20 in\""),
                 "inside_plaster = \"1-1/2 in\"", "inside_plaster = \"11 in\""));
    CHECK_THAT(codes_of(plaster), Catch::Contains("plaster-fills-dome"));
}

TEST_CASE("more elements than any building has are refused once") {
    std::string text = whole_design;
    for (int i = 0; i < 300; ++i)
        text += "[sleeve.s" + std::to_string(i) +
                "]\nin = \"vault\"\nbearing = 1\nheight = 1\ndiameter = \"4 in\"\n";
    const DesignReading reading = read_design(text);
    CHECK(codes_of(reading) == "too-many-elements");
    CHECK(reading.design.sleeves.size() == 200);
}

TEST_CASE("a file full of faults names the first five hundred and says so") {
    std::string text;
    for (int i = 0; i < 20000; ++i)
        text += "key" + std::to_string(i) + " = 1\n";
    const DesignReading reading = read_design(text);
    CHECK(reading.diagnostics.size() == 501);
    CHECK(reading.diagnostics.front().code == "too-many-faults");
}

TEST_CASE("every code in the reader is provoked by a test") {
    std::set<std::string> tested{"not-toml",          "too-large",      "not-utf8",
                                 "nul-byte",          "too-deep",       "missing-table",
                                 "too-many-elements", "too-many-faults"};
    for (const Case& a_case : cases())
        tested.insert(a_case.code);
    std::set<std::string> written;
    const std::regex code("\\{\\s*\"([a-z0-9-]+)\",\\s*(at\\.place|place|\\{)");
    for (const char* name : {"faults.cpp", "contradictions.cpp"}) {
        std::ifstream file(std::string(COILWRIGHT_SOURCE_DIR) + "/geometry/design/" + name);
        const std::string source{std::istreambuf_iterator<char>(file), {}};
        for (std::sregex_iterator i(source.begin(), source.end(), code), end; i != end; ++i)
            written.insert((*i)[1]);
    }
    CHECK(written.size() > 40);
    CHECK(written == tested);
}
