#include "geometry/design/typing_slips.hpp"

#include "geometry/base/length.hpp"
#include "geometry/base/typed_text.hpp"
#include "geometry/base/utf8.hpp"
#include "geometry/design/faults.hpp"

#include <algorithm>
#include <optional>
#include <string>

namespace coilwright {

namespace {

constexpr std::size_t longest_line =
    1000; // bytes; no one types a longer one, and it keeps this cheap

enum class Slip { none, curly_quotes, odd_space, bare_length, inch_mark, open_quote };

/// A character that is no plain TOML but stands for a quote (`plain` '"' or '\'') or a space (' ',
/// or
/// '\0' for one without width); `plain` is '\x01' for any other.
struct Mark {
    char plain = '\x01';
    std::size_t bytes = 1;
};

Mark mark_at(std::string_view text, std::size_t at) {
    const Utf8Character character = utf8_at(text, at);
    Mark mark{'\x01', character.bytes};
    if (character.code < 0x80 && character.code != '`')
        return mark;
    const std::string plain = plain_typed_text(text.substr(at, character.bytes));
    if (plain.empty())
        mark.plain = '\0';
    else if (plain == "\"" || plain == "'" || plain == " ")
        mark.plain = plain.front();
    return mark;
}

bool is_quote(char c) {
    return c == '"' || c == '\'';
}

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

std::string trimmed(const std::string& text) {
    const auto first = text.find_first_not_of(" \t");
    const auto last = text.find_last_not_of(" \t");
    return first == std::string::npos ? std::string() : text.substr(first, last - first + 1);
}

/// One line of a text that is not TOML, as it was meant.
class LineMender {
public:
    /// `long_quote`: the line starts within a text of several lines that this ends ("\"\"\"").
    LineMender(std::string_view line, std::string_view long_quote, bool failed)
        : line_(line), long_quote_(long_quote), failed_(failed) {
        if (line.size() > longest_line)
            failed_ = false;
    }

    void run() {
        if (!long_quote_.empty() && !skip_long_text())
            return;
        bool value_may_start = false;
        while (at_ < line_.size()) {
            const char c = line_[at_];
            if (c == '#') {
                take(line_.size() - at_);
            } else if (value_may_start && c != ' ' && c != '\t' && take_bare_length()) {
                value_may_start = false;
            } else if (is_quote(c)) {
                if (!take_text(c, value_may_start))
                    return;
                value_may_start = false;
            } else if (const Mark mark = mark_at(line_, at_); mark.plain != '\x01') {
                take_mark(mark);
            } else {
                take(mark.bytes);
                value_may_start = c == '=' || c == '[' || c == ',' ||
                                  (value_may_start && (c == ' ' || c == '\t'));
            }
        }
    }

    Slip slip() const { return slip_; }
    std::size_t slip_at() const { return slip_at_; }
    std::string_view slip_mark() const { return line_.substr(slip_at_, slip_bytes_); }
    const std::string& mended() const { return mended_; }
    std::string_view long_quote() const { return long_quote_; }

private:
    void take(std::size_t bytes) {
        mended_ += line_.substr(at_, bytes);
        at_ += bytes;
    }

    void note(Slip slip, std::size_t at, std::size_t bytes) {
        if (slip_ != Slip::none)
            return;
        slip_ = slip;
        slip_at_ = at;
        slip_bytes_ = bytes;
    }

    /// The end of a text of several lines; false if it is on a later line.
    bool skip_long_text() {
        const std::size_t end = line_.find(long_quote_, at_);
        if (end == std::string_view::npos) {
            take(line_.size() - at_);
            return false;
        }
        take(end + 3 - at_);
        long_quote_ = {};
        return true;
    }

    /// Whether a text may end before `at`: what can follow one comes next.
    bool is_end_of_text(std::size_t at) const {
        while (at < line_.size()) {
            const Mark mark = mark_at(line_, at);
            if (line_[at] != ' ' && line_[at] != '\t' && mark.plain != ' ' && mark.plain != '\0')
                break;
            at += mark.bytes;
        }
        return at >= line_.size() ||
               std::string_view(",]}#=.").find(line_[at]) != std::string_view::npos;
    }

    struct Closing {
        std::size_t at, bytes;
    };
    /// The first mark of a kind from `from` on that can end a text; `curly`: straight ones cannot.
    std::optional<Closing> closing(char plain, std::size_t from, bool curly) const {
        for (std::size_t at = from; at < line_.size();) {
            const Mark mark = mark_at(line_, at);
            const bool fits = mark.plain == plain || (!curly && line_[at] == plain);
            if (fits && is_end_of_text(at + mark.bytes))
                return Closing{at, mark.bytes};
            at += mark.bytes;
        }
        return std::nullopt;
    }

    /// A text in straight quotes, with what is within.
    void put_text(std::string_view content, bool was_basic) {
        mended_ += '"';
        for (std::size_t i = 0; i < content.size(); ++i) {
            const bool escaped = was_basic && content[i] == '\\' && i + 1 < content.size();
            if (!escaped && (content[i] == '"' || content[i] == '\\'))
                mended_ += '\\';
            mended_ += content[i];
            if (escaped)
                mended_ += content[++i];
        }
        mended_ += '"';
    }

    /// Past a text in straight quotes; false where the line ends within it.
    bool take_text(char quote, bool is_value) {
        const std::string_view three = quote == '"' ? "\"\"\"" : "'''";
        if (line_.substr(at_, 3) == three) {
            take(3);
            long_quote_ = three;
            return skip_long_text();
        }
        if (failed_)
            if (const auto end = curly_end(quote)) {
                note(Slip::curly_quotes, end->at, end->bytes);
                put_text(line_.substr(at_ + 1, end->at - at_ - 1), quote == '"');
                at_ = end->at + end->bytes;
                return true;
            }
        std::size_t end = at_ + 1;
        while (end < line_.size() && line_[end] != quote)
            end += quote == '"' && line_[end] == '\\' ? 2 : 1;
        if (end >= line_.size()) {
            if (failed_ && is_value) {
                note(Slip::open_quote, at_, 1);
                std::string_view content = line_.substr(at_ + 1);
                content = content.substr(0, content.find('#'));
                put_text(trimmed(std::string(content)), quote == '"');
                at_ = line_.size();
                return false;
            }
            take(line_.size() - at_);
            return false;
        }
        // "8' 6"" ends at the inch mark.
        if (quote == '"' && is_digit(line_[end - 1]) && end + 1 < line_.size() &&
            line_[end + 1] == '"' && is_end_of_text(end + 2)) {
            note(Slip::inch_mark, end, 1);
            mended_ += line_.substr(at_, end - at_);
            mended_ += " in\"";
            at_ = end + 2;
            return true;
        }
        take(end + 1 - at_);
        return true;
    }

    /// A curly mark that ends a text opened by a straight one, before any straight one can.
    std::optional<Closing> curly_end(char quote) const {
        const auto end = closing(quote, at_ + 1, true);
        const auto straight = closing(quote, at_ + 1, false);
        return end && straight && straight->at == end->at ? end : std::nullopt;
    }

    void take_mark(Mark mark) {
        if (!is_quote(mark.plain)) {
            note(Slip::odd_space, at_, mark.bytes);
            if (mark.plain == ' ')
                mended_ += ' ';
            at_ += mark.bytes;
            return;
        }
        note(Slip::curly_quotes, at_, mark.bytes);
        const std::size_t from = at_ + mark.bytes;
        const auto end =
            line_.size() <= longest_line ? closing(mark.plain, from, false) : std::nullopt;
        if (end) {
            put_text(line_.substr(from, end->at - from), false);
            at_ = end->at + end->bytes;
        } else {
            mended_ += mark.plain;
            at_ = from;
        }
    }

    /// A length with its unit or a fraction that stands without quotes, as far as a value goes.
    bool take_bare_length() {
        constexpr std::size_t longest = 40;
        if (!is_digit(line_[at_]) && line_[at_] != '-' && line_[at_] != '+' && line_[at_] != '.')
            return false;
        const std::size_t end = std::min(line_.find_first_of(",]}#", at_), line_.size());
        std::string_view value = line_.substr(at_, end - at_);
        while (!value.empty() && (value.back() == ' ' || value.back() == '\t'))
            value.remove_suffix(1);
        if (value.size() > longest ||
            value.find_first_not_of("0123456789.+-_eE") == std::string_view::npos ||
            !read_length(value, DisplayUnit::feet).fault.empty())
            return false;
        note(Slip::bare_length, at_, value.size());
        put_text(value, false);
        at_ += value.size();
        return true;
    }

    std::string_view line_, long_quote_;
    bool failed_;
    std::size_t at_ = 0;
    std::string mended_;
    Slip slip_ = Slip::none;
    std::size_t slip_at_ = 0, slip_bytes_ = 0;
};

Diagnostic fault_of(const LineMender& line, SourcePlace place) {
    const std::string works = trimmed(line.mended());
    switch (line.slip()) {
    case Slip::odd_space:
        return faults::odd_space(place, works);
    case Slip::bare_length:
        return faults::bare_length(place, line.slip_mark(), works);
    case Slip::open_quote:
        return faults::open_quote(place, works);
    case Slip::inch_mark:
        return faults::inch_mark(place, works);
    default:
        return faults::curly_quotes(place, line.slip_mark(), works);
    }
}

} // namespace

std::vector<Diagnostic> typing_slips(std::string_view text, int failed) {
    std::vector<Diagnostic> slips;
    std::string_view long_quote;
    int number = 0;
    const std::string_view byte_order_mark = "\xEF\xBB\xBF"; // TOML takes one at the start
    const std::size_t first = text.substr(0, 3) == byte_order_mark ? 3 : 0;
    for (std::size_t start = first; start < text.size();) {
        const std::size_t end = std::min(text.find('\n', start), text.size());
        std::string_view line = text.substr(start, end - start);
        if (!line.empty() && line.back() == '\r')
            line.remove_suffix(1);
        ++number;
        LineMender mender(line, long_quote, number == failed);
        mender.run();
        long_quote = mender.long_quote();
        if (mender.slip() != Slip::none) {
            if (slips.size() == most_diagnostics) {
                slips.push_back(too_many_faults());
                break;
            }
            const std::size_t before = character_count(line.substr(0, mender.slip_at()));
            slips.push_back(fault_of(mender, {number, static_cast<int>(before) + 1}));
        }
        start = end + 1;
    }
    return slips;
}

} // namespace coilwright
