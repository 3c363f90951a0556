#include "geometry/design/faults.hpp"

#include "geometry/base/nearest_word.hpp"
#include "geometry/base/utf8.hpp"

namespace coilwright::faults {

namespace {

std::string in_quotes(std::string_view text) {
    return '"' + shown_text(text) + '"';
}

std::string in_ticks(std::string_view text) {
    return '`' + shown_text(text) + '`';
}

std::string did_you_mean(const std::string& word) {
    return "did you mean " + in_ticks(word) + "?";
}

// "[tube.NAME] or [dome.NAME]".
std::string headers(const std::vector<std::string>& sections) {
    std::string text;
    for (const std::string& section : sections)
        text += (text.empty() ? "[" : " or [") + section + ".NAME]";
    return text;
}

} // namespace

std::string At::key() const {
    const auto dot = path.rfind('.');
    return dot == std::string::npos ? path : path.substr(dot + 1);
}

std::string At::table() const {
    const auto dot = path.rfind('.');
    return dot == std::string::npos ? "the file" : "[" + path.substr(0, dot) + "]";
}

std::string as_sentence(std::string text) {
    if (!text.empty() && text.front() >= 'a' && text.front() <= 'z')
        text.front() = static_cast<char>(text.front() - 'a' + 'A');
    if (!text.empty() && text.back() != '.')
        text += '.';
    return text;
}

std::string listed(const std::vector<std::string>& words) {
    std::string text;
    for (const std::string& word : words) {
        if (!text.empty())
            text += ", ";
        text += word;
    }
    return text;
}

std::string assignment(const At& at, const std::string& typed) {
    return at.key() + " = " + typed;
}

Diagnostic too_large(std::size_t bytes, std::size_t most) {
    return {"too-large",
            {},
            "",
            "the file has " + std::to_string(bytes) + " bytes, more than a design needs",
            "at most " + std::to_string(most) + " bytes",
            "a design of some hundred lines",
            "is this the file you meant?"};
}

Diagnostic not_utf8(SourcePlace place) {
    return {"not-utf8",
            place,
            "",
            "a byte here is not UTF-8 text",
            "text saved as UTF-8",
            "name = \"Store\"",
            "save the file again with the encoding UTF-8"};
}

Diagnostic nul_byte(SourcePlace place) {
    return {"nul-byte",
            place,
            "",
            "a NUL byte stands here, which no text file has",
            "text saved as UTF-8",
            "name = \"Store\"",
            "is this the file you meant, and is it whole?"};
}

Diagnostic too_deep(SourcePlace place, int most) {
    return {"too-deep",
            place,
            "",
            "brackets, braces or dotted names nest deeper than a design needs",
            "at most " + std::to_string(most) + " levels",
            "profile = { kind = \"round\" }",
            "is a bracket left open above?"};
}

Diagnostic not_toml(SourcePlace place, std::string_view description) {
    return {"not-toml",
            place,
            "",
            "this is not TOML: " + shown_text(description, 200),
            "TOML 1.0: [table] headers, and lines `key = value`",
            "width = \"32 in\"",
            "texts stand in quotes, also a length with its unit; each key stands once"};
}

Diagnostic curly_quotes(SourcePlace place, std::string_view mark, const std::string& works) {
    return {
        "curly-quotes",
        place,
        "",
        "a text stands in quotes that are not straight (" + shown_text(mark) +
            "), as phones and word processors type them",
        "straight quotes around a text, \"; within it curly ones may stand: \"8\u2032 6\u2033\"",
        works,
        "switch off smart quotes in the keyboard's settings"};
}

Diagnostic odd_space(SourcePlace place, const std::string& works) {
    return {"odd-space",
            place,
            "",
            "a space stands here that TOML does not take, as phones and web pages make them",
            "plain spaces outside texts",
            works,
            "delete it and type a space"};
}

Diagnostic bare_length(SourcePlace place, std::string_view found, const std::string& works) {
    return {"unquoted-length",
            place,
            "",
            in_ticks(found) + " stands without quotes",
            "a length with its unit or a fraction in straight quotes; plain numbers without",
            works,
            ""};
}

Diagnostic inch_mark(SourcePlace place, const std::string& works) {
    return {"inch-mark-ends-text",
            place,
            "",
            "the inch mark \" ends the text, and one quote is left over",
            "`in` or two single quotes '' for inches within a text",
            works,
            ""};
}

Diagnostic open_quote(SourcePlace place, const std::string& works) {
    return {"quote-left-open",
            place,
            "",
            "the text that starts here has no closing quote on its line",
            "a quote at both ends of a text",
            works,
            ""};
}

Diagnostic unknown_table(const At& at, const std::vector<std::string>& known,
                         const std::string& child) {
    const auto nearest = nearest_word(at.path, known);
    return {"unknown-table",
            at.place,
            at.path,
            "a design has no table or key " + in_ticks(at.path),
            listed(known),
            "[" + nearest.value_or("finish") +
                (nearest && !child.empty() ? "." + shown_text(child) : "") + "]",
            nearest ? did_you_mean(*nearest) : "take it out"};
}

Diagnostic unknown_key(const At& at, const std::vector<std::string>& known,
                       const std::vector<std::string>& examples) {
    const auto nearest = nearest_word(at.key(), known);
    std::size_t shown = 0;
    for (std::size_t i = 0; nearest && i < known.size(); ++i)
        if (known[i] == *nearest)
            shown = i;
    return {"unknown-key",
            at.place,
            at.path,
            at.table() + " has no key " + in_ticks(at.key()),
            listed(known),
            known[shown] + " = " + examples[shown],
            nearest ? did_you_mean(*nearest) : "take it out"};
}

Diagnostic missing_table(const std::string& table, const std::string& why) {
    return {"missing-table",
            {1, 1},
            table,
            "the design has no [" + table + "]",
            why,
            "[" + table + "]",
            "docs/reference/design-file.md lists its keys"};
}

Diagnostic missing_key(const At& at, const std::string& allowed, const std::string& typed) {
    return {"missing-key", at.place,
            at.path,       at.table() + " lacks " + in_ticks(at.key()),
            allowed,       assignment(at, typed),
            "add the line"};
}

Diagnostic element_without_name(const At& at, const std::string& section) {
    return {"element-without-name",
            at.place,
            at.path,
            in_ticks(at.key()) + " stands in [" + section +
                "] itself, which only holds named tables",
            "[" + section + ".NAME], the name of your choice",
            "[" + section + ".north]",
            "give the table a name and put the keys under it"};
}

Diagnostic too_many_elements(const At& at, int most) {
    const std::string section = at.path.substr(0, at.path.find('.'));
    return {"too-many-elements",
            at.place,
            at.path,
            "the design has more than " + std::to_string(most) + " tables [" + section + ".NAME]",
            "at most " + std::to_string(most),
            "one design a building",
            "divide the site into several designs"};
}

Diagnostic wrong_version(const At& at, const std::string& found) {
    return {"wrong-version",
            at.place,
            at.path,
            "the file says version " + found +
                " of the design format; this program reads version 1",
            "1",
            assignment(at, "1"),
            "a newer program may read it"};
}

Diagnostic wrong_type(const At& at, const std::string& found, const std::string& allowed,
                      const std::string& typed) {
    return {"wrong-type",          at.place, at.path, in_ticks(at.key()) + " is " + found, allowed,
            assignment(at, typed), ""};
}

Diagnostic unreadable_measure(const At& at, const std::string& found, const std::string& fault,
                              const std::string& allowed, const std::string& typed) {
    return {"unreadable-measure",
            at.place,
            at.path,
            in_ticks(at.key()) + " cannot be read: " + found + " " + fault,
            allowed,
            assignment(at, typed),
            ""};
}

Diagnostic out_of_range(const At& at, const std::string& found, const std::string& allowed,
                        const std::string& typed, const std::string& meant) {
    return {"out-of-range",
            at.place,
            at.path,
            in_ticks(at.key()) + " is " + found + ", out of range",
            allowed,
            assignment(at, typed),
            meant.empty() ? "" : "did you mean " + meant + "? a bare number is in the file's unit"};
}

Diagnostic forgotten_unit(const At& at, const std::string& found, const std::string& reads,
                          const std::string& usual, const std::string& meant) {
    return {"forgotten-unit",
            at.place,
            at.path,
            in_ticks(at.key()) + " is " + found + ", which reads as " + reads +
                "; its unit seems forgotten",
            "a bare number in the file's unit up to " + usual + "; beyond that text with its unit",
            assignment(at, in_quotes(meant)),
            "write " + in_quotes(reads) + " if that is meant"};
}

Diagnostic unknown_word(const At& at, std::string_view found,
                        const std::vector<std::string>& words) {
    const auto nearest = nearest_word(found, words);
    return {"unknown-word",
            at.place,
            at.path,
            in_ticks(at.key()) + " is " + in_quotes(found) + ", which is none of its words",
            listed(words),
            assignment(at, '"' + nearest.value_or(words.front()) + '"'),
            nearest ? did_you_mean(*nearest) : ""};
}

Diagnostic unknown_name(const At& at, std::string_view found, const std::vector<std::string>& names,
                        const std::string& more) {
    const auto nearest = nearest_word(found, names);
    const std::string section = at.path.substr(0, at.path.rfind('.'));
    return {"unknown-word",
            at.place,
            at.path,
            in_ticks("[" + at.path + "]") + " names nothing that there is",
            listed(names) + more,
            "[" + section + "." + nearest.value_or(names.front()) + "]",
            nearest ? did_you_mean(*nearest) : ""};
}

Diagnostic taken_number(const At& at, int value, const std::string& by, int free) {
    return {"taken-number",
            at.place,
            at.path,
            in_ticks(at.key()) + " is " + std::to_string(value) + ", as it is of " + by,
            "another number for each",
            at.key() + " = " + std::to_string(free),
            ""};
}

Diagnostic bad_id(const At& at, std::string_view id) {
    return {
        "bad-id",
        at.place,
        at.path,
        in_quotes(id) + " cannot be a name",
        "a small letter, then small letters, digits, - or _, at most 12 in all; not \"neither\"",
        "[" + at.path.substr(0, at.path.find('.')) + ".north-2]",
        ""};
}

Diagnostic reserved_id(const At& at, const std::string& id) {
    return {"reserved-id",
            at.place,
            at.path,
            "the name " + in_quotes(id) + " is that of another thing to buy",
            "a name that is no code of the take-off and does not begin with \"tube-\"",
            "[" + at.path.substr(0, at.path.find('.')) + ".my-" + id.substr(0, 9) + "]",
            "rename it, and its part in every mix"};
}

Diagnostic repeated_id(const At& at, const std::string& id, const std::string& other_path,
                       SourcePlace other) {
    return {"repeated-id",
            at.place,
            at.path,
            "the name " + in_quotes(id) + " is taken by [" + other_path + "] in line " +
                std::to_string(other.line),
            "one name for one thing, over tubes, domes, openings, tunnels, buttresses and sleeves",
            "[" + at.path.substr(0, at.path.find('.')) + "." + id.substr(0, 10) + "-2]",
            "rename one of them, and what refers to it"};
}

Diagnostic unknown_reference(const At& at, std::string_view id,
                             const std::vector<std::string>& known,
                             const std::vector<std::string>& sections) {
    const auto nearest = nearest_word(id, known);
    const std::string works = nearest ? *nearest : known.empty() ? "north" : known.front();
    return {"unknown-reference",
            at.place,
            at.path,
            in_ticks(at.key()) + " names " + in_quotes(id) + ", which is no " + headers(sections) +
                " of this design",
            known.empty() ? "the name of a table " + headers(sections) : listed(known),
            assignment(at, '"' + works + '"'),
            nearest         ? did_you_mean(*nearest)
            : known.empty() ? "add " + headers(sections)
                            : ""};
}

Diagnostic wrong_reference(const At& at, const std::string& message, const std::string& allowed,
                           const std::string& typed) {
    return {"wrong-reference", at.place, at.path, message, allowed, assignment(at, typed), ""};
}

} // namespace coilwright::faults
