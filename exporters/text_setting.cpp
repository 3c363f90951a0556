#include "exporters/text_setting.hpp"

#include "exporters/pdf.hpp"

#include <fontconfig/fontconfig.h>
#include <pango/pangocairo.h>
#include <pango/pangofc-fontmap.h>
#include <pangomm/context.h>
#include <pangomm/init.h>
#include <pangomm/layout.h>

#include <algorithm>
#include <memory>
#include <mutex>
#include <stdexcept>
#include <unordered_map>
#include <vector>

namespace coilwright {
namespace {

constexpr const char* family = "DejaVu Sans";
// Every line is set once at this size and scaled when it is measured or painted: so both agree to
// the last digit, and one font serves all sizes.
constexpr double set_size = 32;
constexpr std::size_t most_lines_kept = 12000;

struct FreeFont {
    void operator()(FcPattern* p) const { FcPatternDestroy(p); }
    void operator()(FcObjectSet* p) const { FcObjectSetDestroy(p); }
    void operator()(FcFontSet* p) const { FcFontSetDestroy(p); }
    void operator()(FcCharSet* p) const { FcCharSetDestroy(p); }
};
template <typename T>
using FontPtr = std::unique_ptr<T, FreeFont>;

/// The upright faces of the family at normal width, as the system has them: (file, signs).
struct Face {
    std::string file;
    FontPtr<FcCharSet> signs;
};

Face find_face(FcConfig* system, int weight) {
    FontPtr<FcPattern> wanted(FcPatternCreate());
    FcPatternAddString(wanted.get(), FC_FAMILY, reinterpret_cast<const FcChar8*>(family));
    FcPatternAddInteger(wanted.get(), FC_WEIGHT, weight);
    FcPatternAddInteger(wanted.get(), FC_SLANT, FC_SLANT_ROMAN);
    FcPatternAddInteger(wanted.get(), FC_WIDTH, FC_WIDTH_NORMAL);
    FontPtr<FcObjectSet> keys(FcObjectSetBuild(FC_FILE, FC_CHARSET, nullptr));
    FontPtr<FcFontSet> found(FcFontList(system, wanted.get(), keys.get()));
    Face face;
    for (int i = 0; found && i < found->nfont; ++i) {
        FcChar8* file = nullptr;
        FcCharSet* signs = nullptr;
        if (FcPatternGetString(found->fonts[i], FC_FILE, 0, &file) != FcResultMatch ||
            FcPatternGetCharSet(found->fonts[i], FC_CHARSET, 0, &signs) != FcResultMatch)
            continue;
        const std::string path = reinterpret_cast<const char*>(file);
        if (!face.file.empty() && path >= face.file)
            continue; // several copies: the first by name, whatever order the system lists them in
        face.file = path;
        face.signs.reset(FcCharSetCopy(signs));
    }
    if (face.file.empty())
        throw MissingFont(
            "the sheets are set in the font DejaVu Sans, regular and bold, which is not "
            "installed (Debian: fonts-dejavu-core)");
    return face;
}

Glib::RefPtr<Pango::Context> make_context(FcConfig* fonts) {
    PangoFontMap* map = pango_cairo_font_map_new_for_font_type(CAIRO_FONT_TYPE_FT);
    if (!map)
        throw std::runtime_error("Pango has no FreeType fonts here.");
    if (fonts)
        pango_fc_font_map_set_config(PANGO_FC_FONT_MAP(map), fonts);
    pango_cairo_font_map_set_resolution(PANGO_CAIRO_FONT_MAP(map), 72);
    PangoContext* context = pango_font_map_create_context(map);
    g_object_unref(map); // the context keeps it
    // Widths that do not depend on the device, the screen's settings or the locale.
    cairo_font_options_t* options = cairo_font_options_create();
    cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
    cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
    pango_cairo_context_set_font_options(context, options);
    cairo_font_options_destroy(options);
    pango_context_set_round_glyph_positions(context, FALSE);
    pango_context_set_language(context, pango_language_from_string("en"));
    pango_context_set_base_dir(context, PANGO_DIRECTION_LTR);
    return Glib::wrap(context);
}

/// All of Pango behind one lock: its font maps serve one thread at a time.
class Setter {
public:
    static Setter& shared() {
        static Setter* setter = new Setter; // never destroyed: Pango outlives main in other threads
        return *setter;
    }

    TextExtent measure(const std::string& text, double size, bool bold) {
        const std::lock_guard<std::mutex> lock(mutex_);
        return scaled(line(text, bold).extent, size);
    }

    void show(const Cairo::RefPtr<Cairo::Context>& cairo, const TextItem& item) {
        const std::lock_guard<std::mutex> lock(mutex_);
        const Line& set = line(item.text, item.bold);
        const TextExtent box = scaled(set.extent, item.size);
        const double shift = item.align == Align::left     ? 0
                             : item.align == Align::centre ? box.width / 2
                                                           : box.width;
        cairo->save();
        cairo->translate(item.at.x(), item.at.y());
        cairo->rotate(item.turn);
        if (item.on_white) {
            const double pad = 0.15 * item.size;
            cairo->set_source_rgb(1, 1, 1);
            cairo->rectangle(-shift - pad, -box.descent - pad, box.width + 2 * pad,
                             box.ascent + box.descent + 2 * pad);
            cairo->fill();
        }
        cairo->set_source_rgb(item.ink.grey, item.ink.grey, item.ink.grey);
        cairo->translate(-shift, 0);
        cairo->scale(item.size / set_size, -item.size / set_size);
        cairo->move_to(0, 0);
        pango_cairo_show_layout_line(cairo->cobj(),
                                     pango_layout_get_line_readonly(set.layout->gobj(), 0));
        cairo->restore();
    }

private:
    Setter() {
        Pango::init();
        FcConfig* system = FcConfigReference(nullptr);
        Face regular = find_face(system, FC_WEIGHT_REGULAR);
        Face bold = find_face(system, FC_WEIGHT_BOLD);
        FcConfigDestroy(system);
        // A configuration with these two files alone: no substitution rule of the machine or of the
        // user's home can change what is set.
        FcConfig* own = FcConfigCreate();
        for (const Face* face : {&regular, &bold})
            if (!FcConfigAppFontAddFile(own, reinterpret_cast<const FcChar8*>(face->file.c_str())))
                throw std::runtime_error("Could not read the font " + face->file + ".");
        own_ = make_context(own);
        FcConfigDestroy(own); // the font map keeps it
        signs_[0] = std::move(regular.signs);
        signs_[1] = std::move(bold.signs);
    }

    bool covered(const std::string& line, bool bold) const {
        for (const char* p = line.c_str(); *p; p = g_utf8_next_char(p))
            if (!FcCharSetHasChar(signs_[bold].get(), g_utf8_get_char(p)))
                return false;
        return true;
    }

    /// A line as set at set_size.
    struct Line {
        Glib::RefPtr<Pango::Layout> layout;
        TextExtent extent;
    };

    static TextExtent scaled(const TextExtent& extent, double size) {
        const double factor = size / set_size;
        return {extent.width * factor, extent.ascent * factor, extent.descent * factor};
    }

    const Line& line(const std::string& text, bool bold) {
        std::unordered_map<std::string, Line>& lines = lines_[bold];
        const auto known = lines.find(text);
        if (known != lines.end())
            return known->second;
        if (lines.size() >= most_lines_kept)
            lines.clear();
        Line made;
        made.layout = layout(text, bold);
        made.extent = extent(made.layout);
        return lines.emplace(text, std::move(made)).first->second;
    }

    Glib::RefPtr<Pango::Layout> layout(const std::string& text, bool bold) {
        const std::string line = one_line(text);
        if (!covered(line, bold) && !others_)
            others_ = make_context(nullptr);
        const Glib::RefPtr<Pango::Layout> result =
            Pango::Layout::create(covered(line, bold) ? own_ : others_);
        PangoFontDescription* font = pango_font_description_new();
        pango_font_description_set_family_static(font, family);
        pango_font_description_set_weight(font, bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
        pango_font_description_set_absolute_size(font, set_size * PANGO_SCALE);
        pango_layout_set_font_description(result->gobj(), font);
        pango_font_description_free(font);
        // No ligatures: a search for "fill" shall find it in every reader.
        PangoAttrList* features = pango_attr_list_new();
        pango_attr_list_insert(features, pango_attr_font_features_new("liga=0, clig=0, dlig=0"));
        pango_layout_set_attributes(result->gobj(), features);
        pango_attr_list_unref(features);
        result->set_single_paragraph_mode(true);
        result->set_auto_dir(false);
        result->set_text(line);
        return result;
    }

    static TextExtent extent(const Glib::RefPtr<Pango::Layout>& line) {
        PangoRectangle ink{}, logical{};
        pango_layout_line_get_extents(pango_layout_get_line_readonly(line->gobj(), 0), &ink,
                                      &logical);
        const double unit = 1.0 / PANGO_SCALE;
        return {logical.width * unit, std::max(0, -ink.y) * unit,
                std::max(0, ink.y + ink.height) * unit};
    }

    std::mutex mutex_;
    Glib::RefPtr<Pango::Context> own_, others_;
    FontPtr<FcCharSet> signs_[2];
    std::unordered_map<std::string, Line> lines_[2]; // regular, bold
};

} // namespace

std::string one_line(const std::string& text) {
    std::unique_ptr<char, decltype(&g_free)> valid(
        g_utf8_make_valid(text.data(), static_cast<gssize>(text.size())), &g_free);
    std::string line;
    for (const char* p = valid.get(); *p; p = g_utf8_next_char(p)) {
        const gunichar sign = g_utf8_get_char(p);
        if (g_unichar_iscntrl(sign) || sign == 0x2028 || sign == 0x2029)
            line += ' ';
        else
            line.append(p, static_cast<std::size_t>(g_utf8_next_char(p) - p));
    }
    return line;
}

TextExtent measure_text(const std::string& text, double size, bool bold) {
    return Setter::shared().measure(text, size, bold);
}

void show_text(const Cairo::RefPtr<Cairo::Context>& context, const TextItem& item) {
    Setter::shared().show(context, item);
}

} // namespace coilwright
