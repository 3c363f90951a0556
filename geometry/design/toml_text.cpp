#include "geometry/design/toml_text.hpp"

#include "geometry/base/utf8.hpp"
#include "geometry/design/faults.hpp"
#include "geometry/design/typing_slips.hpp"

#include <optional>

namespace coilwright {

namespace {

SourcePlace place_at(std::string_view text, std::size_t byte) {
    SourcePlace place{1, 1};
    for (std::size_t at = 0; at < byte;) {
        const Utf8Character character = utf8_at(text, at);
        if (character.code == '\n')
            place = {place.line + 1, 1};
        else
            ++place.column;
        at += character.bytes;
    }
    return place;
}

// Walks over TOML text just far enough to tell brackets and dots from those in strings and
// comments.
class NestingScanner {
public:
    explicit NestingScanner(std::string_view text) : text_(text) {}

    /// Byte at which the text first nests deeper than `most`; npos if it never does.
    std::size_t first_deeper_than(int most) {
        for (at_ = 0; at_ < text_.size(); ++at_) {
            const char c = text_[at_];
            if (c == '"' || c == '\'')
                skip_string(c);
            else if (c == '#')
                skip_to_line_end();
            else
                count(c);
            if (brackets_ + dots_ > most)
                return at_;
        }
        return std::string_view::npos;
    }

private:
    void count(char c) {
        if (c == '[' || c == '{')
            ++brackets_;
        else if ((c == ']' || c == '}') && brackets_ > 0)
            --brackets_;
        if (c == '.')
            ++dots_;
        else if (c == '\n' || c == ',' || c == '=' || c == '{' || c == '[')
            dots_ = 0;
    }

    void skip_to_line_end() {
        while (at_ + 1 < text_.size() && text_[at_ + 1] != '\n')
            ++at_;
    }

    // Leaves at_ on the last byte of the string; a string of one line ends with its line.
    void skip_string(char quote) {
        const std::string_view three = quote == '"' ? "\"\"\"" : "'''";
        const bool is_long = text_.substr(at_, 3) == three;
        for (at_ += is_long ? 3 : 1; at_ < text_.size(); ++at_) {
            const char c = text_[at_];
            if (c == '\\' && quote == '"') {
                ++at_;
            } else if (!is_long && (c == quote || c == '\n')) {
                return;
            } else if (is_long && text_.substr(at_, 3) == three) {
                at_ += 2;
                return;
            }
        }
    }

    std::string_view text_;
    std::size_t at_ = 0;
    int brackets_ = 0;
    int dots_ = 0;
};

std::optional<Diagnostic> refusal(std::string_view text) {
    if (text.size() > most_design_bytes)
        return faults::too_large(text.size(), most_design_bytes);
    if (const std::size_t byte = text.find('\0'); byte != std::string_view::npos)
        return faults::nul_byte(place_at(text, byte));
    if (const std::size_t byte = first_invalid_utf8(text); byte != std::string_view::npos)
        return faults::not_utf8(place_at(text, byte));
    const std::size_t byte = NestingScanner(text).first_deeper_than(most_nesting);
    if (byte != std::string_view::npos)
        return faults::too_deep(place_at(text, byte), most_nesting);
    return std::nullopt;
}

} // namespace

ParsedToml parse_toml(std::string_view text) {
    if (auto fault = refusal(text))
        return {{}, {*std::move(fault)}};
    try {
        return {toml::parse(text), {}};
    } catch (const toml::parse_error& error) {
        const toml::source_position& at = error.source().begin;
        const SourcePlace place{static_cast<int>(at.line), static_cast<int>(at.column)};
        if (auto slips = typing_slips(text, place.line); !slips.empty())
            return {{}, std::move(slips)};
        return {{}, {faults::not_toml(place, error.description())}};
    }
}

} // namespace coilwright
