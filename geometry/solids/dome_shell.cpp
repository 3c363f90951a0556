#include "geometry/solids/dome_shell.hpp"

#include "geometry/solids/hole_curves.hpp"
#include "geometry/solids/placement.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

/// One face of the wall, and the curves on it.
struct Wall {
    RevolvedSurface surface;
    std::vector<Chain> boundary;
    std::vector<Chain> creases;
};

/// Where a hole that is open at the wall's foot meets the foot's circle.
struct Foot {
    double from_angle, to_angle; // right and left side of the hole, anticlockwise
    std::uint32_t from, to;
};

Section inside_meridian(const DomeForm& form) {
    // The room ends a hair below the cap, where the radius drops to 0.
    const double last = form.ceiling() - 2 * height_tie;
    Section meridian{[&form, last](double z) { return inside_radius(form, std::min(z, last)); },
                      form.bottom(),
                      form.cap_courses > 0 ? form.ceiling() : form.top(),
                      {form.springline, form.course_middle(form.last_ring)}};
    if (form.cap_courses > 0)
        meridian.breaks.push_back(form.springline +
                                  height_at(form.profile, form.last_ring_radius / 2));
    return meridian;
}

Section outside_meridian(const DomeForm& form) {
    return {[&form](double z) { return outside_radius(form, z); },
            form.bottom(),
            form.top(),
            {form.springline, form.course_middle(form.last_ring), form.cap.line_z,
             form.course_middle(form.courses())}};
}

class ShellBuilder {
public:
    ShellBuilder(const DomeForm& form, const std::vector<OpeningForm>& openings, double tolerance)
        : form_(form), openings_(openings),
          tolerance_(tolerance), inside_{RevolvedSurface(inside_meridian(form), 0.86 * tolerance),
                                         {},
                                         {}},
          outside_{RevolvedSurface(outside_meridian(form), 0.86 * tolerance), {}, {}} {}

    DomeShell run() {
        for (const OpeningForm& opening : openings_)
            if (!fits(opening))
                return std::move(shell_);
        for (const OpeningForm& opening : openings_)
            if (!add_hole(opening))
                return std::move(shell_);
        add_kinks(inside_);
        add_kinks(outside_);
        if (add_foot() && add_top())
            add_walls();
        return std::move(shell_);
    }

private:
    std::string dome_name() const { return "dome." + form_.id; }

    bool refuse(const OpeningForm& opening, ShapeFault kind) {
        shell_.fault = PatchFault{kind, "opening." + opening.id, dome_name()};
        return false;
    }

    bool fits(const OpeningForm& opening) {
        if (opening.top > form_.ceiling() - 1e-5)
            return refuse(opening, ShapeFault::reaches_ceiling);
        const bool circle = opening.head_kind == HeadKind::circle;
        if (opening.sill < form_.bottom() - (circle ? 0 : height_tie))
            return refuse(opening, ShapeFault::below_foot);
        if (circle && opening.sill < form_.bottom() + 1e-5)
            return refuse(opening, ShapeFault::touching);
        const HoleOutline outline = hole_outline(opening, form_.bottom());
        for (const SectionPiece& piece : outline.pieces)
            for (int i = 0; i <= 64; ++i) {
                const Vec2 at = piece.at(piece.length() * i / 64);
                const double z = std::clamp(at.y(), form_.bottom(), form_.ceiling());
                if (std::abs(at.x()) > 0.999 * inside_.surface.radius_at(z))
                    return refuse(opening, ShapeFault::too_wide);
            }
        return true;
    }

    bool add_patch(const Patch& patch, const std::string& owner) {
        shell_.owners.emplace_back(static_cast<std::uint32_t>(shell_.mesh.triangles.size()), owner);
        shell_.fault = mesh_patch(patch, tolerance_, shell_.mesh);
        return !shell_.fault;
    }

    std::uint32_t add_vertex(const Vec3& at) {
        shell_.mesh.vertices.push_back(at);
        return static_cast<std::uint32_t>(shell_.mesh.vertices.size() - 1);
    }

    // A hole, in the frame of its axis: along, left, up.

    HoleAxis axis_of(const OpeningForm& opening) const {
        const double angle = angle_from_datum(form_, opening.bearing.degrees);
        const Vec2 along(std::cos(angle), std::sin(angle));
        return {along, Vec2(-along.y(), along.x())};
    }

    Chain chain_of(std::uint32_t first, const std::vector<Vec3>& between, std::uint32_t last,
                   const std::string& element) {
        Chain chain{{first}, false, element};
        for (const Vec3& at : between)
            chain.vertices.push_back(add_vertex(at));
        chain.vertices.push_back(last);
        return chain;
    }

    /// Points that divide a straight edge through the wall evenly.
    std::vector<Vec3> through_points(std::uint32_t from, std::uint32_t to, double spacing) const {
        const Vec3 start = shell_.mesh.vertices[from], end = shell_.mesh.vertices[to];
        const int count = std::max(1, static_cast<int>(std::ceil((end - start).norm() / spacing)));
        std::vector<Vec3> points;
        for (int i = 1; i < count; ++i)
            points.emplace_back(start + (end - start) * i / count);
        return points;
    }

    bool add_hole(const OpeningForm& opening) {
        const std::string name = "opening." + opening.id;
        const HoleAxis axis = axis_of(opening);
        const HoleOutline outline = hole_outline(opening, form_.bottom());
        const HoleCurves inside(inside_.surface, axis, outline, 0.85 * tolerance_);
        const HoleCurves outside(outside_.surface, axis, outline, 0.85 * tolerance_);
        const std::size_t count = outline.pieces.size();
        std::vector<ExtrudedSurface> surfaces;
        for (const SectionPiece& piece : outline.pieces)
            surfaces.emplace_back(Vec3::Zero(), axis.along, piece, 0.86 * tolerance_);
        // Corner i is where piece i starts; an open outline has one more, the end of the last.
        std::vector<std::uint32_t> in, out;
        std::vector<Chain> through;
        for (std::size_t i = 0; i < count + (outline.open ? 1 : 0); ++i) {
            const Vec2 at = i < count ? outline.pieces[i].start : outline.pieces[i - 1].end;
            in.push_back(add_vertex(inside.point(at)));
            out.push_back(add_vertex(outside.point(at)));
            double spacing =
                std::min(inside_.surface.spacing_at(at.y()), outside_.surface.spacing_at(at.y()));
            for (const std::size_t beside : {i, i + count - 1})
                spacing = std::min(spacing, surfaces[beside % count].spacing(Vec2::Zero()));
            const double least = std::min(inside.edge_about(at), outside.edge_about(at));
            spacing = std::min(spacing, std::max(5 * least, spacing / 8));
            through.push_back(
                chain_of(in[i], through_points(in[i], out[i], spacing), out[i], name));
        }
        for (std::size_t i = 0; i < count; ++i) {
            const std::size_t next = (i + 1) % in.size();
            const double spacing = surfaces[i].spacing(Vec2::Zero());
            Chain inner = chain_of(in[i], inside.between_ends(i, spacing), in[next], name);
            Chain outer = chain_of(out[i], outside.between_ends(i, spacing), out[next], name);
            if (!add_patch({&surfaces[i], {inner, outer, through[i], through[next]}, {}, false},
                           name))
                return false;
            inside_.boundary.push_back(std::move(inner));
            outside_.boundary.push_back(std::move(outer));
        }
        if (outline.open) {
            feet_in_.push_back(foot(in.back(), in.front()));
            feet_out_.push_back(foot(out.back(), out.front()));
            foot_edges_.push_back(through.front());
            foot_edges_.push_back(through.back());
        }
        return true;
    }

    Foot foot(std::uint32_t right, std::uint32_t left) const {
        const auto angle = [&](std::uint32_t v) {
            return std::atan2(shell_.mesh.vertices[v].y(), shell_.mesh.vertices[v].x());
        };
        return {angle(right), angle(left), right, left};
    }

    // Level circles.

    double circle_spacing(const Wall& wall, double z) const {
        return std::min(edge_for_tolerance(1 / wall.surface.radius_at(z), 0, 0.85 * tolerance_),
                        wall.surface.spacing_at(z));
    }

    void add_arc(Chain& chain, const Wall& wall, double z, double start, double turn,
                 bool with_start) {
        const double r = wall.surface.radius_at(z);
        const int count =
            std::max(1, static_cast<int>(std::ceil(turn * r / circle_spacing(wall, z) - 1e-9)));
        for (int i = with_start ? 0 : 1; i < count; ++i) {
            const double angle = start + turn * i / count;
            chain.vertices.push_back(add_vertex({r * std::cos(angle), r * std::sin(angle), z}));
        }
    }

    Chain circle(const Wall& wall, double z) {
        Chain chain{{}, true, dome_name()};
        add_arc(chain, wall, z, 0, 2 * pi, true);
        return chain;
    }

    /// The foot of the wall's face: a circle, or arcs between the holes that stand on it.
    std::vector<Chain> foot_circle(const Wall& wall, std::vector<Foot> feet) {
        if (feet.empty())
            return {circle(wall, form_.bottom())};
        std::sort(feet.begin(), feet.end(),
                  [](const Foot& a, const Foot& b) { return a.from_angle < b.from_angle; });
        std::vector<Chain> arcs;
        for (std::size_t i = 0; i < feet.size(); ++i) {
            const Foot &here = feet[i], &next = feet[(i + 1) % feet.size()];
            double turn = next.from_angle - here.to_angle;
            while (turn < 0)
                turn += 2 * pi;
            Chain arc{{here.to}, false, dome_name()};
            add_arc(arc, wall, form_.bottom(), here.to_angle, turn, false);
            arc.vertices.push_back(next.from);
            arcs.push_back(std::move(arc));
        }
        return arcs;
    }

    /// Kinks of a meridian become creases where no opening comes near; elsewhere points on them and
    /// the refinement must do.
    void add_kinks(Wall& wall) {
        double below = wall.surface.section()->nodes().front().z;
        for (const double z : wall.surface.kinks()) {
            const double spacing = wall.surface.spacing_at(z);
            bool clear = z - below > spacing / 4 && wall.surface.section()->nodes().back().z - z > spacing / 4;
            for (const OpeningForm& opening : openings_)
                clear = clear && (z < opening.sill - spacing || z > opening.top + spacing);
            if (!clear)
                continue;
            wall.creases.push_back(circle(wall, z));
            below = z;
        }
    }

    bool add_foot() {
        const LevelSurface level(form_.bottom());
        Patch patch{&level, {}, {}, true};
        for (const auto& [wall, feet] : {std::pair{&inside_, &feet_in_}, {&outside_, &feet_out_}})
            for (Chain& chain : foot_circle(*wall, *feet)) {
                patch.boundary.push_back(chain);
                wall->boundary.push_back(std::move(chain));
            }
        patch.boundary.insert(patch.boundary.end(), foot_edges_.begin(), foot_edges_.end());
        return add_patch(patch, dome_name());
    }

    bool add_top() {
        const LevelSurface top(form_.top()), ceiling(form_.ceiling());
        inside_.boundary.push_back(circle(inside_, inside_.surface.section()->nodes().back().z));
        outside_.boundary.push_back(circle(outside_, form_.top()));
        const Chain &inner = inside_.boundary.back(), &outer = outside_.boundary.back();
        if (form_.cap_courses == 0)
            return add_patch({&top, {inner, outer}, {}, false}, dome_name());
        return add_patch({&top, {outer}, {}, false}, dome_name()) &&
               add_patch({&ceiling, {inner}, {}, true}, dome_name());
    }

    bool add_walls() {
        return add_patch({&inside_.surface, inside_.boundary, inside_.creases, true},
                         dome_name()) &&
               add_patch({&outside_.surface, outside_.boundary, outside_.creases, false},
                         dome_name());
    }

    const DomeForm& form_;
    const std::vector<OpeningForm>& openings_;
    double tolerance_;
    Wall inside_, outside_;
    std::vector<Foot> feet_in_, feet_out_;
    std::vector<Chain> foot_edges_;
    DomeShell shell_;
};

} // namespace

DomeShell mesh_dome_shell(const DomeForm& form, const std::vector<OpeningForm>& openings,
                          double tolerance) {
    return ShellBuilder(form, openings, tolerance).run();
}

std::string owner_of(const DomeShell& shell, std::uint32_t triangle) {
    std::string owner;
    for (const auto& [first, name] : shell.owners)
        if (first <= triangle)
            owner = name;
    return owner;
}

} // namespace coilwright
