// Numbers and units as people type them on phones and keyboards, reduced to plain ASCII.
// Shared by the readers of lengths, areas and other quantities.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace coilwright {

/// The text in ASCII: no-break, thin and ideographic spaces and tabs become ' ', dashes and minus
/// signs '-', primes, curly quotes and acute accents '\'' or '"', the fraction slash '/',
/// full-width digits digits, a vulgar fraction " 1/2", a raised 2 or 3 the digit; letters become
/// lower case. Zero-width and direction marks go. Any other character (and any broken byte) becomes
/// '\x01', which no reader accepts. "5½ in" -> "5 1/2 in".
std::string plain_typed_text(std::string_view text);

/// Why a text cannot be a measure before it is read: "is empty", "is too long" (over 100 bytes; no
/// measure needs more), as the second half of a sentence; else empty.
std::string fault_of_typed(std::string_view text);

/// A number as typed, or what is wrong with it.
struct TypedNumber {
    double value = 0;
    bool whole = true; // no decimal point and no fraction
    std::string fault; // second half of a sentence, empty if read
};

/// Reads along a plain text.
class TypedScanner {
public:
    explicit TypedScanner(std::string_view plain) : text_(plain) {}

    void skip_spaces();
    bool at_end() const { return at_ == text_.size(); }
    /// The next character, '\0' at the end.
    char peek() const { return at_end() ? '\0' : text_[at_]; }
    /// Takes the character if it comes next.
    bool take(char c);
    /// True, and taken, if a minus leads; a plus is taken and gives false.
    bool take_sign();
    /// A number without sign: "8", "8.5", ".5", "1/2", "5-1/2", "5 1/2". Not "5,5", "1e3".
    TypedNumber take_number();
    /// Letters that follow each other; empty if none.
    std::string take_word();
    /// All that is left, without spaces and dots and '^'.
    std::string take_rest_compact();

private:
    std::string take_digits();
    std::optional<TypedNumber> take_fraction();

    std::string_view text_;
    std::size_t at_ = 0;
};

/// One number, signed or not, and all that follows it as TypedScanner::take_rest_compact gives it:
/// "-1.5 lbf / ft^3" -> -1.5, "lbf/ft3".
struct TypedMeasure {
    double value = 0;
    std::string unit;
    std::string fault; // second half of a sentence, empty if read
};
TypedMeasure read_typed_measure(std::string_view text);

} // namespace coilwright
