#include "geometry/drawing/crew_pages.hpp"
#include "geometry/drawing/figures.hpp"
#include "geometry/drawing/ring_shapes.hpp"
#include "geometry/drawing/spread.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

constexpr double mm = 1000; // in a metre
constexpr double band_height = 29.5;
constexpr double flap = 8;                           // to glue the next piece on
constexpr double strip_top = 16.5, strip_bottom = 7; // of the strip itself, from the band's foot

/// A mark on the arm: mm from the zero, and the courses set by it.
struct ArmMark {
    double at = 0;
    int first = 0, last = 0;
    bool outer = false; // of a second ring
};

void add_mark(std::vector<ArmMark>& marks, double at, int course, bool outer = false) {
    for (ArmMark& mark : marks)
        if (std::abs(mark.at - at) < 0.01 && mark.last == course - 1 && mark.outer == outer) {
            mark.last = course;
            return;
        }
    marks.push_back({at, course, course, outer});
}

/// What a strip is for: its marks, in the order of their distance.
struct Strip {
    std::string title;
    std::string from; // what distances are measured from
    std::string what; // the sentence that says so
    std::vector<ArmMark> marks;
};

void put_in_order(Strip& strip) {
    std::stable_sort(strip.marks.begin(), strip.marks.end(),
                     [](const ArmMark& a, const ArmMark& b) { return a.at < b.at; });
}

Strip compass_strip_of(const Drafting& drafting, const DomeForm& dome) {
    Strip strip;
    strip.title = "Compass strip";
    if (drafting.schedule().building.domes.size() > 1)
        strip.title += " of '" + dome.id + "'";
    const Compass& compass = drafting.plan.design.compass;
    strip.from = std::string(compass.arm == CompassArm::chain ? "on the chain " : "") +
                 (compass.pole_diameter > 0 ? "from the pole's face" : "from the pole's axis");
    for (const Course& course : drafting.schedule().courses) {
        for (const Ring& ring : course.rings) {
            if (ring.dome != dome.id || ring.kind == RingKind::cap)
                continue;
            const CompassReading reading =
                compass_readings(ring, dome, drafting.plan.design).front();
            add_mark(strip.marks, reading.metres * mm, course.number, ring.wythe > 1);
        }
    }
    strip.what = "Distances " + strip.from + " to the tamped inside face.";
    put_in_order(strip);
    return strip;
}

/// A tunnel's gauge: how far its inside faces stand from the axis string.
Strip gauge_of(const Drafting& drafting, const TunnelForm& tunnel) {
    Strip strip;
    strip.title = "Gauge of '" + tunnel.id + "'";
    strip.from = "from the axis string";
    strip.what =
        "Distances from the axis string, level and square to it, to the tamped inside face "
        "of each wall.";
    for (const Course& course : drafting.schedule().courses)
        if (course.number <= tunnel.side_courses)
            add_mark(strip.marks, inner_half_width(tunnel, course.middle) * mm, course.number);
    put_in_order(strip);
    return strip;
}

std::string courses_text(const ArmMark& mark) {
    std::string text = std::to_string(mark.first);
    if (mark.first != mark.last)
        text += "–" + std::to_string(mark.last);
    return mark.outer ? text + " outer" : text;
}

/// Where the strip begins and how it is cut up, in mm from the zero.
struct Tiling {
    double start = 0, tile = 0;
    double tick = 10; // of the scale along the strip
    int label_every = 5;
};

Tiling tiling_for(const std::vector<ArmMark>& marks, double width, DisplayUnit unit) {
    Tiling tiling;
    const double step = unit == DisplayUnit::feet ? 25.4 : 10;
    tiling.tick = unit == DisplayUnit::feet ? 12.7 : 10;
    tiling.label_every = unit == DisplayUnit::feet ? 4 : 5;
    tiling.tile = std::floor((width - flap - 2) / step) * step;
    tiling.start = std::max(0.0, std::floor((marks.front().at - 12) / step) * step);
    // No mark may lie on a join, if shorter pieces can do without.
    constexpr double apart = 4;
    for (double tile = tiling.tile; tile > 0.7 * tiling.tile; tile -= step)
        if (std::none_of(marks.begin(), marks.end(), [&](const ArmMark& mark) {
                const double off = mark.at - tiling.start;
                return off > tile - apart && std::abs(std::remainder(off, tile)) < apart;
            })) {
            tiling.tile = tile;
            break;
        }
    return tiling;
}

struct BandLabel {
    std::string text;
    double at = 0; // mean of its marks
    std::vector<double> marks;
};

/// Labels of the marks of one band; marks too near for their labels to stand side by side share
/// one.
std::vector<BandLabel> band_labels(const std::vector<ArmMark>& marks, double nearest) {
    std::vector<BandLabel> labels;
    double last_at = -1e9;
    std::string last_text;
    for (const ArmMark& mark : marks) {
        const std::string text = courses_text(mark);
        if (labels.empty() || mark.at - last_at > nearest) {
            labels.push_back({text, mark.at, {mark.at}});
        } else {
            BandLabel& label = labels.back();
            label.text += ", " + text;
            label.marks.push_back(mark.at);
            label.at = (label.marks.front() + label.marks.back()) / 2;
        }
        last_at = mark.at;
    }
    return labels;
}

class Band {
public:
    Band(Sheet& sheet, const Drafting& drafting, const Tiling& tiling, Vec2 origin, int index,
         bool is_last)
        : sheet_(sheet), drafting_(drafting), tiling_(tiling), origin_(origin), index_(index),
          last_(is_last), from_(tiling.start + index * tiling.tile) {}

    void draw(const std::vector<ArmMark>& all) {
        std::vector<ArmMark> marks;
        for (const ArmMark& mark : all)
            if (mark.at >= from_ && (mark.at < from_ + tiling_.tile || last_))
                marks.push_back(mark);
        draw_strip(marks);
        draw_scale();
        draw_marks(marks);
    }

private:
    double x(double at) const { return origin_.x() + at - from_; }
    Vec2 point(double at, double up) const { return {x(at), origin_.y() + up}; }

    void draw_strip(const std::vector<ArmMark>& marks) {
        const double end = from_ + tiling_.tile;
        add_line(sheet_, point(from_, strip_top), point(end, strip_top), pens::seen);
        add_line(sheet_, point(from_, strip_bottom), point(end, strip_bottom), pens::seen);
        join(from_, index_ - 1, index_ > 0, marks);
        join(end, index_, !last_, marks);
        if (!last_) { // the flap under the next piece
            const Vec2 a = point(end, strip_bottom), b = point(end, strip_top);
            add_polyline(sheet_, {a, a + Vec2(flap, 1.5), b + Vec2(flap, -1.5), b}, pens::hidden);
            add_text(sheet_, {a.x() + flap / 2, (a.y() + b.y()) / 2 - 1}, "glue", sizes::least,
                     false, Align::centre);
        }
    }

    /// A join: a line across and triangles that must meet, with its number where no mark stands.
    void join(double at, int number, bool joined, const std::vector<ArmMark>& marks) {
        add_line(sheet_, point(at, strip_bottom), point(at, strip_top), pens::cut);
        if (!joined)
            return;
        const Vec2 top = point(at, strip_top);
        add_fill(sheet_, {top, top + Vec2(-1.6, 3), top + Vec2(1.6, 3)}, {0});
        const bool at_start = at == from_;
        const std::string text = at_start ? "← join " + std::to_string(number + 1)
                                          : "join " + std::to_string(number + 1) + " →";
        const double width = drafting_.measure(text, sizes::small, true).width;
        for (double off = 2.4; off < 60; off += 0.5) {
            const double low = at_start ? at + off : at - off - width;
            const bool free = std::none_of(marks.begin(), marks.end(), [&](const ArmMark& mark) {
                return mark.at > low - 1 && mark.at < low + width + 1;
            });
            if (!free)
                continue;
            add_text(sheet_, point(low, strip_top + 0.9), text, sizes::small, true);
            return;
        }
    }

    void draw_scale() {
        const int ticks = static_cast<int>(std::lround(tiling_.tile / tiling_.tick));
        for (int i = 0; i <= ticks; ++i) {
            const double at = from_ + i * tiling_.tick;
            const long whole = std::lround(at / tiling_.tick);
            const bool labelled = whole % tiling_.label_every == 0;
            add_line(sheet_, point(at, strip_bottom),
                     point(at, strip_bottom - (labelled ? 2.5 : 1.5)), pens::fine);
            if (!labelled)
                continue;
            const std::string text = drafting_.length(at / mm);
            const double half = drafting_.measure(text, sizes::least, false).width / 2;
            const double middle =
                std::clamp(x(at), x(from_) + half, x(from_ + tiling_.tile) - half + 5);
            add_text(sheet_, {middle, origin_.y() + strip_bottom - 5.4}, text, sizes::least, false,
                     Align::centre);
        }
    }

    void draw_marks(const std::vector<ArmMark>& marks) {
        for (const ArmMark& mark : marks)
            add_line(sheet_, point(mark.at, strip_bottom + 0.2), point(mark.at, strip_top - 0.2),
                     {0.35, {0}, {}});
        if (marks.empty())
            return;
        const double low = x(from_), high = x(from_ + tiling_.tile);
        const double size = sizes::strong;
        for (double nearest = 0.3;; nearest *= 2) {
            const std::vector<BandLabel> labels = band_labels(marks, nearest);
            std::vector<SpreadLabel> wanted;
            for (const BandLabel& label : labels)
                wanted.push_back(
                    {x(label.at), drafting_.measure(label.text, size, true).width + 2.4});
            const std::vector<double> middles = spread(wanted, low, high);
            if (middles.empty() && labels.size() > 1)
                continue;
            for (std::size_t i = 0; i < labels.size(); ++i)
                draw_label(labels[i], middles.empty() ? x(labels[i].at) : middles[i], size,
                           high - low);
            return;
        }
    }

    void draw_label(const BandLabel& label, double middle, double size, double room) {
        const double foot = origin_.y() + strip_top + 6.6;
        const double fit =
            fitting_size(label.text, room, size, sizes::least, true, drafting_.measure);
        add_text(sheet_, {middle, foot + 0.9},
                 shortened(label.text, room, fit, true, drafting_.measure), fit, true,
                 Align::centre);
        for (const double at : label.marks)
            add_polyline(
                sheet_,
                {{middle, foot}, {x(at), origin_.y() + strip_top + 4.2}, point(at, strip_top)},
                pens::fine);
    }

    Sheet& sheet_;
    const Drafting& drafting_;
    const Tiling& tiling_;
    Vec2 origin_; // of the band: its foot, at the tile's start
    int index_;
    bool last_;
    double from_;
};

} // namespace

namespace {

std::vector<Sheet> pages_of(const Drafting& drafting, const Strip& strip, const std::string& arm) {
    const std::vector<ArmMark>& marks = strip.marks;
    if (marks.empty())
        return {};
    std::vector<Sheet> sheets;
    std::optional<Page> page;
    double y = 0;
    std::optional<Tiling> tiling;
    int tiles = 1;
    for (int i = 0; i < tiles; ++i) {
        if (!page || y - band_height < page->body.bottom) {
            if (page)
                sheets.push_back(std::move(page->sheet));
            page = new_page(drafting, strip.title, true);
            PaperBox& body = page->body;
            if (!tiling) {
                tiling = tiling_for(marks, body.width(), drafting.unit());
                tiles = static_cast<int>((marks.back().at + 3 - tiling->start) / tiling->tile) + 1;
            }
            add_text(page->sheet, {body.left, body.top - 6}, strip.title + ", full size", 6, true);
            const std::string how = strip.what + " Cut out, glue at the joins, and fix it to the " +
                                    arm + " so that its left end lies " +
                                    drafting.length(tiling->start / mm) + " " + strip.from +
                                    ". Numbers are courses.";
            const auto lines = wrapped(how, body.width(), sizes::small, false, drafting.measure);
            body.top -=
                8 + add_lines(page->sheet, {body.left, body.top - 7.5}, lines, sizes::small, false);
            y = body.top;
        }
        y -= band_height;
        Band(page->sheet, drafting, *tiling, {page->body.left + 1, y}, i, i + 1 == tiles)
            .draw(marks);
    }
    sheets.push_back(std::move(page->sheet));
    return sheets;
}

} // namespace

std::vector<Sheet> strip_pages(const Drafting& drafting, const DomeForm& dome) {
    const bool chain = drafting.plan.design.compass.arm == CompassArm::chain;
    return pages_of(drafting, compass_strip_of(drafting, dome), chain ? "chain" : "arm");
}

std::vector<Sheet> gauge_pages(const Drafting& drafting, const TunnelForm& tunnel) {
    return pages_of(drafting, gauge_of(drafting, tunnel), "gauge");
}

} // namespace coilwright
