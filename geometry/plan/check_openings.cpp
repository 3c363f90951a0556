#include "geometry/plan/heads.hpp"
#include "geometry/plan/layout_faults.hpp"

#include <cmath>

namespace coilwright {

namespace {

/// The openings of a dome, each taken alone.
class OpeningCheck {
public:
    OpeningCheck(const BuildingForm& building, LayoutFaults& faults)
        : building_(building), faults_(faults) {}

    void run(const DomeForm& dome) {
        std::vector<OpeningForm> placed;
        for (const OpeningForm& form : building_.openings)
            if (form.in == dome.id && fits(form, dome))
                placed.push_back(form);
        check_gaps(building_, dome, placed, faults_);
    }

    void run_of_any_tube(const DomeForm& dome) {
        for (const OpeningForm& form : building_.openings)
            if (form.in == dome.id && place_in_wall(form, dome).misfit != Misfit::niche_too_deep)
                fits(form, dome);
    }

private:
    const BuildingForm& building_;
    LayoutFaults& faults_;

    std::string length(double metres) const { return faults_.length(metres); }

    bool fits(const OpeningForm& form, const DomeForm& dome) {
        const OpeningPlace place = place_in_wall(form, dome);
        if (place.misfit == Misfit::none)
            return true;
        const Opening& opening = *find_opening(faults_.design(), form.id);
        Diagnostic& found = report_misfit(form, opening, place, dome);
        const bool width_first = place.misfit == Misfit::too_wide;
        if (place.misfit == Misfit::too_high || place.misfit == Misfit::lintel_too_long ||
            width_first)
            if (const auto measures =
                    workable_measures(opening, form, dome, faults_.design().unit, width_first))
                found.example = measures_text(*measures);
        return false;
    }

    std::string measures_text(const OtherMeasures& measures) const {
        std::string text;
        const auto add = [&](const char* key, const std::optional<double>& value) {
            if (value)
                text +=
                    (text.empty() ? "" : ", ") + std::string(key) + " = \"" + length(*value) + '"';
        };
        add("sill", measures.sill);
        add("width", measures.width);
        add("height", measures.height);
        return text;
    }

    Diagnostic& report_misfit(const OpeningForm& form, const Opening& opening,
                              const OpeningPlace& place, const DomeForm& dome) {
        const std::string subject = "opening." + form.id, name = "'" + form.id + "'";
        const double t = dome.course_height;
        switch (place.misfit) {
        case Misfit::below_floor:
            return report_below_floor(opening, faults_);
        case Misfit::fan_off_joint: {
            const double joint = nearest_joint(dome, form.springing);
            double height = opening.height + joint - form.springing;
            if (height < form.top - form.springing)
                height += t;
            Diagnostic& found =
                faults_.add("fan-off-joint", opening.height_place, subject,
                            "The fan of " + name + " springs at " + length(form.springing) +
                                ", between two course joints.");
            found.allowed = "a springing on a joint, such as " + length(joint);
            found.example = "height = \"" + length(height) + "\"";
            return found;
        }
        case Misfit::none:
        case Misfit::too_high: {
            const double top = taken_top(form, dome);
            const bool with_head = top > form.top + height_tie;
            Diagnostic& found =
                faults_.add("opening-too-high", opening.height_place, subject,
                            "The head of " + name + (with_head ? ", with its fan or lintel," : "") +
                                " at " + length(top) + " lies above the last ring of '" + dome.id +
                                "', which ends at " + length(rings_end(dome)) + ".");
            found.allowed =
                "a head no higher than " + length(highest_head(dome) - (top - form.top));
            found.example = "sill = \"0 in\"";
            return found;
        }
        case Misfit::too_wide:
        case Misfit::lintel_too_long: {
            const bool lintel = place.misfit == Misfit::lintel_too_long;
            Diagnostic& found = faults_.add(
                lintel ? "lintel-too-long" : "opening-too-wide",
                lintel ? opening.head.place : opening.width_place, subject,
                (lintel ? "The lintel or fan of " : "") + name + " is " + length(2 * place.half) +
                    " wide at " + length(place.z) + " above the floor, where the inside of '" +
                    dome.id + "' is " + length(2 * place.room) + " across.");
            found.allowed =
                "less than " + length(2 * widest_share * place.room) + " at that height";
            found.example = "width = \"" + length(std::floor(place.room / 0.0254) * 0.0254) + "\"";
            return found;
        }
        case Misfit::at_foot:
            return report_at_foot(opening, dome, faults_);
        case Misfit::cuts_nothing: {
            Diagnostic& found =
                faults_.add("opening-cuts-nothing", opening.height_place, subject,
                            name +
                                " is too small to cut a course: at no course's middle is it a "
                                "course height (" +
                                length(t) + ") wide.");
            found.allowed = "an opening wider than a course height at the middle of a course; "
                            "smaller holes are sleeves";
            const auto measures = cutting_measures(opening, form, dome, faults_.design().unit);
            found.example =
                measures ? measures_text(*measures) : "width = \"" + length(3 * t) + "\"";
            return found;
        }
        case Misfit::niche_too_deep:
            break;
        }
        Diagnostic& found = faults_.add("niche-too-deep", opening.place, subject,
                                        "The niche " + name + " is " + length(form.niche_depth) +
                                            " deep in a wall of " + length(dome.width) + ".");
        found.allowed = "at most two thirds of the tube (" + length(2 * dome.width / 3) + ")";
        found.example = "depth = \"" + length(dome.width / 2) + "\"";
        return found;
    }
};

} // namespace

Diagnostic& report_below_floor(const Opening& opening, LayoutFaults& faults) {
    Diagnostic& found =
        faults.add("opening-below-floor", opening.sill_place, "opening." + opening.id,
                   "The sill of '" + opening.id + "' lies " + faults.length(-opening.sill) +
                       " below the floor, where no course is cut.");
    found.allowed = "a sill at the floor or above it";
    found.example = "sill = \"0 in\"";
    return found;
}

Diagnostic& report_at_foot(const Opening& opening, const CourseLevels& wall, LayoutFaults& faults) {
    Diagnostic& found = faults.add("opening-at-foot", opening.sill_place, "opening." + opening.id,
                                   "The circle '" + opening.id + "' stands with its foot at " +
                                       faults.length(opening.sill) + ", on the wall's own foot.");
    found.allowed = "a sill at least half a course above the foot of the wall";
    found.example = "sill = \"" + faults.length(wall.bottom() + wall.course_height) + "\"";
    return found;
}

void check_openings(const BuildingForm& building, LayoutFaults& faults) {
    for (const DomeForm& dome : building.domes)
        OpeningCheck(building, faults).run(dome);
    check_tunnel_openings(building, faults);
}

void check_openings_of_any_tube(const BuildingForm& building, const DomeForm& dome,
                                LayoutFaults& faults) {
    OpeningCheck(building, faults).run_of_any_tube(dome);
}

} // namespace coilwright
