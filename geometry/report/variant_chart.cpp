#include "geometry/report/variant_chart.hpp"

#include "geometry/drawing/page.hpp"
#include "geometry/drawing/text_layout.hpp"
#include "geometry/drawing/words.hpp"
#include "geometry/takeoff/amount_text.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

constexpr std::size_t most_lines = 6;
constexpr double text_size = sizes::least;

double shown_figure(FigureKind kind, double value, DisplayUnit unit) {
    switch (kind) {
    case FigureKind::height:
    case FigureKind::length:
        return shown_amount(value, AmountUnit::metre, unit);
    case FigureKind::area:
        return shown_amount(value, AmountUnit::square_metre, unit);
    case FigureKind::volume:
        return shown_amount(value, AmountUnit::cubic_metre, unit);
    default:
        return value;
    }
}

std::string shown_figure_unit(FigureKind kind, DisplayUnit unit, const std::string& currency) {
    switch (kind) {
    case FigureKind::height:
    case FigureKind::length:
        return ", " + shown_unit(AmountUnit::metre, unit);
    case FigureKind::area:
        return ", " + shown_unit(AmountUnit::square_metre, unit);
    case FigureKind::volume:
        return ", " + shown_unit(AmountUnit::cubic_metre, unit);
    case FigureKind::money:
        return ", " + currency;
    default:
        return {};
    }
}

/// A round step of 1, 2 or 5 times a power of ten that parts a range into at most four.
double round_step(double range) {
    const double raw = range / 4, power = std::pow(10, std::floor(std::log10(raw)));
    for (const double times : {1.0, 2.0, 5.0})
        if (times * power >= raw * (1 - 1e-9))
            return times * power;
    return 10 * power;
}

class Chart {
public:
    Chart(const VariantStudy& study, const std::vector<VariantResult>& results, DisplayUnit unit,
          const MeasureText& measure)
        : study_(study), results_(results), unit_(unit), measure_(measure),
          lines_(variant_count(study) / study.choices.front().values.size()) {}

    Sheet drawn(const std::string& design_name) {
        sheet_.title = "Variants of " + design_name;
        sheet_.width = 297;
        sheet_.height = 210;
        const PaperBox frame = frame_of(sheet_.width, sheet_.height);
        add_text(sheet_, {frame.left, frame.top - 6},
                 shortened(sheet_.title, frame.width(), 6, true, measure_), 6, true);
        const double foot = add_foot(frame), head = 10;
        const std::vector<FigureColumn> columns = panels();
        const std::size_t across = 4, down = (columns.size() + across - 1) / across;
        const double wide = frame.width() / static_cast<double>(across);
        const double high = (frame.height() - head - foot) / static_cast<double>(down);
        for (std::size_t i = 0; i < columns.size(); ++i) {
            const double left = frame.left + static_cast<double>(i % across) * wide;
            const double top = frame.top - head - static_cast<double>(i / across) * high;
            add_panel(columns[i], {left, top - high, left + wide - 3, top});
        }
        return std::move(sheet_);
    }

private:
    const Choice& first() const { return study_.choices.front(); }
    bool as_lines() const { return lines_ <= most_lines; }

    std::vector<FigureColumn> panels() const {
        std::vector<FigureColumn> kept;
        for (const FigureColumn& column : figure_columns())
            if (column.kind != FigureKind::count && column.word != "working_days" &&
                (column.kind != FigureKind::money || !study_.works.prices.empty()))
                kept.push_back(column);
        return kept;
    }

    double x_of(std::size_t place) const { return first().values[place].number; }

    Stroke stroke_of(std::size_t line) const {
        static const Stroke strokes[most_lines] = {{0.6, {0}, {}},          {0.6, {0}, {3, 1.2}},
                                                   {0.6, {0}, {0.8, 1}},    {0.6, {0.55}, {}},
                                                   {0.6, {0.55}, {3, 1.2}}, {0.3, {0}, {}}};
        return strokes[line];
    }

    /// What the lines stand for, and the caution; returns the height used.
    double add_foot(const PaperBox& frame) {
        double y = frame.bottom + 1;
        add_text(sheet_, {frame.left, y},
                 shortened("CAUTION. " + words::caution() +
                               " Costs are of the prices in the works file.",
                           frame.width(), text_size, true, measure_),
                 text_size, true);
        y += 5;
        double x = frame.left;
        if (lines_ > 1 && as_lines())
            for (std::size_t line = 0; line < lines_; ++line) {
                std::string name;
                const std::vector<std::size_t> places = variant_places(study_, line);
                for (std::size_t k = 1; k < study_.choices.size(); ++k)
                    name += (k > 1 ? ", " : "") + tail(study_.choices[k].name) + " " +
                            study_.choices[k].values[places[k]].label;
                const double room = frame.width() / static_cast<double>(lines_) - 16;
                name = shortened(name, room, text_size, false, measure_);
                add_line(sheet_, {x, y + 1}, {x + 9, y + 1}, stroke_of(line));
                add_text(sheet_, {x + 11, y}, name, text_size);
                x += frame.width() / static_cast<double>(lines_);
            }
        else if (!as_lines())
            add_text(sheet_, {x, y}, "Each dot is a variant.", text_size);
        return y - frame.bottom + 4;
    }

    static std::string tail(const std::string& name) { return name.substr(name.rfind('.') + 1); }

    void add_panel(const FigureColumn& column, const PaperBox& box) {
        add_text(
            sheet_, {box.left, box.top - 4.5},
            shortened(column.title + shown_figure_unit(column.kind, unit_, study_.works.currency),
                      box.width(), sizes::small, true, measure_),
            sizes::small, true);
        const PaperBox plot{box.left + 11, box.bottom + 11, box.right - 3, box.top - 8};
        double low = 1e300, high = -1e300;
        for (const VariantResult& result : results_)
            if (result.laid) {
                const double value = shown_figure(column.kind, result.figures.*column.value, unit_);
                low = std::min(low, value);
                high = std::max(high, value);
            }
        add_box(sheet_, plot, pens::fine);
        if (low > high) {
            add_text(sheet_, {plot.left + 2, plot.centre().y()}, "none can be laid", text_size);
            return;
        }
        if (high - low < 1e-9 * std::max(1.0, std::abs(high))) {
            low -= 0.5;
            high += 0.5;
        }
        const double step = round_step(high - low);
        low = std::floor(low / step + 1e-9) * step;
        high = std::ceil(high / step - 1e-9) * step;
        const auto y_at = [&](double value) {
            return plot.bottom + (value - low) / (high - low) * plot.height();
        };
        const int decimals = std::max(0, static_cast<int>(-std::floor(std::log10(step) + 1e-9)));
        for (double value = low; value < high + step / 2; value += step) {
            add_line(sheet_, {plot.left, y_at(value)}, {plot.right, y_at(value)}, pens::fine);
            const std::string text = fixed_text(value, decimals);
            add_text(sheet_, {plot.left - 1, y_at(value) - 1}, text,
                     fitting_size(text, 10.5, text_size, 2, false, measure_), false, Align::right);
        }
        add_values(plot);
        add_data(column, plot, y_at);
    }

    double x_at(const PaperBox& plot, double number) const {
        double low = 1e300, high = -1e300;
        for (const ChoiceValue& value : first().values) {
            low = std::min(low, value.number);
            high = std::max(high, value.number);
        }
        const double inner = plot.width() - 6;
        return high > low ? plot.left + 3 + (number - low) / (high - low) * inner
                          : plot.centre().x();
    }

    /// The first choice's values under a panel, as many as there is room for.
    void add_values(const PaperBox& plot) {
        double free = -1e300;
        for (const std::size_t place : places_by_number()) {
            const ChoiceValue& value = first().values[place];
            const double x = x_at(plot, value.number);
            const double half = measure_(value.label, text_size, false).width / 2;
            const double at = std::clamp(x, plot.left - 6 + half, plot.right + 3 - half);
            if (at - half < free)
                continue;
            add_line(sheet_, {x, plot.bottom}, {x, plot.bottom - 1}, pens::seen);
            add_text(sheet_, {at, plot.bottom - 4}, value.label, text_size, false, Align::centre);
            free = at + half + 2;
        }
        add_text(sheet_, {plot.centre().x(), plot.bottom - 7.6},
                 shortened(first().name, plot.width(), text_size, false, measure_), text_size,
                 false, Align::centre);
    }

    /// Places of the first choice's values from left to right, as a list may stand in any order.
    std::vector<std::size_t> places_by_number() const {
        std::vector<std::size_t> places(first().values.size());
        for (std::size_t i = 0; i < places.size(); ++i)
            places[i] = i;
        std::stable_sort(places.begin(), places.end(),
                         [&](std::size_t a, std::size_t b) { return x_of(a) < x_of(b); });
        return places;
    }

    template <typename At>
    void add_data(const FigureColumn& column, const PaperBox& plot, const At& y_at) {
        for (std::size_t line = 0; line < lines_; ++line) {
            std::vector<Vec2> points;
            const auto flush = [&] {
                if (as_lines() && first().numeric && points.size() > 1)
                    add_polyline(sheet_, points, stroke_of(line));
                for (const Vec2& point : points)
                    if (!as_lines() || !first().numeric || points.size() == 1 ||
                        first().values.size() <= 12)
                        add_disc(sheet_, point, 0.6, {as_lines() ? stroke_of(line).ink.grey : 0.3});
                points.clear();
            };
            for (const std::size_t place : places_by_number()) {
                const VariantResult& result = results_[place * lines_ + line];
                if (!result.laid) {
                    flush();
                    continue;
                }
                points.emplace_back(
                    x_at(plot, x_of(place)),
                    y_at(shown_figure(column.kind, result.figures.*column.value, unit_)));
            }
            flush();
        }
    }

    const VariantStudy& study_;
    const std::vector<VariantResult>& results_;
    DisplayUnit unit_;
    const MeasureText& measure_;
    std::size_t lines_;
    Sheet sheet_;
};

} // namespace

Sheet variant_chart(const VariantStudy& study, const std::vector<VariantResult>& results,
                    const std::string& design_name, DisplayUnit unit, const MeasureText& measure) {
    return Chart(study, results, unit, measure).drawn(design_name);
}

} // namespace coilwright
