#include "geometry/drawing/crew_pages.hpp"
#include "geometry/drawing/figures.hpp"
#include "geometry/drawing/words.hpp"

namespace coilwright {
namespace {

std::string head_text(const Drafting& drafting, const OpeningForm& form) {
    if (form.head_kind == HeadKind::square || form.head_kind == HeadKind::circle)
        return word(form.head_kind);
    return word(form.head_kind) + ", rise " + drafting.length(form.top - form.springing);
}

Table form_table(const Drafting& drafting) {
    Table table;
    table.columns = {{{"Form for"}, Align::left, true},
                     {{"Width"}, Align::right, true},
                     {{"Height"}, Align::right, true},
                     {{"Head"}, Align::left, false},
                     {{"Foot above", "the floor"}, Align::right, false},
                     {{"Depth,", "at least"}, Align::right, true}};
    for (const OpeningPlan& opening : drafting.schedule().openings) {
        const OpeningForm& form = opening.form;
        table.rows.push_back({form.id, drafting.length(2 * form.half_width),
                              drafting.length(form.top - form.sill), head_text(drafting, form),
                              drafting.length(form.sill),
                              drafting.length(opening.least_form_depth)});
    }
    return table;
}

Table frame_table(const Drafting& drafting) {
    Table table;
    table.columns = {{{"Opening"}, Align::left, true},
                     {{"Use"}, Align::left, false},
                     {{"Bearing"}, Align::right, false},
                     {{"Clear width", "× height"}, Align::right, false},
                     {{"Cuts", "courses"}, Align::right, false},
                     {{"Frame between,", "from the pole"}, Align::right, false},
                     {{"Form out", "after"}, Align::right, true}};
    for (const OpeningPlan& opening : drafting.schedule().openings) {
        const OpeningForm& form = opening.form;
        const bool band = opening.frame_band_end > opening.frame_band_start + 1e-6;
        table.rows.push_back(
            {form.id, word(form.use), degrees_text(turned_into_circle(form.bearing.degrees)),
             drafting.length(opening.clear_width) + " × " + drafting.length(opening.clear_height),
             std::to_string(opening.first_course) + "–" + std::to_string(opening.last_course),
             band ? drafting.length(opening.frame_band_start) + " – " +
                        drafting.length(opening.frame_band_end)
                  : "nowhere plumb",
             "course " + std::to_string(opening.strike_after_course)});
    }
    return table;
}

void add_totals(Flow& flow, const Drafting& drafting) {
    const Totals& totals = drafting.schedule().totals;
    Table table;
    table.columns = {{{"For the whole building"}, Align::left, false},
                     {{"In all"}, Align::right, true}};
    table.rows = {{"Tube along the centre of the wall", supply_text(totals.tube_length, drafting.unit())},
                  {"Tube to cut, ends included (no waste)", supply_text(totals.cut_length, drafting.unit())},
                  {"Fill, tamped", volume_text(totals.fill_volume, drafting.unit())},
                  {"Fill in 5 gal buckets", buckets_text(totals.fill_volume) + " (" +
                                                litres_text(totals.fill_volume) + " L)"},
                  {"Barbed wire", supply_text(totals.wire_length, drafting.unit())}};
    flow.table("To have ready", table);
}

void add_list(Flow& flow, const std::string& heading, const std::vector<std::string>& lines) {
    flow.heading(heading);
    for (const std::string& line : lines)
        flow.item(line, Flow::Mark::dot);
}

} // namespace

std::vector<Sheet> before_start_pages(const Drafting& drafting) {
    const Schedule& schedule = drafting.schedule();
    bool first = true;
    Flow flow(drafting, [&] {
        const std::string title = first ? "Before you start" : "Before you start, continued";
        first = false;
        return titled_page(drafting, title, "");
    });
    if (!schedule.openings.empty()) {
        flow.table("Forms to make", form_table(drafting));
        flow.paragraph(
            "Width and height are of the hole between the tubes. A form shallower than its "
            "least depth leaves the innermost or outermost course without support.",
            sizes::small);
        flow.table("Openings and frames", frame_table(drafting), sizes::body, sizes::least);
        flow.paragraph(
            "Clear is what plaster and frame leave. A plumb frame lies inside the wall at "
            "every course only between the two distances from the pole's axis. A form "
            "comes out only as the sheet of that course says.",
            sizes::small);
    }
    for (const DomeForm& dome : schedule.building.domes) {
        const std::string of = schedule.building.domes.size() > 1 ? " of '" + dome.id + "'" : "";
        add_list(flow, "The datum" + of, words::datum(drafting.plan, dome));
        add_list(flow, "The compass" + of, words::compass(drafting.plan, dome));
        add_list(flow, "The pole" + of, words::pole(drafting.plan, dome));
    }
    add_list(flow, "Heights", words::bench_mark(drafting.plan));
    add_list(flow, "Tubes", words::tubes(drafting.plan));
    add_totals(flow, drafting);
    return flow.finish();
}

} // namespace coilwright
