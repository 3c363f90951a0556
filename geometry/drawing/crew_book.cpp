#include "geometry/drawing/crew_book.hpp"

#include "geometry/drawing/crew_pages.hpp"

namespace coilwright {
namespace {

void append(std::vector<Sheet>& all, std::vector<Sheet> more) {
    for (Sheet& sheet : more)
        all.push_back(std::move(sheet));
}

} // namespace

PaperSize letter_paper() {
    return {"letter", 215.9, 279.4};
}
PaperSize a4_paper() {
    return {"a4", 210, 297};
}

std::vector<Sheet> crew_book(const BuildingPlan& plan, const PaperSize& paper,
                             const MeasureText& measure, const std::vector<Finding>& findings) {
    const Drafting drafting{plan, paper, measure};
    std::vector<Sheet> sheets = cover_pages(drafting);
    append(sheets, before_start_pages(drafting, findings));
    append(sheets, cut_list_pages(drafting));
    append(sheets, compass_table_pages(drafting));
    append(sheets, story_rod_pages(drafting));
    for (const Course& course : plan.schedule.courses)
        for (const CoursePart& part : parts_of(plan.schedule, course))
            append(sheets, part.dome ? dome_course_pages(drafting, part)
                                     : tunnel_course_pages(drafting, part));
    number_sheets(sheets);
    return sheets;
}

std::vector<Sheet> compass_strip(const BuildingPlan& plan, const PaperSize& paper,
                                 const MeasureText& measure) {
    const Drafting drafting{plan, paper, measure};
    std::vector<Sheet> sheets;
    for (const DomeForm& dome : plan.schedule.building.domes)
        append(sheets, strip_pages(drafting, dome));
    for (const TunnelForm& tunnel : plan.schedule.building.tunnels)
        append(sheets, gauge_pages(drafting, tunnel));
    number_sheets(sheets);
    return sheets;
}

} // namespace coilwright
