#include "geometry/base/nearest_word.hpp"

#include <algorithm>

namespace coilwright {

namespace {

constexpr std::size_t longest_word = 40;

std::string folded(std::string_view word) {
    std::string result(word);
    for (char& c : result) {
        if (c >= 'A' && c <= 'Z')
            c = static_cast<char>(c - 'A' + 'a');
        else if (c == '-' || c == ' ')
            c = '_';
    }
    return result;
}

} // namespace

int edit_distance(std::string_view a, std::string_view b) {
    // Three rows of the table: a swap looks two rows back.
    std::vector<int> before(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j)
        last[j] = static_cast<int>(j);
    for (std::size_t i = 1; i <= a.size(); ++i) {
        row[0] = static_cast<int>(i);
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const int change = a[i - 1] == b[j - 1] ? 0 : 1;
            row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + change});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                row[j] = std::min(row[j], before[j - 2] + 1);
        }
        before.swap(last);
        last.swap(row);
    }
    return last[b.size()];
}

std::optional<std::string> nearest_word(std::string_view word,
                                        const std::vector<std::string>& known) {
    if (word.empty() || word.size() > longest_word)
        return std::nullopt;
    const std::string wanted = folded(word);
    std::optional<std::string> nearest;
    int nearest_distance = 0;
    for (const std::string& candidate : known) {
        const auto longer = static_cast<int>(std::max(word.size(), candidate.size()));
        const int distance = edit_distance(wanted, folded(candidate));
        if (distance <= std::max(1, longer / 3) && (!nearest || distance < nearest_distance)) {
            nearest = candidate;
            nearest_distance = distance;
        }
    }
    return nearest;
}

} // namespace coilwright
