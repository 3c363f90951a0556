// Where a command reads and prints, and how it may print there.
#pragma once

#include <cstddef>
#include <iosfwd>
#include <string>
#include <string_view>

namespace coilwright {

/// The three streams of a program. Colour and progress are for terminals only.
struct Console {
    std::istream& in;
    std::ostream& out;
    std::ostream& err;
    bool colour_out = false;
    bool colour_err = false;
    bool progress = false; // a line on `err` that is overwritten as work goes on
};

enum class Colour { red, yellow, green, bold };

/// The text, in colour when `on`. Colour never stands alone: the text says the same.
std::string painted(std::string_view text, Colour colour, bool on);

/// The text with everything that could steer a terminal (control characters, marks that reorder
/// text, bytes that are not UTF-8) replaced by U+FFFD. Line breaks and tabs stay.
std::string printable(std::string_view text);

/// Breaks a text at spaces into lines of at most `width` characters, each begun with `indent`
/// and ended with a line break. A longer word keeps its length.
std::string wrapped(std::string_view text, std::string_view indent, std::size_t width = 80);

/// Prints `coilwright: MESSAGE` on `err`.
void print_error(Console& console, std::string_view message);

/// Shows "[done/of] what" on a terminal; wipes the line when it ends, also by an exception.
class Progress {
public:
    explicit Progress(Console& console) : console_(console) {}
    ~Progress();
    Progress(const Progress&) = delete;
    Progress& operator=(const Progress&) = delete;
    void show(int done, int of, std::string_view what);

private:
    Console& console_;
    bool shown_ = false;
};

} // namespace coilwright
