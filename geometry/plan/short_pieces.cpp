#include "geometry/plan/short_pieces.hpp"

#include <algorithm>

namespace coilwright {

namespace {

constexpr std::size_t most_named = 8; // in one message; the sheets name them all

std::string stop_text(const std::string& by) {
    return by.empty() ? "its end" : "'" + by + "'";
}

Finding advice_on(const Design& design, const std::string& table, const std::string& element,
                  SourcePlace place, const std::vector<ShortPiece>& pieces) {
    const auto length = [&](double metres) { return length_text(metres, design.unit); };
    const ShortPiece& shortest =
        *std::min_element(pieces.begin(), pieces.end(), [](const auto& a, const auto& b) {
            return a.width - a.length > b.width - b.length;
        });
    const std::size_t count = pieces.size();
    std::string names;
    for (std::size_t i = 0; i < std::min(count, most_named); ++i) {
        const ShortPiece& piece = pieces[i];
        names += (i > 0 ? "; " : "") + std::string("course ") + std::to_string(piece.course) + " " +
                 piece.id + ", " + length(piece.length) + " between " + stop_text(piece.start_by) +
                 " and " + stop_text(piece.end_by);
    }
    if (count > most_named)
        names += "; and " + std::to_string(count - most_named) + " more, on their sheets";
    Finding finding;
    finding.code = "short-pieces";
    finding.subject = table + "." + element;
    finding.place = place;
    finding.verdict = Verdict::advice;
    finding.message =
        std::string(count == 1 ? "One piece" : std::to_string(count) + " pieces") + " of '" +
        element + (shortest.end_by.empty() ? "', between ring and form, " : "' between two cuts ") +
        (count == 1 ? "is" : "are") + " shorter than a tube is wide: " + names + ".";
    finding.value = shortest.length;
    finding.limit = shortest.width;
    finding.unit = FindingUnit::metre;
    finding.source = "a judgement, no source";
    if (shortest.end_by.empty()) { // a built-out jamb where the wall has hardly leaned yet
        finding.remedy = "Fold each into one bag and tamp it tight between the ring and the form; "
                         "where it is too short for a bag, ram damp fill there in thin layers.";
        return finding;
    }
    finding.remedy =
        "Fold each into one bag, lay it after what stops it and before the ring, and tamp it "
        "tight. In the design, " +
        stop_text(shortest.start_by) + " and " + stop_text(shortest.end_by) + " " +
        length(shortest.width - shortest.length) +
        " farther apart leave room for a tube in course " + std::to_string(shortest.course) + ".";
    return finding;
}

/// The built-out jamb of that id; nullptr: another pier.
const ButtressForm* reveal_pier(const Schedule& schedule, const std::string& id) {
    for (const ButtressForm& pier : schedule.building.buttresses)
        if (pier.id == id)
            return pier.reveal ? &pier : nullptr;
    return nullptr;
}

} // namespace

std::vector<ShortPiece> short_pieces(const Schedule& schedule) {
    std::vector<ShortPiece> found;
    for (const Course& course : schedule.courses) {
        const auto add = [&](const std::string& element, const std::string& id,
                             const std::string& start, const std::string& end, double length,
                             double width) {
            if (length < width - 1e-6)
                found.push_back({course.number, element, id, start, end, length, width});
        };
        for (const Ring& ring : course.rings) {
            if (ring.kind == RingKind::cap)
                continue;
            for (const Run& run : ring.runs)
                if (!run.closed)
                    add(ring.dome, run.tubes.front().id, run.start_by, run.end_by, run.length,
                        ring.width);
            for (const Piece& piece : ring.pieces)
                if (piece.kind == PieceKind::wedge)
                    add(ring.dome, piece.id, piece.of, piece.other, piece.length, ring.width);
        }
        for (const Straight& straight : course.straights)
            if (straight.part == StraightPart::pier) {
                if (const ButtressForm* pier = reveal_pier(schedule, straight.of))
                    add(pier->reveal->opening.id, straight.tubes.front().id, pier->dome, "",
                        straight.length, straight.width);
            } else
                add(straight.of, straight.tubes.front().id, straight.start_by, straight.end_by,
                    straight.length, straight.width);
    }
    return found;
}

std::vector<Finding> short_piece_findings(const Design& design, const Schedule& schedule) {
    const std::vector<ShortPiece> all = short_pieces(schedule);
    std::vector<Finding> findings;
    const auto add = [&](const std::string& table, const auto& element) {
        std::vector<ShortPiece> own;
        std::copy_if(all.begin(), all.end(), std::back_inserter(own),
                     [&](const ShortPiece& piece) { return piece.element == element.id; });
        if (!own.empty())
            findings.push_back(advice_on(design, table, element.id, element.place, own));
    };
    for (const Dome& dome : design.domes)
        add("dome", dome);
    for (const Tunnel& tunnel : design.tunnels)
        add("tunnel", tunnel);
    for (const Opening& opening : design.openings)
        add("opening", opening);
    return findings;
}

} // namespace coilwright
