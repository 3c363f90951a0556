#include "tests/exporters/recalculated.hpp"

#include "tests/exporters/scratch.hpp"

#include <catch2/catch.hpp>

#include <cstdlib>

namespace coilwright {

using nlohmann::json;

json recalculated(const std::vector<std::pair<std::string, std::string>>& books,
                  const std::vector<std::string>& changes) {
    const ScratchDirectory scratch;
    std::vector<std::string> command{"/usr/bin/python3",
                                     COILWRIGHT_SOURCE_DIR "/tests/exporters/recalculate.py",
                                     scratch.path().string()};
    for (const auto& [name, bytes] : books) {
        put_bytes(scratch.path() / (name + ".xlsx"), bytes);
        command.push_back((scratch.path() / (name + ".xlsx")).string());
    }
    command.insert(command.end(), changes.begin(), changes.end());
    const json answers = json::parse(output_of(command));
    json named;
    for (const auto& [name, bytes] : books)
        named[name] = answers.at((scratch.path() / (name + ".xlsx")).string());
    return named;
}

double number_in(const json& rows, std::size_t row, std::size_t column) {
    const std::string text = rows.at(row).at(column).get<std::string>();
    CAPTURE(row, column, text);
    char* end = nullptr;
    const double value = std::strtod(text.c_str(), &end);
    CHECK((end != text.c_str() && *end == '\0'));
    return value;
}

std::size_t row_named(const json& rows, const std::string& word) {
    for (std::size_t i = 2; i < rows.size(); ++i)
        if (rows[i].at(0) == word)
            return i;
    FAIL("no row " << word);
    return 0;
}

void check_no_error(const json& sheets) {
    for (const auto& [name, rows] : sheets.items())
        for (const auto& row : rows)
            for (const auto& cell : row) {
                const std::string text = cell.get<std::string>();
                CAPTURE(name, text);
                CHECK(text.rfind("#", 0) != 0);    // #NAME?, #REF!, #DIV/0!
                CHECK(text.rfind("Err:", 0) != 0); // LibreOffice's own
            }
}

} // namespace coilwright
