#include "exporters/svg.hpp"

#include "exporters/xml.hpp"
#include "geometry/base/bearing.hpp"
#include "geometry/base/length.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace coilwright {
namespace {

/// To 1 um without needless noughts.
std::string number(double value) {
    if (!std::isfinite(value))
        throw std::runtime_error("A drawing holds a number that is not finite.");
    return trimmed_text(value, 3);
}

std::string grey(Ink ink) {
    const int level = static_cast<int>(std::lround(std::clamp(ink.grey, 0.0, 1.0) * 255));
    static const char* const digits = "0123456789abcdef";
    const std::string two{digits[level / 16], digits[level % 16]};
    return "#" + two + two + two;
}

class SvgPage {
public:
    explicit SvgPage(const Sheet& sheet) : height_(sheet.height) {
        const std::string width = number(sheet.width), height = number(sheet.height);
        text_ = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"" +
                width + "mm\" height=\"" + height + "mm\" viewBox=\"0 0 " + width + " " + height +
                "\" font-family=\"DejaVu Sans, Verdana, Arial, sans-serif\" "
                "stroke-linejoin=\"round\">\n<title>" +
                xml_text(sheet.title) + "</title>\n<rect width=\"" + width + "\" height=\"" +
                height + "\" fill=\"#ffffff\"/>\n";
    }

    void draw(const LineItem& item) {
        if (item.points.size() < 2)
            return;
        std::string path = "M" + point(item.points.front());
        for (std::size_t i = 1; i < item.points.size(); ++i)
            path += " L" + point(item.points[i]);
        stroke(path + (item.closed ? " Z" : ""), item.stroke);
    }

    void draw(const ArcItem& item) {
        const double sweep = std::min(item.end - item.start, 2 * pi);
        const auto at = [&](double angle) {
            return Vec2(item.centre + item.radius * Vec2(std::cos(angle), std::sin(angle)));
        };
        // Two halves: a full circle's ends are one point.
        const double middle = item.start + sweep / 2, end = item.start + sweep;
        const std::string radius = number(item.radius);
        std::string path = "M" + point(at(item.start));
        for (const double angle : {middle, end})
            path += " A" + radius + " " + radius + " 0 0 0 " + point(at(angle));
        stroke(path, item.stroke);
    }

    void draw(const FillItem& item) {
        const std::string path = outline(item);
        if (item.hatch_spacing <= 0) {
            text_ += "<path d=\"" + path + "\" fill=\"" + grey(item.ink) +
                     "\" fill-rule=\"evenodd\"/>\n";
            return;
        }
        const std::string id = "h" + std::to_string(++hatches_);
        const std::string spacing = number(item.hatch_spacing);
        text_ += "<pattern id=\"" + id + "\" patternUnits=\"userSpaceOnUse\" width=\"" + spacing +
                 "\" height=\"" + spacing + "\" patternTransform=\"rotate(45)\"><path d=\"M0 0 V" +
                 spacing + "\" stroke=\"" + grey(item.hatch.ink) + "\" stroke-width=\"" +
                 number(item.hatch.width * 2) + "\"/></pattern>\n<path d=\"" + path +
                 "\" fill=\"url(#" + id + ")\" fill-rule=\"evenodd\"/>\n";
    }

    void draw(const TextItem& item) {
        if (item.text.empty() || item.size <= 0)
            return;
        const char* const anchor = item.align == Align::left     ? "start"
                                   : item.align == Align::centre ? "middle"
                                                                 : "end";
        std::string place =
            " x=\"" + number(item.at.x()) + "\" y=\"" + number(height_ - item.at.y()) + "\"";
        if (std::abs(item.turn) > 1e-9)
            place += " transform=\"rotate(" + number(-item.turn / radians_per_degree) + " " +
                     point(item.at) + ")\"";
        const std::string style = " font-size=\"" + number(item.size) + "\" text-anchor=\"" +
                                  anchor + "\"" + (item.bold ? " font-weight=\"bold\"" : "");
        if (item.on_white)
            text_ += "<text" + place + style +
                     " fill=\"#ffffff\" stroke=\"#ffffff\" stroke-width=\"1.2\">" +
                     xml_text(item.text) + "</text>\n";
        text_ += "<text" + place + style + " fill=\"" + grey(item.ink) + "\">" +
                 xml_text(item.text) + "</text>\n";
    }

    std::string finish() && { return std::move(text_) + "</svg>\n"; }

private:
    std::string point(Vec2 at) const { return number(at.x()) + " " + number(height_ - at.y()); }

    std::string outline(const FillItem& item) const {
        std::string path;
        for (const FillItem::Loop& loop : item.loops) {
            path += (path.empty() ? "M" : " M") + point(loop.from);
            Vec2 from = loop.from;
            for (const FillItem::Edge& edge : loop.edges) {
                const double chord = (edge.to - from).norm();
                if (std::abs(edge.bulge) < 1e-9 || chord < 1e-9) {
                    path += " L" + point(edge.to);
                } else {
                    const double b = std::abs(edge.bulge);
                    const std::string radius = number(chord * (1 + b * b) / (4 * b));
                    path += " A" + radius + " " + radius + (b > 1 ? " 0 1" : " 0 0") +
                            (edge.bulge > 0 ? " 0 " : " 1 ") + point(edge.to);
                }
                from = edge.to;
            }
            path += " Z";
        }
        return path;
    }

    void stroke(const std::string& path, const Stroke& stroke) {
        text_ += "<path d=\"" + path + "\" fill=\"none\" stroke=\"" + grey(stroke.ink) +
                 "\" stroke-width=\"" + number(stroke.width) + "\"";
        if (!stroke.dashes.empty()) {
            text_ += " stroke-dasharray=\"";
            for (std::size_t i = 0; i < stroke.dashes.size(); ++i)
                text_ += (i > 0 ? " " : "") + number(stroke.dashes[i]);
            text_ += "\"";
        }
        text_ += "/>\n";
    }

    double height_;
    int hatches_ = 0;
    std::string text_;
};

} // namespace

std::string svg_text(const Sheet& sheet) {
    SvgPage page(sheet);
    for (const PaperItem& item : sheet.items)
        std::visit([&](const auto& one) { page.draw(one); }, item);
    return std::move(page).finish();
}

} // namespace coilwright
