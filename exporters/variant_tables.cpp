#include "exporters/variant_tables.hpp"

#include "exporters/csv.hpp"
#include "exporters/text_table.hpp"
#include "geometry/base/utf8.hpp"
#include "geometry/takeoff/amount_text.hpp"

namespace coilwright {
namespace {

/// Short heads, so that a row fits the terminal.
std::string short_title(const std::string& word) {
    std::string title = word;
    for (char& c : title)
        if (c == '_')
            c = ' ';
    return title;
}

} // namespace

std::string figure_text(const FigureColumn& column, double value, DisplayUnit unit) {
    switch (column.kind) {
    case FigureKind::height:
        return length_text(value, unit);
    case FigureKind::area:
        return amount_text(value, AmountUnit::square_metre, unit);
    case FigureKind::length:
        return amount_text(value, AmountUnit::metre, unit);
    case FigureKind::volume:
        return amount_text(value, AmountUnit::cubic_metre, unit);
    case FigureKind::money:
        return money_text(value, "");
    case FigureKind::days:
        return fixed_text(value, column.word == "person_days" ? 1 : 0);
    case FigureKind::ratio:
        return value > 0 ? fixed_text(value, 2) : "none";
    case FigureKind::count:
        return fixed_text(value, 0);
    }
    return {};
}

std::string variants_csv(const VariantStudy& study, const std::vector<VariantResult>& results) {
    std::vector<std::string> heads{"variant"};
    for (const Choice& choice : study.choices)
        heads.push_back(choice.name);
    heads.push_back("laid");
    for (const FigureColumn& column : figure_columns())
        heads.push_back(column.word);
    heads.insert(heads.end(), {"days_ended", "currency", "fault"});
    std::string text = csv_row(heads);
    for (std::size_t i = 0; i < results.size(); ++i) {
        const VariantResult& result = results[i];
        std::vector<std::string> cells{std::to_string(i + 1)};
        const std::vector<std::size_t> places = variant_places(study, i);
        for (std::size_t k = 0; k < places.size(); ++k)
            cells.push_back(study.choices[k].values[places[k]].label);
        cells.push_back(result.laid ? "yes" : "no");
        for (const FigureColumn& column : figure_columns())
            cells.push_back(result.laid ? fixed_text(result.figures.*column.value, 6) : "");
        cells.push_back(!result.laid ? "" : result.figures.ended ? "yes" : "no");
        cells.insert(cells.end(), {study.works.currency, result.fault});
        text += csv_row(cells);
    }
    return text;
}

std::string variants_table(const VariantStudy& study, const std::vector<VariantResult>& results,
                           DisplayUnit unit) {
    std::vector<TextColumn> columns;
    for (const Choice& choice : study.choices)
        columns.push_back({choice.name.substr(choice.name.rfind('.') + 1)});
    const bool priced = !study.works.prices.empty();
    for (const FigureColumn& column : figure_columns())
        if (priced || column.kind != FigureKind::money)
            columns.push_back({short_title(column.word)});
    std::vector<std::vector<std::string>> rows;
    std::string faults;
    for (std::size_t i = 0; i < results.size(); ++i) {
        const VariantResult& result = results[i];
        std::vector<std::string> row;
        std::string which;
        const std::vector<std::size_t> places = variant_places(study, i);
        for (std::size_t k = 0; k < places.size(); ++k) {
            row.push_back(shown_text(study.choices[k].values[places[k]].label));
            which += (k > 0 ? ", " : "") + row.back();
        }
        for (const FigureColumn& column : figure_columns())
            if (priced || column.kind != FigureKind::money)
                row.push_back(result.laid ? figure_text(column, result.figures.*column.value, unit)
                                          : "-");
        if (!result.laid)
            faults += "- " + which + " cannot be laid: " + shown_text(result.fault, 200) + "\n";
        else if (!result.figures.ended)
            faults += "- " + which +
                      " does not end within ten years: its days are those of the "
                      "first ten.\n";
        rows.push_back(std::move(row));
    }
    std::string text = text_table(columns, rows);
    if (priced)
        text += "\nCost: likely, in " + shown_text(study.works.currency) + ".";
    text +=
        "\nHeadroom: floor with 7 ft (2.13 m) over it. Safety: the least geometric factor; 1 "
        "is a line of thrust that\njust keeps within the wall, by an assumption of rigid blocks; "
        "none: there is no such line. Failing:\nchecks of headroom and practice, and walls that "
        "their line leaves; loads and ground are for \"check\".\nNo variant is thereby safe.\n";
    return text + (faults.empty() ? "" : "\n" + faults);
}

} // namespace coilwright
