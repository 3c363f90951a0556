// The design as data: what the person wrote in the TOML file, in metres and degrees.
// One struct a table of the file; defaults are those of docs/reference/design-file.md.
#pragma once

#include "geometry/base/length.hpp"
#include "geometry/design/additions.hpp"
#include "geometry/design/domes.hpp"
#include "geometry/design/openings.hpp"
#include "geometry/design/rules.hpp"
#include "geometry/design/settings.hpp"

#include <map>
#include <string>
#include <vector>

namespace coilwright {

/// A whole design. Maps and vectors are ordered by id, so that the order of tables in the file
/// changes nothing.
struct Design {
    int format = 1;
    std::string name;
    DisplayUnit unit = DisplayUnit::feet;
    CourseRules course;
    std::vector<TubeType> tubes;
    std::vector<Dome> domes;
    std::vector<Opening> openings;
    std::vector<Tunnel> tunnels;
    std::vector<Buttress> buttresses;
    std::vector<Join> joins;
    std::vector<Sleeve> sleeves;
    std::vector<ContextObject> context;
    Finish finish;
    Ground ground;
    Wire wire;
    Compass compass;
    std::vector<Fill> fills;
    Joint joint;
    Trench trench;
    Site site;
    std::map<int, double> as_laid_tops; // [as_laid] top: measured top of a course above the floor
    std::map<int, SourcePlace> as_laid_places;
    std::map<std::string, HeadroomRule> rules; // by use; "store" has none
    Limits limits;                             // of the other checks
};

/// The element of that id, or nullptr.
const TubeType* find_tube(const Design& design, const std::string& id);
const Dome* find_dome(const Design& design, const std::string& id);
const Opening* find_opening(const Design& design, const std::string& id);
const Tunnel* find_tunnel(const Design& design, const std::string& id);

/// The word of the design file for a value: "tiny-house", "pointed".
std::string word(Use use);
std::string word(OpeningUse use);
std::string word(HeadKind kind);
std::string word(LintelKind kind);
std::string word(TunnelSide side);
std::string word(ProfileKind kind);

} // namespace coilwright
