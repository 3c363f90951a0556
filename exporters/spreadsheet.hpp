// Workbooks of sheets with live formulas, as plain data, and their bytes as XLSX.
#pragma once

#include <string>
#include <variant>
#include <vector>

namespace coilwright {

/// A formula in the words of the trade's spreadsheets ("=B2*C2", arguments parted by commas), and
/// what it comes to: shown by viewers that do not reckon themselves.
struct Formula {
    std::string text;
    double value = 0;
};

/// What a cell is for; `input` is one that a user changes.
enum class CellLook { plain, title, head, strong, input, note };

struct SheetCell {
    std::variant<std::monostate, double, std::string, Formula> value;
    std::string format = {}; // of numbers: "0.00", "#,##0"; empty: as they come
    CellLook look = CellLook::plain;
};

/// Bars of one row of numbers, lying, the first on top. Ranges as "=Costs!$A$2:$A$7".
struct SheetBars {
    std::string title, names, values;
    int row = 0, column = 0; // of its upper left corner, from 0
};

struct WorkSheet {
    std::string name;           // at most 31 characters, none of []:*?/\ and no apostrophe
    std::vector<double> widths; // of its columns, in characters
    std::vector<std::vector<SheetCell>> rows;
    int frozen_rows = 0; // stay in view, and come again on every printed page
    std::vector<SheetBars> bars;
};

/// "C5", or "$C$5": row and column from 0.
std::string cell_name(std::size_t row, std::size_t column, bool fixed = false);

/// The workbook, dated 1980-01-01, the same bytes for the same sheets in any locale. Texts are
/// texts, whatever they start with. May be called from several threads. Throws std::runtime_error
/// with one plain sentence where the library fails or a number is not finite.
std::string xlsx_bytes(const std::string& title, const std::vector<WorkSheet>& sheets);

} // namespace coilwright
