// The arrows between the folders, read off their #include lines, and what the plan links. A new
// library or folder wants its word in layers() below, and in the table of DEVELOPERS.md.
#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;
using Words = std::vector<std::string>;

/// What a folder may include besides itself and the standard library. A folder stands for all of
/// its headers. Libraries by the folder that their headers lie in.
struct Layer {
    Words folders;
    Words libraries;            // anywhere
    Words libraries_in_sources; // not in headers: whoever includes those would need them
};

const std::map<std::string, Layer>& layers() {
    const Words design_data{"geometry/base", "geometry/design/design.hpp"};
    const auto with = [](Words words, const Words& more) {
        words.insert(words.end(), more.begin(), more.end());
        return words;
    };
    static const std::map<std::string, Layer> all{
        {"geometry/base", {{}, {"Eigen"}, {}}},
        {"geometry/threads", {{}, {}, {}}},
        // The reader's own headers name tables of the parser; design.hpp, which others include,
        // does not.
        {"geometry/design", {{"geometry/base"}, {"toml++"}, {}}},
        {"geometry/plan", {design_data, {}, {}}},
        {"geometry/exact", {with(design_data, {"geometry/plan"}), {}, {"CGAL"}}},
        {"geometry/solids",
         {with(design_data, {"geometry/plan", "geometry/exact"}), {"Eigen"}, {"CGAL"}}},
        {"geometry/statics",
         {with(design_data, {"geometry/plan"}), {}, {"ClpSimplex.hpp", "CoinPackedMatrix.hpp"}}},
        {"geometry/checks",
         {with(design_data, {"geometry/threads", "geometry/design/rules.hpp", "geometry/plan",
                             "geometry/statics"}),
          {},
          {}}},
        {"geometry/takeoff",
         {with(design_data, {"geometry/plan", "geometry/design/works.hpp"}), {}, {}}},
        {"geometry/variants",
         {with(design_data, {"geometry/threads", "geometry/design", "geometry/plan",
                             "geometry/statics", "geometry/takeoff"}),
          {},
          {}}},
        {"geometry/report",
         {with(design_data, {"geometry/design/rules.hpp", "geometry/plan", "geometry/statics",
                             "geometry/checks", "geometry/drawing", "geometry/takeoff",
                             "geometry/variants", "geometry/design/works.hpp"}),
          {},
          {}}},
        {"geometry/drawing", {with(design_data, {"geometry/threads", "geometry/plan"}), {}, {}}},
        {"geometry/views",
         {with(design_data, {"geometry/plan", "geometry/solids", "geometry/drawing"}),
          {"Eigen"},
          {}}},
        {"geometry/templates",
         {with(design_data, {"geometry/plan", "geometry/drawing", "geometry/views"}), {}, {}}},
        {"exporters",
         {with(design_data,
               {"geometry/threads", "geometry/plan", "geometry/exact", "geometry/solids",
                "geometry/drawing", "geometry/views", "geometry/takeoff", "geometry/variants",
                "geometry/statics", "geometry/checks", "geometry/design/works.hpp"}),
          // The headers that its own sources share name types of these.
          {"nlohmann", "cairomm"},
          {"Eigen", "pangomm", "pango", "fontconfig", "cairo-pdf.h", "zlib.h", "tiny_obj_loader.h",
           "xlsxwriter.h", "unistd.h", "sys", "dirent.h", "fcntl.h"}}},
        {"cli", {{"geometry", "exporters"}, {}, {"CLI", "unistd.h", "csignal"}}},
    };
    return all;
}

const fs::path& project() {
    static const fs::path path(COILWRIGHT_SOURCE_DIR);
    return path;
}

bool lies_in(const std::string& path, const std::string& folder) {
    return path == folder || path.rfind(folder + "/", 0) == 0;
}

bool any_holds(const Words& folders, const std::string& path) {
    for (const std::string& folder : folders) {
        if (lies_in(path, folder)) {
            return true;
        }
    }
    return false;
}

bool is_standard(const std::string& header) {
    return std::regex_match(header, std::regex("[a-z_]+"));
}

std::vector<fs::path> code_below(const fs::path& folder) {
    std::vector<fs::path> files;
    for (const auto& entry : fs::recursive_directory_iterator(folder)) {
        if (entry.path().extension() == ".hpp" || entry.path().extension() == ".cpp") {
            files.push_back(entry.path());
        }
    }
    return files;
}

/// The first group of every match, line by line.
std::vector<std::string> taken_from(const fs::path& file, const std::string& pattern) {
    const std::regex expression(pattern);
    std::vector<std::string> found;
    std::ifstream in(file);
    for (std::string line; std::getline(in, line);) {
        std::smatch match;
        if (std::regex_search(line, match, expression)) {
            found.push_back(match[1]);
        }
    }
    return found;
}

} // namespace

TEST_CASE("a folder includes only what stands below it") {
    int count = 0;
    for (const auto& [folder, layer] : layers()) {
        for (const fs::path& file : code_below(project() / folder)) {
            for (const std::string& header : taken_from(file, "^#include \"([^\"]+)\"")) {
                CAPTURE(file.string(), header);
                CHECK((lies_in(header, folder) || any_holds(layer.folders, header) ||
                       header == "headroom_rules.inc" ||
                       header == "check_rules.inc")); // made in the build directory
                ++count;
            }
            const bool is_source = file.extension() == ".cpp";
            for (const std::string& header : taken_from(file, "^#include <([^>]+)>")) {
                CAPTURE(file.string(), header);
                CHECK((is_standard(header) || any_holds(layer.libraries, header) ||
                       (is_source && any_holds(layer.libraries_in_sources, header))));
                ++count;
            }
        }
    }
    CHECK(count > 500);
}

TEST_CASE("every folder of code has its place among the layers") {
    for (const char* const top : {"geometry", "exporters", "cli"}) {
        for (const fs::path& file : code_below(project() / top)) {
            const std::string folder = fs::relative(file.parent_path(), project()).string();
            CAPTURE(file.string());
            CHECK(layers().count(folder) == 1);
        }
    }
}

TEST_CASE("the plan links nothing but base and the design's data") {
    CHECK(std::string(COILWRIGHT_PLAN_LINKS) == "coilwright_design_data");
    CHECK(std::string(COILWRIGHT_DESIGN_DATA_LINKS) == "coilwright_base");
    CHECK(std::string(COILWRIGHT_BASE_LINKS) == "Eigen3::Eigen");
}

// All headers share one namespace. Two types of one name in two of them would be told by the
// compiler only where one file includes both; else the linker takes one std::vector of them for the
// other.
TEST_CASE("no two headers define a type of one name") {
    std::map<std::string, std::set<std::string>> headers_of;
    for (const char* const top : {"geometry", "exporters", "cli"}) {
        for (const fs::path& file : code_below(project() / top)) {
            if (file.extension() == ".hpp") {
                for (const std::string& name :
                     taken_from(file, R"(^(?:struct|class|enum class) (\w+)[^;]*\{)")) {
                    headers_of[name].insert(file.string());
                }
            }
        }
    }
    CHECK(headers_of.size() > 100);
    for (const auto& [name, headers] : headers_of) {
        CAPTURE(name, headers);
        CHECK(headers.size() == 1);
    }
}
