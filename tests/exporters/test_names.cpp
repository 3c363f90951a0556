// Names that people give to designs: 10,000 random ones must survive as titles and give legal
// slugs.
#include "exporters/model_formats.hpp"
#include "exporters/step_text.hpp"
#include "exporters/xml.hpp"
#include "geometry/base/slug.hpp"
#include "geometry/base/utf8.hpp"
#include "tests/exporters/glb_file.hpp"
#include "tests/exporters/read_ply.hpp"
#include "tests/exporters/readers.hpp"
#include "tests/exporters/sample_models.hpp"
#include "tests/exporters/scratch.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <random>
#include <regex>
#include <set>

namespace coilwright {
namespace {

constexpr std::uint64_t seed = 20260101;

// Letters with accents, other scripts, right-to-left text with its marks, emoji of several
// characters, quotes, and what formats take for their own: from each a piece at random.
const std::vector<std::string>& pieces() {
    static const std::vector<std::string> all{"Grain",
                                              "store",
                                              " ",
                                              "  ",
                                              "é",
                                              "Ñandú",
                                              "Größe",
                                              "Ål",
                                              "œ",
                                              "ı",
                                              "ſ",
                                              "\"",
                                              "'",
                                              "''",
                                              "“",
                                              "”",
                                              "«",
                                              "\\",
                                              "\\X2\\",
                                              "\\X0\\",
                                              "/",
                                              "#",
                                              "$",
                                              ";",
                                              "*/",
                                              "<",
                                              ">",
                                              "&",
                                              "&amp;",
                                              "]]>",
                                              "<!--",
                                              "%",
                                              "{",
                                              "}",
                                              "|",
                                              "@",
                                              "-",
                                              "_",
                                              "0",
                                              "7",
                                              "乾燥",
                                              "小屋",
                                              "дом",
                                              "σπίτι",
                                              "घर",
                                              "บ้าน",
                                              "بيت",
                                              "בית",
                                              "\u200f",
                                              "\u202b",
                                              "\U0001f3e0",
                                              "\U0001f468\u200d\U0001f33e",
                                              "\U0001f1fa\U0001f1f3",
                                              "e\u0301",
                                              "\u00a0",
                                              "\u2028",
                                              "\ufeff",
                                              "\ufffd",
                                              "\U0010ffff",
                                              "o VAULT",
                                              "end_header",
                                              "v 1 2 3",
                                              "ENDSEC;"};
    return all;
}

const std::vector<std::string>& random_names() {
    static const std::vector<std::string> names = [] {
        std::mt19937_64 random(seed);
        std::vector<std::string> made;
        for (int k = 0; k < 10000; ++k) {
            std::string name;
            const std::uint64_t length = 1 + random() % 12;
            for (std::uint64_t i = 0; i < length; ++i)
                name += pieces()[random() % pieces().size()];
            made.push_back(name);
        }
        return made;
    }();
    return names;
}

SolidModel tetrahedron(const std::string& name) {
    SolidModel model;
    model.name = name;
    Mesh mesh{{{0, 0, 0}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
              {{0, 2, 1}, {0, 1, 3}, {0, 3, 2}, {1, 2, 3}}};
    model.parts = {sample_part(slug(name), "", mesh)};
    model.parts[0].title = name;
    return model;
}

std::string without_marks(std::string text) {
    while (text.rfind("\ufeff", 0) == 0)
        text.erase(0, 3);
    return text;
}

} // namespace

TEST_CASE("10,000 random names give legal slugs") {
    const std::regex legal("[A-Z][A-Z0-9_]{0,30}");
    CAPTURE(seed);
    SlugTable table;
    std::set<std::string> seen;
    for (const std::string& name : random_names()) {
        CAPTURE(name);
        CHECK(std::regex_match(slug(name), legal));
        const std::string unique = table.unique(name);
        CHECK(std::regex_match(unique, legal));
        CHECK(seen.insert(unique).second);
    }
}

TEST_CASE("10,000 random names survive as titles in GLB, and break no line of OBJ or PLY") {
    CAPTURE(seed);
    for (const std::string& name : random_names()) {
        CAPTURE(name);
        const SolidModel model = tetrahedron(name);
        const GlbFile glb = take_apart_glb(write_glb(model, "m")[0].bytes);
        const auto& nodes = glb.document.at("nodes");
        CHECK(nodes.at(0).at("extras").at("title") == name);
        CHECK(nodes.at(1).at("extras").at("title") == name);
        CHECK(nodes.at(0).at("name") != nodes.at(1).at("name"));
        const ReadPly ply = read_ply(write_ply(model, "m")[0].bytes);
        CHECK(ply.comments.at(1) == name);
        CHECK(ply.mesh.triangles.size() == 4);
        const std::vector<OutputFile> obj = write_obj(model, "m");
        CHECK(obj[0].bytes.find("# " + name + "\n") != std::string::npos);
        const ReadObj read = read_by_tinyobj(obj[0].bytes, obj[1].bytes);
        CHECK(read.warnings.empty());
        REQUIRE(read.shapes.size() == 1);
        CHECK(read.shapes[0].name == slug(name));
    }
}

// Python's ElementTree (expat) reads what DAE and 3MF hold.
TEST_CASE("10,000 random names survive in XML") {
    std::string document = "<?xml version=\"1.0\" encoding=\"UTF-8\"?><r>", wanted;
    for (const std::string& name : random_names()) {
        document += "<t>" + xml_text(name) + "</t>";
        // XML 1.0 allows U+10FFFF; nothing of the pieces is forbidden.
        wanted += name + "\n";
    }
    const ScratchDirectory scratch;
    put_bytes(scratch.path() / "names.xml", document + "</r>");
    const std::string read =
        output_of({"/usr/bin/python3", "-c",
                   "import sys, xml.etree.ElementTree as e\nout = sys.stdout.buffer\n"
                   "for t in e.parse(sys.argv[1]).getroot(): out.write((t.text + '\\n').encode())",
                   (scratch.path() / "names.xml").string()});
    CHECK(read == wanted);
}

// web-ifc reads the names of 10,000 materials.
TEST_CASE("10,000 random names survive in STEP") {
    StepFile file;
    for (const std::string& name : random_names())
        file.add("IFCMATERIAL", {step_text(name), step_unset, step_unset});
    const ScratchDirectory scratch;
    put_bytes(scratch.path() / "names.ifc", file.text("names", "names.ifc", "us", "IFC4"));
    const auto read =
        nlohmann::json::parse(output_of({"node", COILWRIGHT_NODE_DIRECTORY "/read_ifc.js",
                                         (scratch.path() / "names.ifc").string()}));
    const auto& lines = read.at("lines");
    REQUIRE(lines.size() == random_names().size());
    int lost = 0;
    for (const auto& line : lines) {
        // web-ifc takes byte order marks in front for no part of the text.
        const std::string name =
            without_marks(random_names()[line.at("id").get<std::size_t>() - 1]);
        const std::string found = without_marks(line.at("Name"));
        if (found != name && ++lost < 5) {
            CAPTURE(name);
            CHECK(found == name);
        }
    }
    CHECK(lost == 0);
}

} // namespace coilwright
