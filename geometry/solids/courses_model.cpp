#include "geometry/solids/solid_model.hpp"

#include "geometry/base/slug.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "geometry/solids/opening_bodies.hpp"
#include "geometry/solids/placement.hpp"
#include "geometry/solids/shape_fault.hpp"
#include "geometry/solids/tube_body.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

/// A model beyond this would take gigabytes: the building is too large for its tolerance.
constexpr double most_triangles = 12e6;

constexpr double board = 0.018; // metres: thickness of a form's boards

/// Bags of a crown and tubes of a pier lie side by side across the whole width.
double laid_width(const BuildingForm& building, const Straight& straight, const Course& course) {
    if (straight.part == StraightPart::crown) {
        const TunnelForm& tunnel = *find_tunnel(building, straight.of);
        const double across = 2 * outer_half_width(tunnel, course.middle);
        return across / std::max(1.0, std::round(across / tunnel.width));
    }
    for (const ButtressForm& pier : building.buttresses)
        if (straight.part == StraightPart::pier && pier.id == straight.of)
            return pier_tubes(pier, course.number).front().width;
    return straight.width;
}

class CoursesBuilder {
public:
    CoursesBuilder(const Schedule& schedule, double tolerance)
        : schedule_(schedule), building_(schedule.building), tolerance_(tolerance) {}

    SolidResult run() {
        result_.model.name = schedule_.name;
        if (!is_small_enough())
            return std::move(result_);
        for (const DomeForm& form : building_.domes)
            add_dome(form);
        for (const TunnelForm& tunnel : building_.tunnels)
            add_straights(tunnel.id);
        for (const ButtressForm& pier : building_.buttresses)
            add_straights(pier.id);
        add_openings();
        return std::move(result_);
    }

private:
    bool is_small_enough() {
        double expected = 0;
        for (const Course& course : schedule_.courses) {
            std::string name;
            for (const Ring& ring : course.rings) {
                const DomeForm& form = *find_dome(building_, ring.dome);
                const auto gaps = gaps_in_ring(building_, form, course.number, Bond::laid);
                for (const Run& run : ring.runs)
                    for (std::size_t i = 0; i < run.tubes.size(); ++i)
                        expected +=
                            tube_triangles(tube_body(form, course, ring, run, i, gaps), tolerance_);
                name = "dome." + form.id;
            }
            for (const Straight& straight : course.straights)
                for (std::size_t i = 0; i < straight.tubes.size(); ++i)
                    expected += straight_triangles(straight_body(course, straight, i), tolerance_);
            if (expected > most_triangles) {
                result_.faults.push_back(
                    {name, name, fault_text(ShapeFault::too_many_triangles, name, name)});
                return false;
            }
        }
        return true;
    }

    std::string add_group(const std::string& wanted, const std::string& title,
                          const std::string& parent) {
        result_.model.groups.push_back({slugs_.unique(wanted), title, parent});
        return result_.model.groups.back().slug;
    }

    std::string add_course_group(const std::string& element, const Course& course,
                                 const std::string& parent) {
        std::string wanted = course_slug(element, course.number, {});
        wanted.pop_back(); // the '_' before the part's name, of which there is none
        return add_group(wanted, "Course " + std::to_string(course.number) + " of " + element,
                         parent);
    }

    void add_dome(const DomeForm& form) {
        const std::string dome_group = add_group(form.id, form.id, {});
        for (const Course& course : schedule_.courses) {
            std::string group; // both wythes of a course are in one
            for (const Ring& ring : course.rings) {
                if (ring.dome != form.id)
                    continue;
                if (group.empty())
                    group = add_course_group(form.id, course, dome_group);
                add_ring(form, course, ring, group);
            }
        }
    }

    void add_ring(const DomeForm& form, const Course& course, const Ring& ring,
                  const std::string& group) {
        SolidPart part;
        part.group = group;
        part.course = course.number;
        part.compass_radius = ring.inside_radius;
        const std::string where = " of course " + std::to_string(course.number) + ", " + form.id;
        const auto add = [&](const std::string& id, const std::string& title, Mesh mesh) {
            part.slug = course_slug(form.id, course.number, id);
            part.title = title + where;
            place(mesh, form);
            add_part(part, std::move(mesh), "dome." + form.id + where);
        };
        if (ring.kind == RingKind::cap) {
            part.material = Material::earth_cap;
            add("CAP", "Cap",
                mesh_disc(ring.outside_radius, course.bottom, schedule_.course_height, tolerance_));
            return;
        }
        const auto gaps = gaps_in_ring(building_, form, course.number, Bond::laid);
        for (const Run& run : ring.runs)
            for (std::size_t i = 0; i < run.tubes.size(); ++i)
                add(run.tubes[i].id, "Tube " + run.tubes[i].id,
                    mesh_tube(tube_body(form, course, ring, run, i, gaps), tolerance_));
    }

    TubeBody tube_body(const DomeForm& form, const Course& course, const Ring& ring, const Run& run,
                       std::size_t i, const std::vector<RingGap>& gaps) const {
        const LaidTube& tube = run.tubes[i];
        TubeBody body;
        body.inside_radius = ring.inside_radius;
        body.width = ring.outside_radius - ring.inside_radius;
        body.bottom = course.bottom;
        body.height = schedule_.course_height;
        // Bearings run clockwise, a body's angles the other way.
        body.start = angle_from_datum(form, tube.end_bearing);
        body.end = angle_from_datum(form, tube.start_bearing);
        body.endless = run.closed && run.tubes.size() == 1;
        if (!run.closed && i + 1 == run.tubes.size())
            body.start_gap = gap_at(gaps, run.end_by);
        if (!run.closed && i == 0)
            body.end_gap = gap_at(gaps, run.start_by);
        return body;
    }

    static std::optional<RingGap> gap_at(const std::vector<RingGap>& gaps, const std::string& by) {
        const auto gap =
            std::find_if(gaps.begin(), gaps.end(), [&](const RingGap& g) { return g.by == by; });
        return gap == gaps.end() ? std::nullopt : std::optional(*gap);
    }

    void add_straights(const std::string& element) {
        const std::string element_group = add_group(element, element, {});
        for (const Course& course : schedule_.courses) {
            std::string group;
            for (const Straight& straight : course.straights) {
                if (straight.of != element)
                    continue;
                if (group.empty())
                    group = add_course_group(element, course, element_group);
                for (std::size_t i = 0; i < straight.tubes.size(); ++i)
                    add_straight_tube(course, straight, i, group);
            }
        }
    }

    void add_straight_tube(const Course& course, const Straight& straight, std::size_t i,
                           const std::string& group) {
        SolidPart part;
        part.slug = course_slug(straight.of, course.number, straight.tubes[i].id);
        part.group = group;
        part.title = "Tube " + straight.tubes[i].id + " of course " +
                     std::to_string(course.number) + ", " + straight.of + ", " +
                     word(straight.part);
        part.course = course.number;
        if (straight.part == StraightPart::crown)
            part.material = Material::earth_cap;
        const StraightBody body = straight_body(course, straight, i);
        Mesh mesh = mesh_straight(body, tolerance_);
        place(mesh, tube_start(straight, i), axis_of(straight));
        add_part(part, std::move(mesh), straight.of + " course " + std::to_string(course.number));
    }

    static Vec2 axis_of(const Straight& straight) {
        return (straight.end - straight.start) / straight.length;
    }

    static Vec2 tube_start(const Straight& straight, std::size_t i) {
        double before = 0;
        for (std::size_t k = 0; k < i; ++k)
            before += straight.tubes[k].length;
        return straight.start + before * axis_of(straight);
    }

    StraightBody straight_body(const Course& course, const Straight& straight,
                               std::size_t i) const {
        StraightBody body;
        body.length = straight.tubes[i].length;
        body.width = laid_width(building_, straight, course);
        body.bottom = course.bottom;
        body.height = schedule_.course_height;
        const Vec2 axis = axis_of(straight), origin = tube_start(straight, i);
        // The face of a dome's wall that the centreline ends at.
        const auto wall = [&](const std::string& by, const Vec2& end) -> std::optional<Disc> {
            const DomeForm* dome = find_dome(building_, by);
            if (!dome)
                return std::nullopt;
            const Vec2 off = dome->at - origin;
            return Disc{{off.dot(axis), axis.x() * off.y() - axis.y() * off.x()},
                        (end - dome->at).norm()};
        };
        if (i == 0)
            body.start_wall = wall(straight.start_by, straight.start);
        if (i + 1 == straight.tubes.size())
            body.end_wall = wall(straight.end_by, straight.end);
        return body;
    }

    // Forms are for building only: they stand where frames and panes come later.

    void add_openings() {
        const std::string frames = group_if(!schedule_.openings.empty(), "FRAMES", "Frames");
        const std::string forms = group_if(!schedule_.openings.empty(), "FORMS", "Forms");
        const std::string heads = group_if(!schedule_.lintels.empty() || !schedule_.fans.empty(),
                                           "HEADS", "Lintels and fans");
        for (const OpeningPlan& opening : schedule_.openings) {
            if (opening.first_course == 0)
                continue;
            const bool with_sill = opening.form.use != OpeningUse::door;
            if (const auto frame = frame_body(opening))
                add_lining(opening.form, "FRAME", "Frame", frames, *frame);
            add_lining(opening.form, "FORM", "Form", forms,
                       {0, board, with_sill, opening.innermost,
                        opening.innermost + opening.least_form_depth});
        }
        for (const Lintel& lintel : schedule_.lintels)
            add_head(*form_of(lintel.opening), "LINTEL", "Lintel", heads,
                     lintel.kind == LintelKind::timber ? Material::timber : Material::concrete,
                     mesh_lintel(lintel));
        for (const Fan& fan : schedule_.fans) {
            const OpeningForm& form = *form_of(fan.opening);
            const auto bags = mesh_fan(form, fan, *find_dome(building_, form.in), tolerance_);
            for (std::size_t i = 0; i < bags.size(); ++i)
                add_head(form, "FAN" + std::to_string(i + 1),
                         2 * i + 1 == bags.size() ? "Keystone" : "Fan bag", heads, Material::earth,
                         bags[i]);
        }
    }

    std::string group_if(bool wanted, const std::string& slug, const std::string& title) {
        return wanted ? add_group(slug, title, {}) : std::string();
    }

    const OpeningForm* form_of(const std::string& opening) const {
        const auto found =
            std::find_if(building_.openings.begin(), building_.openings.end(),
                         [&](const OpeningForm& form) { return form.id == opening; });
        return &*found;
    }

    void add_lining(const OpeningForm& form, const std::string& id, const std::string& title,
                    const std::string& group, const LiningBody& body) {
        Mesh mesh = mesh_lining(form, body, tolerance_);
        if (!mesh.triangles.empty())
            add_head(form, id, title, group, Material::timber, std::move(mesh));
    }

    void add_head(const OpeningForm& form, const std::string& id, const std::string& title,
                  const std::string& group, Material material, Mesh mesh) {
        SolidPart part;
        part.slug = slug(form.id + "_" + id);
        part.group = group;
        part.title = title + " of " + form.id;
        part.material = material;
        place(mesh, form.origin, form.axis);
        add_part(part, std::move(mesh), "opening." + form.id);
    }

    void add_part(SolidPart part, Mesh mesh, const std::string& name) {
        if (!check_mesh(mesh, true).solid()) {
            result_.faults.push_back({name, name, fault_text(ShapeFault::not_proven, name, name)});
            return;
        }
        part.slug = slugs_.unique(part.slug);
        part.volume = volume(mesh);
        part.mesh = std::move(mesh);
        result_.model.parts.push_back(std::move(part));
    }

    const Schedule& schedule_;
    const BuildingForm& building_;
    double tolerance_;
    SlugTable slugs_;
    SolidResult result_;
};

} // namespace

SolidResult courses_model(const Schedule& schedule, double tolerance) {
    if (!tolerance_in_bounds(tolerance)) {
        SolidResult refused;
        refused.model.name = schedule.name;
        refused.faults.push_back({{}, {}, fault_text(ShapeFault::tolerance, {}, {})});
        return refused;
    }
    return CoursesBuilder(schedule, tolerance).run();
}

} // namespace coilwright
