// Areas of a building's faces: what is plastered and painted.
#pragma once

#include "geometry/plan/schedule.hpp"

#include <string>
#include <vector>

namespace coilwright {

enum class FaceKind { inside, outside, reveal };

struct FaceArea {
    std::string element; // of a reveal: the opening's
    FaceKind face = FaceKind::inside;
    double area = 0; // m2
};

/// The smooth faces of the building as they are without plaster: insides from the floor up with the
/// flat underside of a cap, outsides from `ground` up with the cap's top or a curb's, the ledges of
/// wider lower courses and second wythes and the tops of piers and tunnels, net of everything that
/// cuts them; reveals with jambs, heads, sills and the flat of a square head. Slopes are true: a
/// dome's face is its surface of revolution. At each height the lengths are those of the exact plan
/// region; over the height they are summed by quadrature between the heights where faces start,
/// bend or end, with nodes that crowd at both ends (error under 1e-4 of the area). By element in
/// the order domes, tunnels, buttresses, openings; empty faces are left out. A hemisphere of 2 m on
/// the floor, alone: inside near 8 pi.
std::vector<FaceArea> face_areas(const BuildingForm& building, double ground,
                                 const DecideRegion& decide = {});

/// Length of the edge of an opening's hole without its sill: both jambs and the head.
double hole_edge(const OpeningForm& opening);
/// Area of an opening's hole less a strip of `inset` along its edge, the sill included if `sill`.
/// A square of 1 m less 0.1 m all round -> 0.64.
double inset_area(const OpeningForm& opening, double inset, bool sill);

} // namespace coilwright
