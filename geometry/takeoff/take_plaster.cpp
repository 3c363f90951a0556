#include "geometry/takeoff/ledger.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

double hollow_thickness(const Design& design) {
    return design.course.edge == TubeEdge::round ? design.course.height * (4 - pi) / 8 : 0;
}

std::vector<Coat> coats_of(const Design& design, const Works& works, WallSide side) {
    std::vector<Coat> coats;
    for (const Coat& coat : works.coats)
        if (coat.side == side)
            coats.push_back(coat);
    std::stable_sort(coats.begin(), coats.end(),
                     [](const Coat& a, const Coat& b) { return a.order < b.order; });
    const double stated =
        side == WallSide::inside ? design.finish.inside_plaster : design.finish.outside_plaster;
    if (coats.empty() && stated > 0) {
        Coat coat;
        coat.id = word(side);
        coat.side = side;
        coat.thickness = stated;
        coat.mix = "lime";
        coat.cure_days = 7;
        coats.push_back(coat);
    }
    return coats;
}

void take_mix(const Ledger& ledger, const Mix& mix, double wet, const TakeOffLine& like) {
    for (const MixShare& share : mix_shares(mix, wet, ledger.works)) {
        TakeOffLine line = like;
        line.item = share.material;
        line.what += " ('" + mix.id + "')";
        // Cement and lime are bought by mass, the others by loose volume.
        const bool by_mass = share.material == "cement" || share.material == "lime";
        line.amount = by_mass ? share.mass : share.volume;
        line.how += " Its part of the loose volume, the wet volume over the mix's yield.";
        line.figures.push_back({"wet volume", wet, "m3"});
        line.figures.push_back({"yield", mix_yield(mix, ledger.works), ""});
        line.figures.push_back({"loose", share.volume, "m3"});
        ledger.add(std::move(line));
    }
    TakeOffLine water = like;
    water.item = "water";
    water.what = "Mixing water: " + like.what + " ('" + mix.id + "')";
    water.amount = wet * mix.water * 1000; // litres
    water.how += " The mix's share of the wet volume.";
    water.figures.push_back({"wet volume", wet, "m3"});
    water.figures.push_back({"share", mix.water, ""});
    ledger.add(std::move(water));
}

namespace {

void note_thickness(const Ledger& ledger, WallSide side, const std::vector<Coat>& coats) {
    const Design& design = ledger.plan.design;
    const double stated =
        side == WallSide::inside ? design.finish.inside_plaster : design.finish.outside_plaster;
    double sum = 0;
    bool own = false;
    for (const Coat& coat : coats) {
        sum += coat.thickness;
        own = own || coat.place.line > 0;
    }
    const auto length = [&](double metres) { return length_text(metres, design.unit); };
    if (!coats.empty() && !own)
        ledger.take.notes.push_back("Plaster " + word(side) + ": one coat of " + length(stated) +
                                    " of the mix 'lime' is assumed; a works file can name others.");
    else if (std::abs(sum - stated) > 1e-3 && own)
        ledger.take.notes.push_back("The coats " + word(side) + " are " + length(sum) +
                                    " together, and the design says " + length(stated) +
                                    ": the take-off counts the coats.");
}

} // namespace

void take_plaster(const Ledger& ledger, const DecideRegion& decide) {
    const Design& design = ledger.plan.design;
    ledger.take.faces = face_areas(ledger.schedule().building, design.ground.level, decide);
    for (const WallSide side : {WallSide::inside, WallSide::outside}) {
        const std::vector<Coat> coats = coats_of(design, ledger.works, side);
        note_thickness(ledger, side, coats);
        for (const FaceArea& face : ledger.take.faces) {
            // Reveals are finished like the inside.
            const bool on_side = (face.face == FaceKind::outside) == (side == WallSide::outside);
            if (!on_side)
                continue;
            bool first = true;
            for (const Coat& coat : coats) {
                const bool fills = first && face.face != FaceKind::reveal;
                first = false;
                const double hollows = fills ? hollow_thickness(design) : 0;
                take_mix(ledger, *find_mix(ledger.works, coat.mix),
                         face.area * (coat.thickness + hollows),
                         {"",
                          face.element,
                          Phase::plaster,
                          "Coat '" + coat.id + "' " +
                              (face.face == FaceKind::reveal ? "on reveals" : word(side)),
                          0,
                          std::string("Area of the face times the coat's thickness") +
                              (fills ? " and the hollows between the bags." : "."),
                          {{"area", face.area, "m2"},
                           {"thickness", coat.thickness, "m"},
                           {"hollows", hollows, "m"}}});
            }
            for (const Paint& paint : ledger.works.paints)
                if (paint.side == side)
                    ledger.add({"paint",
                                face.element,
                                Phase::finish,
                                "Paint '" + paint.id + "' " + word(side),
                                face.area * paint.roughness * paint.coats / paint.coverage,
                                "Area times roughness and coats, over the coverage.",
                                {{"area", face.area, "m2"},
                                 {"roughness", paint.roughness, ""},
                                 {"coats", static_cast<double>(paint.coats), ""},
                                 {"coverage", paint.coverage, "m2/l"}}});
        }
    }
}

} // namespace coilwright
