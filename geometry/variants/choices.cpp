#include "geometry/variants/choices.hpp"

#include "geometry/base/length.hpp"
#include "geometry/base/nearest_word.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>

namespace coilwright {

namespace {

constexpr std::size_t most_values = 10000;
constexpr double least_step = 1e-9; // values are told to as much

std::string trimmed(const std::string& text) {
    const std::size_t from = text.find_first_not_of(' ');
    return from == std::string::npos ? std::string()
                                     : text.substr(from, text.find_last_not_of(' ') - from + 1);
}

std::optional<double> bare_number(const std::string& text) {
    double value = 0;
    const auto [rest, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc() || rest != text.data() + text.size() || !std::isfinite(value))
        return std::nullopt;
    return value;
}

std::string shortest(double value) {
    char digits[32];
    return {digits, std::to_chars(digits, digits + sizeof digits, value).ptr};
}

/// The paths that a name stands for; a fault where it stands for none.
struct Paths {
    std::string set;
    std::vector<std::string> taken_out;
    std::string fault;
};

/// The one element that a short name needs.
template <typename Element>
std::string only(const std::vector<Element>& elements, const std::string& name,
                 const std::string& table, const std::string& key, Paths& paths) {
    if (elements.size() == 1)
        return table + "." + elements.front().id + "." + key;
    std::string list;
    for (const Element& element : elements)
        list += (list.empty() ? "" : ", ") + table + "." + element.id + "." + key;
    paths.fault = "\"" + name + "\" stands for one of several; name it: " + list;
    return {};
}

Paths paths_of(const std::string& name, const Design& design) {
    Paths paths;
    if (name == "diameter") {
        paths.set = only(design.domes, name, "dome", "inside_diameter", paths);
    } else if (name == "springline") {
        paths.set = only(design.domes, name, "dome", "springline", paths);
    } else if (name == "rise") {
        paths.set = only(design.domes, name, "dome", "profile.rise", paths);
    } else if (name == "lay-flat") {
        paths.set = only(design.tubes, name, "tube", "lay_flat", paths);
        if (paths.fault.empty())
            paths.taken_out = {"tube." + design.tubes.front().id + ".tamped_width"};
    } else if (name == "course") {
        paths.set = "course.height";
    } else if (name.find('.') != std::string::npos && name.front() != '.' && name.back() != '.') {
        paths.set = name;
    } else {
        const auto near = nearest_word(name, short_choices());
        paths.fault = "\"" + name +
                      "\" is neither a path of the design file, dome.NAME.springline, nor one of "
                      "diameter, springline, rise, lay-flat, course" +
                      (near ? "; did you mean " + *near + "?" : "");
    }
    return paths;
}

std::vector<std::string> split(const std::string& text, const std::string& by) {
    std::vector<std::string> parts;
    std::size_t from = 0;
    for (std::size_t at = text.find(by); at != std::string::npos; at = text.find(by, from)) {
        parts.push_back(trimmed(text.substr(from, at - from)));
        from = at + by.size();
    }
    parts.push_back(trimmed(text.substr(from)));
    return parts;
}

class Reader {
public:
    Reader(const std::string& text, const Design& design) : design_(design) {
        const std::size_t equals = text.find('=');
        if (equals == std::string::npos || trimmed(text.substr(0, equals)).empty()) {
            reading_.fault = "\"" + text + "\" is no KEY=VALUES; write \"diameter=8 ft,9 ft\"";
            return;
        }
        reading_.choice.name = trimmed(text.substr(0, equals));
        paths_ = paths_of(reading_.choice.name, design);
        if (!paths_.fault.empty()) {
            reading_.fault = paths_.fault;
            return;
        }
        const std::string values = trimmed(text.substr(equals + 1));
        const std::size_t to = values.find(" to ");
        if (to != std::string::npos)
            read_range(values, to);
        else
            read_list(values);
    }

    ChoiceReading take() { return std::move(reading_); }

private:
    bool is_own_lay_flat(const std::string& value) const {
        const LengthReading length = read_length(
            value.size() > 1 && value.front() == '"' ? value.substr(1, value.size() - 2) : value,
            design_.unit);
        return !paths_.taken_out.empty() && length.fault.empty() &&
               std::abs(length.value - design_.tubes.front().lay_flat) < least_step;
    }

    void add(const std::string& label, const std::string& value, double number) {
        ChoiceValue one{label, number, {{paths_.set, value, false}}};
        const bool own = is_own_lay_flat(value); // of the tube that was measured
        for (const std::string& path : paths_.taken_out)
            if (!own)
                one.changes.push_back({path, "", true});
        for (const ChoiceValue& had : reading_.choice.values)
            if (had.changes.front().value == value)
                return;
        reading_.choice.values.push_back(std::move(one));
    }

    void read_list(const std::string& values) {
        const std::vector<std::string> words = split(values, ",");
        if (words.size() > most_values) {
            reading_.fault = reading_.choice.name + ": more than 10,000 values";
            return;
        }
        // Numbers only where all are: a word stands at its place in the list.
        std::vector<double> numbers;
        for (const std::string& word : words) {
            if (word.empty()) {
                reading_.fault = reading_.choice.name + ": a value is empty";
                return;
            }
            const LengthReading length = read_length(word, design_.unit);
            if (length.fault.empty())
                numbers.push_back(length.value);
        }
        reading_.choice.numeric = numbers.size() == words.size();
        for (std::size_t i = 0; i < words.size(); ++i)
            add(words[i], words[i],
                reading_.choice.numeric ? numbers[i] : static_cast<double>(i + 1));
    }

    void read_range(const std::string& values, std::size_t to) {
        const std::string name = reading_.choice.name;
        const std::size_t by = values.find(" by ", to);
        if (by == std::string::npos) {
            reading_.fault = name + ": a range wants its step: \"8 ft to 12 ft by 6 in\"";
            return;
        }
        const std::string parts[] = {trimmed(values.substr(0, to)),
                                     trimmed(values.substr(to + 4, by - to - 4)),
                                     trimmed(values.substr(by + 4))};
        double numbers[3] = {};
        bool bare = true;
        for (std::size_t i = 0; i < 3; ++i) {
            const LengthReading length = read_length(parts[i], design_.unit);
            if (!length.fault.empty()) {
                reading_.fault = name + ": \"" + parts[i] + "\" " + length.fault;
                return;
            }
            bare = bare && bare_number(parts[i]);
            numbers[i] = length.value;
        }
        if (bare) // may be degrees or counts: as they are written
            for (std::size_t i = 0; i < 3; ++i)
                numbers[i] = *bare_number(parts[i]);
        const double first = numbers[0], step = numbers[2], span = numbers[1] - first;
        if (!(step > 0) || span < 0) {
            reading_.fault = name + ": a range goes up, by a step above 0";
            return;
        }
        if (step < least_step) {
            reading_.fault =
                name + ": its step is below a billionth (of a metre, or of a bare number)";
            return;
        }
        if (span / step > static_cast<double>(most_values) - 1) {
            reading_.fault = name + ": more than 10,000 values";
            return;
        }
        reading_.choice.numeric = true;
        const int steps = static_cast<int>(std::floor((span + least_step) / step));
        for (int i = 0; i <= steps; ++i)
            add_number(first + i * step, bare);
    }

    void add_number(double value, bool bare) {
        // To a nanometre: 3 x 0.1 is 0.3.
        const double rounded = std::round(value * 1e9) / 1e9;
        const std::string text = shortest(rounded);
        if (bare) {
            add(text, text, rounded);
            return;
        }
        const std::string shown = length_text(rounded, design_.unit);
        const LengthReading back = read_length(shown, design_.unit);
        const bool same = std::abs(back.value - rounded) < 1e-7;
        add(same ? shown : text + " m", text + " m", rounded);
    }

    const Design& design_;
    Paths paths_;
    ChoiceReading reading_;
};

} // namespace

const std::vector<std::string>& short_choices() {
    static const std::vector<std::string> names{"diameter", "springline", "rise", "lay-flat",
                                                "course"};
    return names;
}

ChoiceReading read_choice(const std::string& text, const Design& design) {
    return Reader(text, design).take();
}

} // namespace coilwright
