#include "cli/variant_journal.hpp"

#include <charconv>
#include <cmath>
#include <cstdint>
#include <filesystem>
#include <iterator>
#include <optional>

namespace coilwright {

namespace {

/// A hundred thousand variants of a line each come nowhere near.
constexpr std::uintmax_t most_bytes = 256U << 20U;

/// FNV-1a, 64 bits: tells studies apart, no more.
class Mark {
public:
    void add(const std::string& text) {
        for (const char c : text + '\0') {
            value_ ^= static_cast<unsigned char>(c);
            value_ *= 0x100000001b3U;
        }
    }
    std::string text() const {
        char digits[16];
        return {digits, std::to_chars(digits, digits + sizeof digits, value_, 16).ptr};
    }

private:
    std::uint64_t value_ = 0xcbf29ce484222325U;
};

std::string number(double value) {
    char digits[32]; // the shortest text that reads back as the same number
    return {digits, std::to_chars(digits, digits + sizeof digits, value).ptr};
}

/// All that results hang on.
std::string head_of(const VariantStudy& study, const std::string& works_text) {
    Mark mark;
    mark.add(COILWRIGHT_VERSION);
    mark.add(study.text);
    mark.add(works_text);
    for (const Choice& choice : study.choices)
        for (const ChoiceValue& value : choice.values)
            for (const KeyChange& change : value.changes) {
                mark.add(change.path);
                mark.add(change.take_out ? "-" : "=" + change.value);
            }
    return "coilwright-variants 1 " + mark.text() + " " + std::to_string(variant_count(study));
}

std::vector<std::string> fields_of(const std::string& line) {
    std::vector<std::string> fields{""};
    for (const char c : line) {
        if (c == '\t')
            fields.emplace_back();
        else
            fields.back() += c;
    }
    return fields;
}

template <typename Number>
std::optional<Number> number_from(const std::string& text) {
    Number value{};
    const auto [rest, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc() || rest != text.data() + text.size())
        return std::nullopt;
    return value;
}

std::string one_field(std::string text) {
    for (char& c : text)
        if (static_cast<unsigned char>(c) < 0x20)
            c = ' ';
    return text;
}

} // namespace

VariantJournal::VariantJournal(const std::string& path, const VariantStudy& study,
                               const std::string& works_text)
    : held_(variant_count(study), false), results_(variant_count(study)) {
    const std::string head = head_of(study, works_text);
    std::string text;
    std::error_code error;
    if (std::filesystem::exists(path, error)) {
        // Looked at before it is opened: a pipe would wait, a device might never end.
        if (!std::filesystem::is_regular_file(path, error) ||
            std::filesystem::file_size(path, error) > most_bytes || error) {
            fault_ = "--journal: \"" + path + "\" is no file of a journal's size";
            return;
        }
        std::ifstream in(path, std::ios::binary);
        text.assign(std::istreambuf_iterator<char>(in), {});
        if (!in) {
            fault_ = "--journal: cannot read \"" + path + "\"";
            return;
        }
    }
    // A last line without its end was cut off as it was written.
    const std::size_t whole = text.rfind('\n') == std::string::npos ? 0 : text.rfind('\n') + 1;
    const bool cut_head = whole == 0 && head.compare(0, text.size(), text) == 0;
    if (!cut_head && text.substr(0, head.size() + 1) != head + "\n") {
        fault_ = "--journal: \"" + path +
                 "\" is of another design, works file, choice or version; name another file";
        return;
    }
    for (std::size_t at = std::min(whole, head.size() + 1); at < whole;) {
        const std::size_t end = text.find('\n', at);
        read_line(text.substr(at, end - at));
        at = end + 1;
    }
    // What was cut off must not stay before the next line.
    if (whole < text.size())
        std::filesystem::resize_file(path, whole, error);
    file_.open(path, std::ios::binary | std::ios::app);
    if (whole == 0)
        file_ << head << '\n' << std::flush;
    if (!file_ || error)
        fault_ = "--journal: cannot write \"" + path + "\"";
}

void VariantJournal::read_line(const std::string& line) {
    const std::vector<FigureColumn>& columns = figure_columns();
    const std::vector<std::string> fields = fields_of(line);
    const auto index = number_from<std::size_t>(fields.front());
    if (!index || *index >= results_.size() || fields.size() != columns.size() + 4)
        return;
    VariantResult result;
    result.laid = fields[1] == "laid";
    result.fault = fields[2];
    for (std::size_t i = 0; i < columns.size(); ++i) {
        const auto value = number_from<double>(fields[i + 3]);
        if (!value || !std::isfinite(*value) || *value < 0)
            return;
        result.figures.*columns[i].value = *value;
    }
    const std::string& ended = fields.back();
    if (ended != "ended" && ended != "not")
        return;
    result.figures.ended = ended == "ended";
    results_[*index] = std::move(result);
    held_[*index] = true;
}

bool VariantJournal::add(std::size_t index, const VariantResult& result) {
    std::string line =
        std::to_string(index) + (result.laid ? "\tlaid\t" : "\tnot\t") + one_field(result.fault);
    for (const FigureColumn& column : figure_columns())
        line += "\t" + number(result.figures.*column.value);
    line += result.figures.ended ? "\tended" : "\tnot";
    file_ << line << '\n' << std::flush;
    return static_cast<bool>(file_);
}

} // namespace coilwright
