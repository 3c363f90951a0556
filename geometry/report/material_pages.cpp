#include "geometry/base/quantity.hpp"
#include "geometry/checks/statics_finding.hpp"
#include "geometry/report/report_pages.hpp"
#include "geometry/statics/materials.hpp"

namespace coilwright {

namespace {

constexpr const char* unstated = "a judgement without source";

class MaterialTable {
public:
    void row(const std::string& what, const std::string& value, const std::string& source) {
        table_.rows.push_back({what, value, source});
    }
    const Table& table() const { return table_; }

private:
    Table table_{{{{"what"}, Align::left, false},
                  {{"value"}, Align::left, true},
                  {{"source"}, Align::left, false}},
                 {}};
};

std::string density_text(double density, DisplayUnit unit) {
    constexpr double pcf =
        kilograms_per_pound / (metres_per_foot * metres_per_foot * metres_per_foot);
    return unit == DisplayUnit::feet ? three_digits(density / pcf) + " pcf"
                                     : three_digits(density) + " kg/m3";
}

std::string or_default(bool stated, const char* section) {
    return stated ? "stated in the design, [" + std::string(section) + "]"
                  : "not stated: the default, " + std::string(unstated);
}

void add_fills(MaterialTable& rows, const Drafting& drafting) {
    const Design& design = drafting.plan.design;
    // Stretches of courses that are filled alike.
    const int last = drafting.schedule().totals.courses;
    for (int from = 1, n = 1; n <= last; ++n) {
        if (n < last && fill_of_course(design, n + 1) == fill_of_course(design, from))
            continue;
        const std::string of = " of courses " + std::to_string(from) + " to " + std::to_string(n);
        const MaterialValue density = fill_density(design, from),
                            strength = fill_strength(design, from);
        rows.row("density" + of, density_text(density.value, drafting.unit()), density.source);
        rows.row("strength" + of, stress_text(strength.value, drafting.unit()), strength.source);
        from = n + 1;
    }
}

} // namespace

std::vector<Sheet> material_pages(const Drafting& drafting) {
    Flow flow(drafting, [&] { return titled_page(drafting, "Materials and loads", ""); });
    const Design& design = drafting.plan.design;
    MaterialTable materials, loads;
    add_fills(materials, drafting);
    const MaterialValue plaster = plaster_density();
    materials.row("density of plaster", density_text(plaster.value, drafting.unit()),
                  plaster.source);
    materials.row("friction of joints", three_digits(design.joint.friction),
                  or_default(design.joint.friction_stated, "joint"));
    materials.row("factor against sliding", three_digits(design.joint.factor),
                  or_default(design.joint.factor_stated, "joint"));
    materials.row("friction on the ground", three_digits(design.ground.friction),
                  or_default(design.ground.friction_stated, "ground"));
    materials.row("bearing capacity of the ground",
                  design.ground.bearing_capacity
                      ? pressure_text(*design.ground.bearing_capacity, drafting.unit())
                      : "not stated",
                  design.ground.bearing_capacity ? "stated in the design, [ground]" : "");
    for (const TubeType& tube : design.tubes) {
        const double tension = wire_tension(design, tube);
        materials.row("tension of wire around a ring, " + tube.id,
                      tension > 0 ? force_text(tension, drafting.unit()) : "not counted",
                      "[wire] hoop_tension");
    }
    loads.row("inside plaster", drafting.length(design.finish.inside_plaster),
              or_default(design.finish.inside_stated, "finish"));
    loads.row("outside plaster", drafting.length(design.finish.outside_plaster),
              or_default(design.finish.outside_stated, "finish"));
    loads.row("ground against the floor", drafting.length(design.ground.level),
              or_default(design.ground.level_stated, "ground"));
    loads.row("bank against the wall",
              !bank_against_wall(design) ? "none"
              : bank_known(design)       ? "earth at rest"
                                         : "left out: not stated",
              "Jaky 1944 (from memory)");
    const Site& site = design.site;
    loads.row("snow",
              site.snow ? pressure_text(*site.snow, drafting.unit()) + " on the plan"
                        : "not stated",
              "[site] snow");
    if (site.snow)
        loads.row("snow in the checks", "domes and tunnels with it and without it, the worse told",
                  "left out of lintels, fans, end walls, the buttresses' own weight, and the drawn "
                  "lines and tables");
    loads.row("wind",
              site.wind_pressure ? pressure_text(*site.wind_pressure, drafting.unit())
                                 : "not stated",
              "[site] wind_pressure");
    loads.row("earthquake",
              site.seismic_acceleration
                  ? three_digits(*site.seismic_acceleration / standard_gravity) + " g"
                  : "not stated",
              "[site] seismic_acceleration");
    flow.table("Materials", materials.table(), sizes::small, sizes::least);
    flow.table("Loads", loads.table(), sizes::small, sizes::least);
    return flow.finish();
}

} // namespace coilwright
