#include "tests/drawing/pdf_content.hpp"

#include "tests/exporters/scratch.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <sstream>
#include <stdexcept>

namespace coilwright::testing {

namespace {

constexpr double mm_per_point = 25.4 / 72;

/// A PDF matrix [a b c d e f]: x' = a x + c y + e, y' = b x + d y + f.
struct Matrix {
    double a = 1, b = 0, c = 0, d = 1, e = 0, f = 0;
    Vec2 operator()(double x, double y) const { return {a * x + c * y + e, b * x + d * y + f}; }
    /// First `inner`, then this.
    Matrix after(const Matrix& inner) const {
        const Vec2 x = Vec2(a * inner.a + c * inner.b, b * inner.a + d * inner.b);
        const Vec2 y = Vec2(a * inner.c + c * inner.d, b * inner.c + d * inner.d);
        const Vec2 origin = (*this)(inner.e, inner.f);
        return {x.x(), x.y(), y.x(), y.y(), origin.x(), origin.y()};
    }
};

/// Follows the operators of one content stream.
class Reader {
public:
    std::vector<DrawnPath> read(const std::string& stream) {
        std::istringstream words(stream);
        std::string word;
        while (words >> word)
            take(word, words);
        return std::move(done_);
    }

private:
    void take(const std::string& word, std::istringstream& words) {
        char* end = nullptr;
        const double number = std::strtod(word.c_str(), &end);
        if (end != word.c_str() && *end == '\0') {
            numbers_.push_back(number);
            return;
        }
        if (word == "BT") { // text is read by another program
            while (words >> std::ws && word_after(words) != "ET") {
            }
        } else if (word == "q") {
            stack_.push_back({matrix_, width_});
        } else if (word == "Q") {
            matrix_ = stack_.back().first;
            width_ = stack_.back().second;
            stack_.pop_back();
        } else if (word == "cm") {
            const double* n = last(6);
            matrix_ = matrix_.after({n[0], n[1], n[2], n[3], n[4], n[5]});
        } else if (word == "w") {
            width_ = *last(1);
        } else if (word == "m") {
            parts_.push_back({});
            add(last(2));
        } else if (word == "l") {
            add(last(2));
        } else if (word == "c") {
            add(last(6) + 4);
            curved_ = true;
        } else if (word == "h") {
            parts_.back().push_back(parts_.back().front());
        } else if (word == "re") {
            const double* n = last(4);
            parts_.push_back({matrix_(n[0], n[1]), matrix_(n[0] + n[2], n[1]),
                              matrix_(n[0] + n[2], n[1] + n[3]), matrix_(n[0], n[1] + n[3]),
                              matrix_(n[0], n[1])});
        } else if (word == "S" || word == "s") {
            paint(true, false);
        } else if (word == "n") { // after W, a clip: nothing is painted
            parts_.clear();
        } else if (word == "f" || word == "f*") {
            paint(false, true);
        } else if (word == "B" || word == "B*" || word == "b" || word == "b*") {
            paint(true, true);
        } else if (word != "W" && word != "W*" && word != "rg" && word != "RG" && word != "g" &&
                   word != "G" && word != "J" && word != "j" && word != "M" && word != "d" &&
                   word != "gs" && word[0] != '/' && word[0] != '[' && word.back() != ']') {
            throw std::runtime_error("an operator that this reader does not follow: " + word);
        }
        numbers_.clear();
    }

    static std::string word_after(std::istringstream& words) {
        std::string word;
        words >> word;
        return word;
    }

    const double* last(std::size_t count) const {
        if (numbers_.size() < count)
            throw std::runtime_error("an operator lacks numbers");
        return numbers_.data() + (numbers_.size() - count);
    }

    void add(const double* xy) { parts_.back().push_back(matrix_(xy[0], xy[1])); }

    void paint(bool stroked, bool filled) {
        for (const std::vector<Vec2>& part : parts_) {
            DrawnPath path;
            for (const Vec2& point : part)
                path.points.push_back(point * mm_per_point);
            path.stroked = stroked;
            path.filled = filled;
            path.curved = curved_;
            path.width = width_ * mm_per_point;
            done_.push_back(std::move(path));
        }
        parts_.clear();
        curved_ = false;
    }

    Matrix matrix_;
    double width_ = 1;
    bool curved_ = false;
    std::vector<std::pair<Matrix, double>> stack_;
    std::vector<double> numbers_;
    std::vector<std::vector<Vec2>> parts_;
    std::vector<DrawnPath> done_;
};

} // namespace

std::vector<std::vector<DrawnPath>> drawn_paths(const std::filesystem::path& pdf,
                                                const std::filesystem::path& scratch) {
    const std::filesystem::path plain = scratch / "plain.qdf";
    output_of({"qpdf", "--qdf", "--object-streams=disable", pdf.string(), plain.string()});
    const std::string text = bytes_of(plain);
    std::vector<std::vector<DrawnPath>> pages;
    for (std::size_t at = 0;;) {
        const std::string mark = "%% Contents for page " + std::to_string(pages.size() + 1) + "\n";
        at = text.find(mark, at);
        if (at == std::string::npos)
            break;
        const std::size_t start = text.find("stream\n", at) + 7;
        const std::size_t end = text.find("endstream", start);
        pages.push_back(Reader().read(text.substr(start, end - start)));
    }
    return pages;
}

std::vector<DrawnPath> segments(const std::vector<DrawnPath>& paths) {
    std::vector<DrawnPath> found;
    for (const DrawnPath& path : paths)
        if (path.stroked && !path.curved && path.points.size() == 2)
            found.push_back(path);
    return found;
}

double radius_of(const DrawnPath& path) {
    const Vec2 a = path.points.front(), b = path.points[path.points.size() / 2];
    Vec2 c = path.points.back();
    if ((c - a).norm() < 1e-3 && path.points.size() > 3) // a full circle ends where it starts
        c = path.points[path.points.size() * 3 / 4];
    const double twice_area = std::abs((b - a).x() * (c - a).y() - (b - a).y() * (c - a).x());
    return (b - a).norm() * (c - b).norm() * (a - c).norm() / (2 * twice_area);
}

std::string text_of(const std::filesystem::path& pdf, int page) {
    std::vector<std::string> command{"pdftotext", "-layout"};
    if (page > 0)
        for (const char* option : {"-f", "-l"}) {
            command.emplace_back(option);
            command.push_back(std::to_string(page));
        }
    command.push_back(pdf.string());
    command.emplace_back("-");
    return output_of(command);
}

} // namespace coilwright::testing
