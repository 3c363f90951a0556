#include "exporters/pdf.hpp"

#include "exporters/paint.hpp"
#include "exporters/text_setting.hpp"

#include <cairo-pdf.h>
#include <cairomm/surface.h>

#include <cmath>
#include <stdexcept>

namespace coilwright {
namespace {

constexpr double points_per_mm = 72 / 25.4;

std::string write_pdf(const std::vector<Sheet>& sheets, const std::string& title) {
    std::string bytes;
    const auto take = [&bytes](const unsigned char* data, unsigned int length) {
        bytes.append(reinterpret_cast<const char*>(data), length);
        return CAIRO_STATUS_SUCCESS;
    };
    const auto surface = Cairo::PdfSurface::create_for_stream(
        take, sheets.front().width * points_per_mm, sheets.front().height * points_per_mm);
    cairo_surface_t* pdf = surface->cobj();
    cairo_pdf_surface_set_metadata(pdf, CAIRO_PDF_METADATA_TITLE, one_line(title).c_str());
    cairo_pdf_surface_set_metadata(pdf, CAIRO_PDF_METADATA_CREATOR, "Coilwright");
    // Cairo would take the clock. A constant keeps the bytes of a design the same on every day.
    cairo_pdf_surface_set_metadata(pdf, CAIRO_PDF_METADATA_CREATE_DATE, "2000-01-01T00:00:00Z");
    cairo_pdf_surface_set_metadata(pdf, CAIRO_PDF_METADATA_MOD_DATE, "2000-01-01T00:00:00Z");
    const auto context = Cairo::Context::create(surface);
    for (std::size_t i = 0; i < sheets.size(); ++i) {
        const Sheet& sheet = sheets[i];
        surface->set_size(sheet.width * points_per_mm, sheet.height * points_per_mm);
        context->save();
        use_millimetres(context, sheet.height, points_per_mm);
        paint(context, sheet);
        context->restore();
        const std::string target = "page=" + std::to_string(i + 1) + " pos=[0 0]";
        cairo_pdf_surface_add_outline(pdf, CAIRO_PDF_OUTLINE_ROOT, one_line(sheet.title).c_str(),
                                      target.c_str(), static_cast<cairo_pdf_outline_flags_t>(0));
        context->show_page();
    }
    surface->finish();
    if (cairo_surface_status(pdf) != CAIRO_STATUS_SUCCESS)
        throw std::runtime_error(cairo_status_to_string(cairo_surface_status(pdf)));
    return bytes;
}

std::string write_png(const Sheet& sheet, double dots_per_inch) {
    const double dots_per_mm = dots_per_inch / 25.4;
    const double width = std::round(sheet.width * dots_per_mm);
    const double height = std::round(sheet.height * dots_per_mm);
    if (!(width >= 1 && height >= 1 && width <= 20000 && height <= 20000))
        throw std::runtime_error("A picture must be 1 to 20000 pixels a side.");
    const auto surface = Cairo::ImageSurface::create(
        Cairo::Surface::Format::RGB24, static_cast<int>(width), static_cast<int>(height));
    const auto context = Cairo::Context::create(surface);
    context->set_source_rgb(1, 1, 1);
    context->paint();
    use_millimetres(context, sheet.height, dots_per_mm);
    paint(context, sheet);
    surface->flush();
    std::string bytes;
    surface->write_to_png_stream([&bytes](const unsigned char* data, unsigned int length) {
        bytes.append(reinterpret_cast<const char*>(data), length);
        return CAIRO_STATUS_SUCCESS;
    });
    return bytes;
}

/// Cairo, Glib and the standard library each throw their own; callers see one kind.
template <typename Write>
std::string guarded(const char* what, const Write& write) {
    try {
        return write();
    } catch (const MissingFont&) {
        throw;
    } catch (const std::exception& fault) {
        throw std::runtime_error(std::string(what) + ": " + fault.what());
    } catch (...) {
        throw std::runtime_error(std::string(what) + ": a library failed without saying why.");
    }
}

} // namespace

MeasureText pango_measure() {
    measure_text("0", 4, false); // fails here and not in the middle of a layout
    return [](const std::string& text, double size, bool bold) {
        return measure_text(text, size, bold);
    };
}

std::string pdf_bytes(const std::vector<Sheet>& sheets, const std::string& title) {
    return guarded("Could not make the PDF", [&] {
        if (sheets.empty())
            throw std::runtime_error("it has no sheets");
        for (const Sheet& sheet : sheets)
            require_paintable(sheet);
        return write_pdf(sheets, title);
    });
}

std::string png_bytes(const Sheet& sheet, double dots_per_inch) {
    return guarded("Could not make the picture", [&] {
        require_paintable(sheet);
        return write_png(sheet, dots_per_inch);
    });
}

} // namespace coilwright
