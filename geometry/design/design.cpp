#include "geometry/design/design.hpp"

#include <algorithm>

namespace coilwright {

namespace {

template <typename Element>
const Element* find_by_id(const std::vector<Element>& elements, const std::string& id) {
    const auto found = std::find_if(elements.begin(), elements.end(),
                                    [&](const Element& element) { return element.id == id; });
    return found == elements.end() ? nullptr : &*found;
}

} // namespace

const TubeType* find_tube(const Design& design, const std::string& id) {
    return find_by_id(design.tubes, id);
}
const Dome* find_dome(const Design& design, const std::string& id) {
    return find_by_id(design.domes, id);
}
const Opening* find_opening(const Design& design, const std::string& id) {
    return find_by_id(design.openings, id);
}
const Tunnel* find_tunnel(const Design& design, const std::string& id) {
    return find_by_id(design.tunnels, id);
}

std::string word(Use use) {
    switch (use) {
    case Use::habitable:
        return "habitable";
    case Use::bath:
        return "bath";
    case Use::shower:
        return "shower";
    case Use::tiny_house:
        return "tiny-house";
    case Use::store:
        return "store";
    }
    return {};
}

std::string word(OpeningUse use) {
    switch (use) {
    case OpeningUse::door:
        return "door";
    case OpeningUse::window:
        return "window";
    case OpeningUse::vent:
        return "vent";
    case OpeningUse::niche:
        return "niche";
    }
    return {};
}

std::string word(HeadKind kind) {
    switch (kind) {
    case HeadKind::square:
        return "square";
    case HeadKind::pointed:
        return "pointed";
    case HeadKind::round:
        return "round";
    case HeadKind::segmental:
        return "segmental";
    case HeadKind::circle:
        return "circle";
    }
    return {};
}

std::string word(LintelKind kind) {
    return kind == LintelKind::timber ? "timber" : "concrete";
}

std::string word(TunnelSide side) {
    switch (side) {
    case TunnelSide::end:
        return "end";
    case TunnelSide::left:
        return "left";
    case TunnelSide::right:
        return "right";
    }
    return {};
}

std::string word(ProfileKind kind) {
    switch (kind) {
    case ProfileKind::pointed:
        return "pointed";
    case ProfileKind::round:
        return "round";
    case ProfileKind::segmental:
        return "segmental";
    case ProfileKind::catenary:
        return "catenary";
    case ProfileKind::parabola:
        return "parabola";
    case ProfileKind::drawn:
        return "drawn";
    }
    return {};
}

} // namespace coilwright
