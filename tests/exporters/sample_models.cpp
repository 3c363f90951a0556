#include "tests/exporters/sample_models.hpp"

#include <cmath>

namespace coilwright {

Mesh box_mesh(const Vec3& low, const Vec3& high) {
    Mesh mesh;
    for (int k = 0; k < 8; ++k)
        mesh.vertices.emplace_back(k & 1 ? high.x() : low.x(), k & 2 ? high.y() : low.y(),
                                   k & 4 ? high.z() : low.z());
    mesh.triangles = {{0, 2, 1}, {1, 2, 3}, {4, 5, 6}, {5, 7, 6}, {0, 1, 4}, {1, 5, 4},
                      {2, 6, 3}, {3, 6, 7}, {0, 4, 2}, {2, 4, 6}, {1, 3, 5}, {3, 7, 5}};
    return mesh;
}

Mesh torus_mesh(const Vec3& centre, double ring_radius, double tube_radius, int around,
                int across) {
    Mesh mesh;
    for (int i = 0; i < around; ++i)
        for (int j = 0; j < across; ++j) {
            const double u = 2 * pi * i / around, v = 2 * pi * j / across;
            const double r = ring_radius + tube_radius * std::cos(v);
            mesh.vertices.push_back(
                centre + Vec3(r * std::cos(u), r * std::sin(u), tube_radius * std::sin(v)));
        }
    const auto at = [&](int i, int j) {
        return static_cast<std::uint32_t>(i % around * across + j % across);
    };
    for (int i = 0; i < around; ++i)
        for (int j = 0; j < across; ++j) {
            mesh.triangles.push_back({at(i, j), at(i + 1, j), at(i, j + 1)});
            mesh.triangles.push_back({at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)});
        }
    return mesh;
}

double torus_volume(double ring_radius, double tube_radius, int around, int across) {
    const double section = across * std::sin(2 * pi / across) / 2 * tube_radius * tube_radius;
    return around * std::sin(2 * pi / around) * ring_radius * section;
}

SolidPart sample_part(std::string slug, std::string group, Mesh mesh) {
    SolidPart part;
    part.slug = std::move(slug);
    part.group = std::move(group);
    part.title = "part " + part.slug;
    part.volume = volume(mesh);
    part.mesh = std::move(mesh);
    return part;
}

SolidModel small_building() {
    SolidModel model;
    model.name = "Séchoir \"Nº 1\" – 乾燥小屋";
    model.groups = {{"VAULT", "Vault", ""},
                    {"VAULT_C01", "Course 1 of the vault", "VAULT"},
                    {"VAULT_C02", "Course 2 of the vault", "VAULT"}};
    SolidPart first =
        sample_part("VAULT_C01_T1", "VAULT_C01", torus_mesh({0, 0, 0.0635}, 1.5, 0.06, 24, 8));
    first.course = 1;
    first.compass_radius = 1.44;
    SolidPart second = sample_part("VAULT_C02_T1", "VAULT_C02",
                                   torus_mesh({0, 0, 0.1905}, 1.46789012345, 0.06, 24, 8));
    second.course = 2;
    second.compass_radius = 1.40789012345;
    second.material = Material::earth_cap;
    SolidPart lintel =
        sample_part("VAULT_LINTEL", "VAULT", box_mesh({-0.75, 1.3, 2.0}, {0.75, 1.7, 2.127}));
    lintel.material = Material::timber;
    model.parts = {first, second, lintel};
    return model;
}

SolidModel fine_torus() {
    SolidModel model;
    model.name = "Fine";
    model.parts = {sample_part("RING", "", torus_mesh({12.5, -40, 1}, 2.2, 0.15, 660, 100))};
    return model;
}

} // namespace coilwright
