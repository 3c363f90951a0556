#include "geometry/solids/building_shell.hpp"

#include "geometry/solids/section_trace.hpp"
#include "geometry/solids/shell_creases.hpp"
#include "geometry/solids/shell_curves.hpp"

#include <algorithm>

namespace coilwright {

namespace {

constexpr double least_slab = 1e-5; // metres

class ShellBuilder {
public:
    ShellBuilder(const BuildingForm& building, double tolerance)
        : faces_(building), tolerance_(tolerance) {}

    BuildingShell run() {
        plan_ = plan_shell(faces_, tolerance_);
        if (plan_.fault)
            return fail({*plan_.fault, plan_.first, plan_.second});
        note_close_events();
        sample_curves(faces_, tolerance_, plan_);
        creases_ = shell_creases(faces_, tolerance_, plan_);
        shell_.mesh = std::move(plan_.mesh);
        const int count = static_cast<int>(plan_.curves_of.size());
        for (int face = 0; face < count; ++face)
            if (!plan_.curves_of[static_cast<std::size_t>(face)].empty() && !add_face(face))
                break;
        return std::move(shell_);
    }

private:
    BuildingShell fail(const PatchFault& fault) {
        shell_.fault = fault;
        return std::move(shell_);
    }

    void note_close_events() {
        const auto element_at = [&](double z) {
            for (const ShellCurve& curve : plan_.curves)
                if (curve.swept ? curve.low == z || curve.high == z : curve.z == z)
                    for (const int face : curve.faces)
                        if (!plan_.horizontal(face) &&
                            (faces_[face_of(face)].low == z || faces_[face_of(face)].high == z))
                            return plan_.element(faces_, face);
            for (const ShellCurve& curve : plan_.curves)
                if (curve.swept && (curve.low == z || curve.high == z))
                    return plan_.element(faces_, curve.faces.back());
            return std::string();
        };
        for (const WallSlab& slab : plan_.slabs)
            if (slab.high - slab.low < least_slab && !shell_.close_in_height)
                shell_.close_in_height = {element_at(slab.low), element_at(slab.high)};
    }

    bool add_face(int face) {
        Patch patch;
        const std::string element = plan_.element(faces_, face);
        const HorizontalFace* horizontal = plan_.horizontal(face);
        const LevelSurface level(horizontal ? horizontal->z : 0);
        if (horizontal) {
            patch.surface = &level;
            patch.flipped = horizontal->under;
        } else {
            patch.surface = plan_.surfaces[static_cast<std::size_t>(face_of(face))].get();
            patch.flipped = walked_back(face);
            patch.creases = creases_[static_cast<std::size_t>(face)];
        }
        for (const int index : plan_.curves_of[static_cast<std::size_t>(face)]) {
            const ShellCurve& curve = plan_.curves[static_cast<std::size_t>(index)];
            patch.boundary.push_back(curve.chain);
            // A curve is called by what the face meets there.
            patch.boundary.back().element = element;
            for (const int other : curve.faces)
                if (const std::string name = plan_.element(faces_, other); name != element)
                    patch.boundary.back().element = name;
        }
        shell_.owners.emplace_back(static_cast<std::uint32_t>(shell_.mesh.triangles.size()),
                                   element);
        ShellFace from{
            static_cast<std::uint32_t>(shell_.mesh.triangles.size()), -1, false, false, 0, element};
        if (horizontal) {
            from.under = horizontal->under;
            from.z = horizontal->z;
        } else {
            from.face = face_of(face);
            from.back = walked_back(face);
        }
        shell_.faces.push_back(std::move(from));
        shell_.fault = mesh_patch(patch, tolerance_, shell_.mesh);
        if (shell_.fault && shell_.close_in_height)
            shell_.fault = {ShapeFault::close_in_height, shell_.close_in_height->first,
                            shell_.close_in_height->second};
        return !shell_.fault;
    }

    WallFaces faces_;
    double tolerance_;
    ShellPlan plan_;
    std::vector<std::vector<Chain>> creases_; // per face
    BuildingShell shell_;
};

} // namespace

BuildingShell mesh_building_shell(const BuildingForm& building, double tolerance) {
    return ShellBuilder(building, tolerance).run();
}

std::string owner_of(const BuildingShell& shell, std::uint32_t triangle) {
    const auto after = std::upper_bound(
        shell.owners.begin(), shell.owners.end(), triangle,
        [](std::uint32_t wanted, const auto& owner) { return wanted < owner.first; });
    return after == shell.owners.begin() ? std::string() : std::prev(after)->second;
}

} // namespace coilwright
