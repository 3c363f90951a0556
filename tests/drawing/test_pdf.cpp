// The PDF as other programs read it: sound, fonts embedded, pages exact, text as text, true to
// scale, the same bytes whatever the locale, the zone and the thread.
#include "exporters/pdf.hpp"
#include "geometry/drawing/crew_book.hpp"
#include "geometry/drawing/figures.hpp"
#include "geometry/drawing/pen.hpp"
#include "tests/drawing/pdf_content.hpp"
#include "tests/drawing/plans.hpp"
#include "tests/drawing/sheet_checks.hpp"
#include "tests/exporters/comma_locale.hpp"
#include "tests/exporters/scratch.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <cstdlib>
#include <ctime>
#include <limits>
#include <sstream>
#include <thread>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

/// A book written to a scratch directory.
struct Written {
    ScratchDirectory scratch;
    std::vector<Sheet> sheets;
    std::filesystem::path file;

    Written(const BuildingPlan& plan, const PaperSize& paper, bool strip = false)
        : sheets(strip ? compass_strip(plan, paper, pango_measure())
                       : crew_book(plan, paper, pango_measure())),
          file(scratch.path() / "book.pdf") {
        put_bytes(file, pdf_bytes(sheets, plan.schedule.name));
    }
};

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);)
        lines.push_back(line);
    return lines;
}

Sheet sheet_with(std::vector<PaperItem> items) {
    Sheet sheet;
    sheet.title = "One";
    sheet.items = std::move(items);
    return sheet;
}

/// Rows and columns of a picture whose grey is under a limit.
struct InkBox {
    int left = 1 << 30, right = -1, top = 1 << 30, bottom = -1;
};

InkBox ink_of(const std::filesystem::path& pdf, int dots_per_inch) {
    std::istringstream picture(
        output_of({"pdftoppm", "-r", std::to_string(dots_per_inch), "-gray", pdf.string()}));
    std::string kind;
    int width = 0, height = 0, most = 0;
    picture >> kind >> width >> height >> most;
    picture.get();
    InkBox box;
    for (int y = 0; y < height; ++y)
        for (int x = 0; x < width; ++x)
            if (picture.get() < 128) {
                box.left = std::min(box.left, x);
                box.right = std::max(box.right, x + 1);
                box.top = std::min(box.top, y);
                box.bottom = std::max(box.bottom, y + 1);
            }
    return box;
}

} // namespace

TEST_CASE("qpdf finds no fault, and every font is embedded with its letters known") {
    for (const BuildingPlan& plan : {demo_plan("grain-store"), crowded_plan()}) {
        const Written book(plan, letter_paper());
        const std::string check = output_of({"qpdf", "--check", book.file.string()});
        CHECK(check.find("No syntax or stream encoding errors") != std::string::npos);
        const std::vector<std::string> fonts =
            lines_of(output_of({"pdffonts", book.file.string()}));
        REQUIRE(fonts.size() > 2); // two lines of heading
        for (std::size_t i = 2; i < fonts.size(); ++i) {
            INFO(fonts[i]);
            // The columns emb, sub and uni.
            CHECK(fonts[i].find(" yes yes yes ") != std::string::npos);
            // Its first name is that of the font this program sets, but for signs it lacks.
            if (plan.schedule.name == "Grain store, Alder Flats")
                CHECK(fonts[i].find("DejaVuSans") != std::string::npos);
        }
    }
}

TEST_CASE("Pages have the size of their paper, and the outline names every sheet") {
    const BuildingPlan plan = demo_plan("washroom");
    struct Case {
        PaperSize paper;
        double width, height; // points: 215.9 and 279.4 mm are 8.5 and 11 in; A4 of ISO 216
    };
    for (const Case& one :
         {Case{letter_paper(), 612, 792}, Case{a4_paper(), 210 / 25.4 * 72, 297 / 25.4 * 72}}) {
        const Written book(plan, one.paper);
        const std::string last = std::to_string(book.sheets.size());
        int boxes = 0;
        for (const std::string& line :
             lines_of(output_of({"pdfinfo", "-box", "-f", "1", "-l", last, book.file.string()}))) {
            if (line.find("MediaBox:") == std::string::npos)
                continue;
            std::istringstream numbers(line.substr(line.find(':') + 1));
            double left = 1, bottom = 1, right = 0, top = 0;
            numbers >> left >> bottom >> right >> top;
            CHECK(left == 0);
            CHECK(bottom == 0);
            CHECK(std::abs(right - one.width) < 0.006); // pdfinfo prints two decimals
            CHECK(std::abs(top - one.height) < 0.006);
            ++boxes;
        }
        CHECK(boxes == static_cast<int>(book.sheets.size()));
        const std::string outline =
            output_of({"qpdf", "--json", "--json-key=outlines", book.file.string()});
        for (const Sheet& sheet : book.sheets)
            CHECK(outline.find("\"title\": \"" + sheet.title + "\"") != std::string::npos);
    }
}

TEST_CASE("pdftotext finds the number and the setting of each course on its sheet") {
    for (const BuildingPlan& plan : {demo_plan("grain-store"), pair_plan()}) {
        const Written book(plan, a4_paper());
        for (const Course& course : plan.schedule.courses)
            for (const Ring& ring : course.rings) {
                if (ring.kind == RingKind::cap)
                    continue;
                CAPTURE(course.number, ring.dome);
                const CourseSheets sheets =
                    sheets_of_course(book.sheets, course.number,
                                     plan.schedule.building.domes.size() > 1 ? ring.dome : "");
                REQUIRE_FALSE(sheets.places.empty());
                const int page = static_cast<int>(sheets.places.front()) + 1;
                const std::string text = text_of(book.file, page);
                const bool chain = plan.design.compass.arm == CompassArm::chain;
                const double setting = chain ? ring.chain_face : ring.inside_radius;
                CHECK(text.find(length_text(setting, plan.schedule.unit)) != std::string::npos);
                CHECK(text.find(std::to_string(course.number)) != std::string::npos);
            }
    }
}

TEST_CASE("The check ruler measures 100 mm and 4 in on every sheet") {
    const BuildingPlan plan = demo_plan("grain-store");
    for (const bool strip : {false, true}) {
        const Written book(plan, letter_paper(), strip);
        const auto pages = drawn_paths(book.file, book.scratch.path());
        REQUIRE(pages.size() == book.sheets.size());
        for (const std::vector<DrawnPath>& page : pages) {
            // Its line is the lowest level stroke of about that length.
            const DrawnPath* bar = nullptr;
            const std::vector<DrawnPath> strokes = segments(page);
            for (const DrawnPath& stroke : strokes) {
                const Vec2 along = stroke.points[1] - stroke.points[0];
                if (std::abs(along.y()) < 1e-3 && std::abs(along.x() - 101.6) < 2 &&
                    (!bar || stroke.points[0].y() < bar->points[0].y()))
                    bar = &stroke;
            }
            REQUIRE(bar);
            const Vec2 zero = bar->points[0];
            CHECK(std::abs(bar->points[1].x() - zero.x() - 4 * 25.4) < 0.02);
            int centimetres = 0, half_inches = 0;
            for (const DrawnPath& stroke : strokes) {
                const Vec2 foot = stroke.points[0] - zero, top = stroke.points[1] - zero;
                if (std::abs(foot.y()) > 1e-3 || std::abs(top.x() - foot.x()) > 1e-3 ||
                    foot.x() < -0.01 || foot.x() > 101.7)
                    continue;
                const double step = top.y() > 0 ? 10 : 12.7;
                CHECK(std::abs(foot.x() - step * std::round(foot.x() / step)) < 0.02);
                (top.y() > 0 ? centimetres : half_inches) += 1;
            }
            CHECK(centimetres == 11);
            CHECK(half_inches == 9);
        }
    }
}

TEST_CASE("A dome's inside diameter on the page is its diameter at the stated scale") {
    struct Case {
        const char* demo;
        PaperSize paper;
        double diameter; // as the design file says, metres
    };
    for (const Case& one :
         {Case{"grain-store", letter_paper(), 9 * 0.3048},
          Case{"workshop", a4_paper(), 14 * 0.3048}, Case{"cabin-metric", a4_paper(), 3.6}}) {
        CAPTURE(one.demo);
        const Written book(demo_plan(one.demo), one.paper);
        std::size_t page = 0;
        while (book.sheets[page].title != "Course 1")
            ++page;
        const std::string text = text_of(book.file, static_cast<int>(page) + 1);
        // "1/4 in = 1 ft (1:48)" or "1:50".
        const std::size_t colon = text.find("1:");
        REQUIRE(colon != std::string::npos);
        const double per = std::stod(text.substr(colon + 2));
        REQUIRE(per >= 20);
        double least = 1e9;
        const auto pages = drawn_paths(book.file, book.scratch.path());
        for (const DrawnPath& path : pages[page])
            if (path.stroked && path.curved && radius_of(path) > 5) // but for the pole
                least = std::min(least, radius_of(path));
        CHECK(std::abs(2 * least - one.diameter * 1000 / per) < 0.05);
    }
}

TEST_CASE("The same sheets give the same bytes in any locale, zone and thread") {
    const BuildingPlan plan = demo_plan("grain-store");
    const auto write = [&] {
        return pdf_bytes(crew_book(plan, letter_paper(), pango_measure()), "Crew book");
    };
    const std::string first = write();
    CHECK(write() == first);
    {
        const CommaLocale commas;
        CHECK(write() == first);
    }
    setenv("TZ", "Pacific/Auckland", 1);
    tzset();
    CHECK(write() == first);
    unsetenv("TZ");
    tzset();
    std::string others[2];
    std::thread threads[2];
    for (int i = 0; i < 2; ++i)
        threads[i] = std::thread([&, i] { others[i] = write(); });
    for (std::thread& thread : threads)
        thread.join();
    CHECK(others[0] == first);
    CHECK(others[1] == first);
    // The file's dates are a constant, not the clock's.
    const ScratchDirectory scratch;
    put_bytes(scratch.path() / "book.pdf", first);
    const std::string about =
        output_of({"pdfinfo", "-isodates", (scratch.path() / "book.pdf").string()});
    for (const char* date : {"CreationDate:", "ModDate:"}) {
        const std::size_t at = about.find(date);
        REQUIRE(at != std::string::npos);
        CHECK(about.substr(at, 60).find("2000-01-01T00:00:00") != std::string::npos);
    }
}

TEST_CASE("Text is as wide and as high on the page as it was measured") {
    const MeasureText measure = pango_measure();
    for (const bool bold : {false, true})
        for (const char* word : {"4-7/8", "Springline", "½°′", "Зерно"}) {
            CAPTURE(word, bold);
            const double size = 17;
            const Vec2 at(50, 100);
            const ScratchDirectory scratch;
            const std::filesystem::path file = scratch.path() / "text.pdf";
            put_bytes(file, pdf_bytes({sheet_with({text_at(at, word, size, bold)})}, "Text"));
            const TextExtent extent = measure(word, size, bold);
            constexpr int dots = 600;
            constexpr double mm = 25.4 / dots;
            const InkBox ink = ink_of(file, dots);
            const double baseline = 279.4 - at.y();
            CHECK(std::abs(baseline - ink.top * mm - extent.ascent) < 2 * mm);
            if (extent.descent > 0.1)
                CHECK(std::abs(ink.bottom * mm - baseline - extent.descent) < 2 * mm);
            // The advance as poppler knows it from the fonts in the file.
            const std::string boxes = output_of({"pdftotext", "-bbox", file.string(), "-"});
            const std::size_t low = boxes.find("<word xMin=\""), high = boxes.find("xMax=\"", low);
            REQUIRE(low != std::string::npos);
            const double left = std::stod(boxes.substr(low + 12)) * 25.4 / 72;
            const double right = std::stod(boxes.substr(high + 6)) * 25.4 / 72;
            CHECK(std::abs(left - at.x()) < 0.02);
            // Widths in a font file are whole thousandths of the em.
            const double letters = static_cast<double>(std::string(word).size());
            CHECK(std::abs(right - left - extent.width) < 0.02 + letters * 0.0006 * size);
        }
}

TEST_CASE("Measuring is proportional to the size, and wider in bold") {
    const MeasureText measure = pango_measure();
    const TextExtent one = measure("Course 12", 1, false), ten = measure("Course 12", 10, false);
    CHECK(std::abs(ten.width - 10 * one.width) < 1e-9);
    CHECK(measure("Course 12", 10, true).width > ten.width);
    CHECK(measure("", 10, false).width == 0);
}

TEST_CASE("Hostile text becomes one line and stays a sound file") {
    const ScratchDirectory scratch;
    const std::filesystem::path file = scratch.path() / "text.pdf";
    std::string bad = "tab\there\nline\r\xff\xfe broken \x01 end";
    put_bytes(file, pdf_bytes({sheet_with({text_at({20, 100}, bad, 5)})}, bad));
    CHECK(output_of({"qpdf", "--check", file.string()}).find("No syntax") != std::string::npos);
    CHECK(text_of(file).find("broken") != std::string::npos);
}

TEST_CASE("What cannot be painted is refused in one sentence") {
    CHECK_THROWS_AS(pdf_bytes({}, "None"), std::runtime_error);
    for (const double bad :
         {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
        Sheet sheet;
        add_line(sheet, {0, bad}, {10, 10}, pens::cut);
        CHECK_THROWS_AS(pdf_bytes({sheet}, "Bad"), std::runtime_error);
        Sheet wide;
        wide.width = bad;
        CHECK_THROWS_AS(pdf_bytes({wide}, "Bad"), std::runtime_error);
    }
    Sheet huge;
    huge.width = 6000;
    CHECK_THROWS_AS(pdf_bytes({huge}, "Huge"), std::runtime_error);
    CHECK_THROWS_AS(png_bytes(Sheet{}, 1e9), std::runtime_error);
    CHECK_THROWS_AS(png_bytes(Sheet{}, -1), std::runtime_error);
}

TEST_CASE("A picture has the sheet's size in dots, and the same bytes twice") {
    Sheet sheet;
    add_fill(sheet, PaperBox{10, 10, 60, 30}, {0.5});
    const std::string png = png_bytes(sheet, 72);
    REQUIRE(png.size() > 24);
    CHECK(png.substr(1, 3) == "PNG");
    const auto number = [&](std::size_t at) { // big-endian, in the header that comes first
        unsigned value = 0;
        for (std::size_t i = 0; i < 4; ++i)
            value = value * 256 + static_cast<unsigned char>(png[at + i]);
        return value;
    };
    CHECK(number(16) == 612);
    CHECK(number(20) == 792);
    CHECK(png_bytes(sheet, 72) == png);
}

TEST_CASE("Fills are even-odd and bulges are arcs of their sweep") {
    // A ring between two circles of 20 and 10 mm, each of two half circles (bulge 1).
    FillItem ring;
    ring.ink = {0};
    for (const double radius : {20.0, 10.0}) {
        FillItem::Loop loop{{100 + radius, 150}, {}};
        loop.edges.push_back({{100 - radius, 150}, 1});
        loop.edges.push_back({{100 + radius, 150}, 1});
        ring.loops.push_back(loop);
    }
    const ScratchDirectory scratch;
    const std::filesystem::path file = scratch.path() / "ring.pdf";
    put_bytes(file, pdf_bytes({sheet_with({ring})}, "Ring"));
    std::istringstream picture(output_of({"pdftoppm", "-r", "254", "-gray", file.string()}));
    std::string kind;
    int width = 0, height = 0, most = 0;
    picture >> kind >> width >> height >> most;
    picture.get();
    double dark = 0;
    for (int i = 0; i < width * height; ++i)
        dark += (255 - picture.get()) / 255.0;
    // 10 dots to the mm: area in mm2, against pi (R^2 - r^2).
    CHECK(std::abs(dark / 100 - pi * (400 - 100)) < 3);
    const InkBox box = ink_of(file, 254);
    CHECK(std::abs(box.right - box.left - 400) <= 1);
    CHECK(std::abs(box.bottom - box.top - 400) <= 1);
}

TEST_CASE("A hatch stays within its region") {
    FillItem region;
    region.hatch_spacing = 2;
    region.hatch.width = 0.2;
    region.loops.push_back(
        {{50, 50}, {{{80, 50}, 0}, {{80, 70}, 0}, {{50, 70}, 0}, {{50, 50}, 0}}});
    const ScratchDirectory scratch;
    const std::filesystem::path file = scratch.path() / "hatch.pdf";
    put_bytes(file, pdf_bytes({sheet_with({region})}, "Hatch"));
    const InkBox box = ink_of(file, 254);
    CHECK(box.left >= 498);
    CHECK(box.right <= 802);
    CHECK(box.bottom - box.top >= 190);
    CHECK(box.bottom - box.top <= 203);
}
