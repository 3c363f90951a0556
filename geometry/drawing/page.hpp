// What every sheet shares: margins, the foot with the caution and the check ruler, and blocks of
// text, tables and drawings that flow from sheet to sheet.
#pragma once

#include "geometry/drawing/table.hpp"
#include "geometry/drawing/text_layout.hpp"
#include "geometry/plan/plan_building.hpp"

#include <functional>
#include <string>
#include <vector>

namespace coilwright {

/// What all pages are drawn from.
struct Drafting {
    const BuildingPlan& plan;
    PaperSize paper;
    const MeasureText& measure;
    const Schedule& schedule() const { return plan.schedule; }
    DisplayUnit unit() const { return plan.schedule.unit; }
    std::string length(double metres) const { return length_text(metres, unit()); }
};

/// A sheet in the making and the part of it that is still free to fill, from the top.
struct Page {
    Sheet sheet;
    PaperBox body;
};

/// Free edge that common printers leave white.
inline constexpr double page_margin = 10; // mm
/// The frame: nothing is drawn outside it.
PaperBox frame_of(double width, double height);

/// A sheet with its foot (caution, check ruler, the design's name, what the sheet is).
Page new_page(const Drafting& drafting, const std::string& title, bool landscape = false);
/// The upper half of a sheet, without a foot: what stands on it is moved onto a sheet that two
/// share.
Page half_page(const Drafting& drafting, const std::string& title);
/// One sheet with a foot that holds two halves, the second below the first.
Sheet join_halves(const Drafting& drafting, const std::string& title, const Sheet& upper,
                  const Sheet& lower);
/// The same with the title at its head.
Page titled_page(const Drafting& drafting, const std::string& title, const std::string& under);
/// Writes "sheet i of n" into each foot.
void number_sheets(std::vector<Sheet>& sheets);

/// A bar of 100 mm with centimetres above and of 4 in below, its left end at `at`. 104 mm wide with
/// its figures, 9.5 mm high.
void add_check_ruler(Sheet& sheet, Vec2 at);

/// Fills pages from the top; starts another where a block does not fit.
class Flow {
public:
    /// `text_size` is that of items, tables and paragraphs that name none; headings follow it.
    /// `draw` false: all takes its room and turns its pages, but nothing is drawn.
    Flow(const Drafting& drafting, std::function<Page()> start_page, double text_size = sizes::body,
         double row_part = usual_row_part, bool draw = true);

    /// Free height below what is on the page.
    double room() const { return y_ - page_.body.bottom; }
    double width() const { return page_.body.width(); }
    const MeasureText& measure() const { return drafting_.measure; }
    /// Starts a new page unless so much height is free (or the page is still empty).
    void need(double height);
    /// White space, none at the head of a page.
    void space(double height);
    /// A block of its height: called with the sheet and its box.
    void block(double height, const std::function<void(Sheet&, const PaperBox&)>& draw);
    /// The same at the foot of the page's body.
    void at_bottom(double height, const std::function<void(Sheet&, const PaperBox&)>& draw);
    void heading(const std::string& text, double keep_with = 15);
    void paragraph(const std::string& text, double size = 0, bool bold = false);
    /// Paragraphs with a bullet, or a box to tick.
    enum class Mark { dot, tick };
    void item(const std::string& text, Mark mark, bool bold = false);
    /// Several of them: in two columns where that takes a fifth less height.
    struct Item {
        std::string text;
        bool bold = false;
    };
    void items(const std::vector<Item>& all, Mark mark);
    /// A long list in two columns, over several pages where it must be.
    void list(const std::vector<Item>& all, Mark mark);
    /// A table under a heading (may be empty), over several pages where it must be.
    void table(const std::string& heading_text, const Table& table, double wanted = sizes::body,
               double least = sizes::small, bool spread = true);

    std::vector<Sheet> finish();
    std::size_t pages() const { return done_.size() + 1; }

private:
    void turn_page();

    const Drafting& drafting_;
    std::function<Page()> start_page_;
    double column_width() const { return (width() - 4) / 2; } // of two
    double item_height(const Item& one, double width, double indent) const;
    /// Items `first` to `last` - 1, the right column from `split` on, in a block of its height.
    void two_columns(const std::vector<Item>& all, std::size_t first, std::size_t split,
                     std::size_t last, Mark mark);
    void draw_item(Sheet& sheet, Vec2 top_left, double width, const Item& one, Mark mark) const;

    double text_size_;
    double row_part_;
    bool draw_;
    Page page_;
    double y_ = 0;
    bool empty_ = true;
    std::vector<Sheet> done_;
};

} // namespace coilwright
