// Workbooks as LibreOffice reckons them.
#pragma once

#include <nlohmann/json.hpp>

#include <string>
#include <utility>
#include <vector>

namespace coilwright {

/// What LibreOffice makes of workbooks (name, bytes), by their names: "sheets" (rows of cells as
/// text), "dates" of the archive's files, "core", "formulas". `changes`: "Buy!N3=12.5".
nlohmann::json recalculated(const std::vector<std::pair<std::string, std::string>>& books,
                            const std::vector<std::string>& changes = {});

/// The number in a cell; a failed check where there is none.
double number_in(const nlohmann::json& rows, std::size_t row, std::size_t column);
/// Row of a sheet, below its heads, whose first cell holds a word.
std::size_t row_named(const nlohmann::json& rows, const std::string& word);
/// Checks that no cell of any sheet is an error.
void check_no_error(const nlohmann::json& sheets);

} // namespace coilwright
