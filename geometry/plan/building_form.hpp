// The whole building as functions of height, and its wall at a height as set algebra in plan.
#pragma once

#include "geometry/plan/buttress_form.hpp"
#include "geometry/plan/region.hpp"
#include "geometry/plan/sleeve_form.hpp"
#include "geometry/plan/tunnel_form.hpp"
#include "geometry/plan/wall_form.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// Two domes that overlap: one keeps its wall, or neither does (`keep` empty: open plan). `bonded`:
/// the rings that stop at the wall that stays run into it on alternate courses where they can.
struct JoinForm {
    std::string id, first, second, keep;
    bool bonded = true;
};

struct BuildingForm {
    std::vector<DomeForm> domes;
    std::vector<TunnelForm> tunnels;
    std::vector<ButtressForm> buttresses;
    std::vector<OpeningForm> openings;
    std::vector<JoinForm> joins;
    std::vector<SleeveForm> sleeves;
};

/// Every sound element of a design as fitted; elements that hang on an unsound one are left out.
BuildingForm make_building_form(const Design& design);

/// The plumb reveal of an opening at a height; null where it has none there.
const ButtressForm* find_reveal(const BuildingForm& building, const std::string& opening, double z);

const DomeForm* find_dome(const BuildingForm& building, const std::string& id);
const TunnelForm* find_tunnel(const BuildingForm& building, const std::string& id);

/// How far from a sleeve's origin the faces of its wall lie at a height.
struct WallBand {
    double inside = 0, outside = 0;
};
WallBand wall_of(const SleeveForm& sleeve, const BuildingForm& building, double z);

/// What a join does to the wall of `dome` where it meets `other`.
enum class JoinEffect { none, stops_at_wall, opens_to_room };
JoinEffect join_effect(const BuildingForm& building, const std::string& dome,
                       const std::string& other);

/// What a shape of a wall's expression is the section of: a role, and the place of the element that
/// plays it in the building's list of its kind.
enum class SectionRole { dome_outside, dome_inside, tunnel_body, tunnel_void, pier, hole };
struct SectionTag {
    SectionRole role = SectionRole::dome_outside;
    int element = 0;
    bool operator==(const SectionTag&) const = default;
};

/// Which elements of a building have to do with which, by their places in its lists: what the rules
/// below look up, found once.
struct WallRelations {
    struct Joined {
        int dome;
        JoinEffect effect;
    };
    std::vector<std::vector<Joined>> joins;        // per dome
    std::vector<std::vector<int>> stopped_at;      // per dome: those whose rings stop at its wall
    std::vector<std::vector<int>> dome_tunnels;    // per dome
    std::vector<std::vector<int>> dome_piers;      // per dome
    std::vector<std::vector<int>> dome_openings;   // per dome
    std::vector<std::vector<int>> dome_sleeves;    // per dome
    std::vector<std::vector<int>> tunnel_openings; // per tunnel
    std::vector<std::vector<int>> tunnel_sleeves;  // per tunnel
    std::vector<std::pair<int, int>> tunnel_domes; // from, to; -1: none
    std::vector<int> pier_domes;                   // per buttress; -1: none
};
WallRelations make_relations(const BuildingForm& building);

/// An expression with a tag for each of its shapes; no tag comes twice.
struct TaggedExpression {
    PlanExpression plan;
    std::vector<SectionTag> tags;
};

/// The wall at a height: the union of rings, caps, tunnel walls and buttresses, each less what cuts
/// it:
/// - a dome's inside cuts its own ring or cap, that of a dome joined to it in open plan, the walls
///   of its tunnels and its buttresses;
/// - a dome's outside cuts the ring or cap of a dome whose join keeps the first one's wall, and the
///   walls of a tunnel from it for which its wall stays;
/// - a tunnel's void cuts the tunnel's own walls; from the floor up also the rings, caps and
///   buttresses of its domes, unless the wall stays;
/// - an opening cuts the wall it is in and, in a dome, that dome's buttresses.
///
/// Terms come in the order domes, tunnels, buttresses; `element` is the id.
PlanExpression wall_expression(const BuildingForm& building, double z);
/// The same, telling what each shape is; work in proportion to the building, or to those of its
/// terms that are wanted: one flag a dome, then a tunnel, then a buttress; empty: all.
TaggedExpression tagged_wall(const BuildingForm& building, const WallRelations& relations, double z,
                             const std::vector<bool>& wanted = {});

/// The wall of course n: at its middle, and whole over holes that are laid over.
/// `lift` metres higher.
PlanExpression course_expression(const BuildingForm& building, int n, double lift = 0);
PlanExpression course_expression(const BuildingForm& building, const WallRelations& relations,
                                 int n, double lift = 0);

/// Courses of the building: those of its dome or tunnel with the most; 0 without any.
int course_count(const BuildingForm& building);

/// Rooms at a height: the insides of domes and tunnels, each less the walls that stay in it.
PlanExpression room_expression(const BuildingForm& building, double z);
/// Everything within the outside faces at a height: the footprint.
PlanExpression footprint_expression(const BuildingForm& building, double z);

} // namespace coilwright
