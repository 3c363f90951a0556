#include "geometry/solids/solid_model.hpp"

#include "geometry/base/slug.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "geometry/solids/placement.hpp"
#include "geometry/solids/shape_fault.hpp"
#include "geometry/solids/tube_body.hpp"

#include <algorithm>

namespace coilwright {

namespace {

/// A model beyond this would take gigabytes: the building is too large for its tolerance.
constexpr double most_triangles = 12e6;

class CoursesBuilder {
public:
    CoursesBuilder(const Schedule& schedule, double tolerance)
        : schedule_(schedule), tolerance_(tolerance) {}

    SolidResult run() {
        result_.model.name = schedule_.name;
        for (const DomeForm& form : schedule_.building.domes) {
            expected_ += expected_triangles(form);
            if (expected_ > most_triangles) {
                const std::string name = "dome." + form.id;
                result_.faults.push_back(
                    {name, name, fault_text(ShapeFault::too_many_triangles, name, name)});
                break;
            }
            add_dome(form);
        }
        return std::move(result_);
    }

private:
    double expected_triangles(const DomeForm& form) const {
        double count = 0;
        for (const Course& course : schedule_.courses)
            for (const Ring& ring : course.rings)
                if (ring.dome == form.id)
                    for (const Run& run : ring.runs)
                        for (std::size_t i = 0; i < run.tubes.size(); ++i)
                            count +=
                                tube_triangles(tube_body(form, course, ring, run, i), tolerance_);
        return count;
    }

    std::string add_group(const std::string& wanted, const std::string& title,
                          const std::string& parent) {
        result_.model.groups.push_back({slugs_.unique(wanted), title, parent});
        return result_.model.groups.back().slug;
    }

    void add_dome(const DomeForm& form) {
        const std::string dome_group = add_group(form.id, form.id, {});
        for (const Course& course : schedule_.courses)
            for (const Ring& ring : course.rings) {
                if (ring.dome != form.id)
                    continue;
                const std::string number = std::to_string(course.number);
                std::string group = course_slug(form.id, course.number, {});
                group.pop_back(); // the '_' before the part's name, of which there is none
                group = add_group(group, "Course " + number + " of " + form.id, dome_group);
                add_ring(form, course, ring, group);
            }
    }

    void add_ring(const DomeForm& form, const Course& course, const Ring& ring,
                  const std::string& group) {
        if (ring.kind == RingKind::cap) {
            add_part(
                form, course, ring, group, "CAP", "Cap",
                mesh_disc(ring.outside_radius, course.bottom, schedule_.course_height, tolerance_));
            return;
        }
        for (const Run& run : ring.runs)
            for (std::size_t i = 0; i < run.tubes.size(); ++i)
                add_part(form, course, ring, group, run.tubes[i].id, "Tube " + run.tubes[i].id,
                         mesh_tube(tube_body(form, course, ring, run, i), tolerance_));
    }

    TubeBody tube_body(const DomeForm& form, const Course& course, const Ring& ring, const Run& run,
                       std::size_t i) const {
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
            body.start_cut = cut_of(ring, run.end_by);
        if (!run.closed && i == 0)
            body.end_cut = cut_of(ring, run.start_by);
        return body;
    }

    static std::optional<double> cut_of(const Ring& ring, const std::string& opening) {
        const auto cut = std::find_if(ring.cuts.begin(), ring.cuts.end(),
                                      [&](const Cut& c) { return c.by == opening; });
        return cut == ring.cuts.end() ? std::nullopt : std::optional(cut->half_width);
    }

    void add_part(const DomeForm& form, const Course& course, const Ring& ring,
                  const std::string& group, const std::string& id, const std::string& title,
                  Mesh mesh) {
        SolidPart part;
        part.slug = slugs_.unique(course_slug(form.id, course.number, id));
        part.group = group;
        part.title = title + " of course " + std::to_string(course.number) + ", " + form.id;
        part.material = ring.kind == RingKind::cap ? Material::earth_cap : Material::earth;
        part.course = course.number;
        part.compass_radius = ring.inside_radius;
        place(mesh, form);
        if (!check_mesh(mesh, true).solid()) {
            const std::string name =
                "dome." + form.id + " course " + std::to_string(course.number) + " " + id;
            result_.faults.push_back({name, name, fault_text(ShapeFault::not_proven, name, name)});
            return;
        }
        part.volume = volume(mesh);
        part.mesh = std::move(mesh);
        result_.model.parts.push_back(std::move(part));
    }

    const Schedule& schedule_;
    double tolerance_;
    double expected_ = 0;
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
