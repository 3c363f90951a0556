#include "exporters/spreadsheet.hpp"

#include <algorithm>
#include <array>
#include <cerrno>
#include <clocale>
#include <cmath>
#include <map>
#include <mutex>
#include <stdexcept>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>
#include <xlsxwriter.h>

namespace coilwright {
namespace {

[[noreturn]] void fail(const std::string& why) {
    throw std::runtime_error("a spreadsheet could not be made: " + why);
}

/// The C locale for this thread: the library prints numbers with the C library's own functions.
class PlainNumbers {
public:
    PlainNumbers() : plain_(::newlocale(LC_ALL_MASK, "C", nullptr)), before_(::uselocale(plain_)) {}
    ~PlainNumbers() {
        ::uselocale(before_);
        ::freelocale(plain_);
    }
    PlainNumbers(const PlainNumbers&) = delete;
    PlainNumbers& operator=(const PlainNumbers&) = delete;

private:
    locale_t plain_, before_;
};

/// A file that has a name and lies in memory: the library writes to a path alone.
class MemoryFile {
public:
    MemoryFile() : descriptor_(::memfd_create("workbook", MFD_CLOEXEC)) {
        if (descriptor_ < 0)
            fail("no memory for it");
    }
    ~MemoryFile() { ::close(descriptor_); }
    MemoryFile(const MemoryFile&) = delete;
    MemoryFile& operator=(const MemoryFile&) = delete;

    std::string path() const { return "/proc/self/fd/" + std::to_string(descriptor_); }
    std::string bytes() const {
        struct stat about {};
        if (::fstat(descriptor_, &about) != 0 || about.st_size <= 0)
            fail("nothing was written");
        std::string all(static_cast<std::size_t>(about.st_size), '\0');
        for (std::size_t at = 0; at < all.size();) {
            const ssize_t got =
                ::pread(descriptor_, all.data() + at, all.size() - at, static_cast<off_t>(at));
            if (got < 0 && errno == EINTR)
                continue;
            if (got <= 0)
                fail("it could not be read back");
            at += static_cast<std::size_t>(got);
        }
        return all;
    }

private:
    int descriptor_;
};

void check(lxw_error error) {
    if (error != LXW_NO_ERROR)
        fail(lxw_strerror(error));
}

/// The formats of a workbook, each made once, by what they look like.
class Formats {
public:
    explicit Formats(lxw_workbook* book) : book_(book) {}

    lxw_format* of(const SheetCell& cell) {
        const bool is_text = std::holds_alternative<std::string>(cell.value);
        lxw_format*& format = made_[{cell.look, cell.format, is_text}];
        if (!format)
            format = make(cell.look, cell.format, is_text);
        return format;
    }

private:
    lxw_format* make(CellLook look, const std::string& number, bool is_text) {
        lxw_format* format = workbook_add_format(book_);
        if (!number.empty())
            format_set_num_format(format, number.c_str());
        format_set_align(format, LXW_ALIGN_VERTICAL_TOP);
        if (look == CellLook::title) {
            format_set_font_size(format, 16);
        } else if (is_text && look != CellLook::note) {
            format_set_text_wrap(format);
        }
        if (look == CellLook::title || look == CellLook::head || look == CellLook::strong)
            format_set_bold(format);
        if (look == CellLook::head) {
            format_set_bg_color(format, 0xE0E0E0);
            format_set_bottom(format, LXW_BORDER_THIN);
        }
        if (look == CellLook::strong)
            format_set_top(format, LXW_BORDER_THIN);
        if (look == CellLook::input)
            format_set_bg_color(format, 0xFFF6CC);
        return format;
    }

    lxw_workbook* book_;
    std::map<std::tuple<CellLook, std::string, bool>, lxw_format*> made_;
};

void write_cell(lxw_worksheet* sheet, lxw_row_t row, lxw_col_t column, const SheetCell& cell,
                lxw_format* format) {
    if (const double* number = std::get_if<double>(&cell.value)) {
        if (!std::isfinite(*number))
            fail("a number is not finite");
        check(worksheet_write_number(sheet, row, column, *number, format));
    } else if (const std::string* text = std::get_if<std::string>(&cell.value)) {
        check(worksheet_write_string(sheet, row, column, text->c_str(), format));
    } else if (const Formula* formula = std::get_if<Formula>(&cell.value)) {
        if (!std::isfinite(formula->value))
            fail("a number is not finite");
        check(worksheet_write_formula_num(sheet, row, column, formula->text.c_str(), format,
                                          formula->value));
    } else if (cell.look != CellLook::plain) {
        check(worksheet_write_blank(sheet, row, column, format));
    }
}

void add_bars(lxw_workbook* book, lxw_worksheet* sheet, const SheetBars& bars) {
    lxw_chart* chart = workbook_add_chart(book, LXW_CHART_BAR);
    lxw_chart_series* series = chart_add_series(chart, bars.names.c_str(), bars.values.c_str());
    lxw_chart_fill fill{};
    fill.color = 0x555555;
    chart_series_set_fill(series, &fill);
    chart_title_set_name(chart, bars.title.c_str());
    chart_legend_set_position(chart, LXW_CHART_LEGEND_NONE);
    chart_axis_set_reverse(chart->y_axis);
    check(worksheet_insert_chart(sheet, static_cast<lxw_row_t>(bars.row),
                                 static_cast<lxw_col_t>(bars.column), chart));
}

constexpr double line_height = 15, title_height = 24, most_height = 400; // points
constexpr double usual_width = 8.43; // of a column, characters of the usual font

/// Lines that a text takes when it is broken at blanks.
int lines_of(const std::string& text, double width) {
    int lines = 1;
    double used = 0, word = 0;
    const auto put = [&] {
        if (used > 0 && used + 1 + word > width) {
            ++lines;
            used = 0;
        }
        used += (used > 0 ? 1 : 0) + word;
        for (; used > width; used -= width)
            ++lines; // a word longer than its cell
        word = 0;
    };
    for (const char c : text) {
        if (c == ' ' || c == '\n')
            put();
        if (c == '\n') {
            ++lines;
            used = 0;
        } else if (c != ' ' && (static_cast<unsigned char>(c) & 0xC0) != 0x80) // once a letter
            ++word;
    }
    put();
    return lines;
}

/// Programs that open a workbook take the height of its rows as they stand: a text that is broken
/// into lines would lie over the rows below.
double height_of(const std::vector<SheetCell>& row, const std::vector<double>& widths) {
    double height = line_height;
    for (std::size_t c = 0; c < row.size(); ++c) {
        const auto* text = std::get_if<std::string>(&row[c].value);
        if (!text)
            continue;
        if (row[c].look == CellLook::title) {
            height = std::max(height, title_height);
        } else if (row[c].look != CellLook::note) {
            const bool bold = row[c].look == CellLook::head || row[c].look == CellLook::strong;
            const double width =
                (c < widths.size() ? widths[c] : usual_width) * (bold ? 0.85 : 0.95);
            height = std::max(height, line_height * lines_of(*text, width));
        }
    }
    return std::min(height, most_height);
}

void add_sheet(lxw_workbook* book, Formats& formats, const WorkSheet& content) {
    if (workbook_validate_sheet_name(book, content.name.c_str()) != LXW_NO_ERROR)
        fail("a sheet cannot be called \"" + content.name + "\"");
    lxw_worksheet* sheet = workbook_add_worksheet(book, content.name.c_str());
    if (!sheet)
        fail("out of memory");
    for (std::size_t i = 0; i < content.widths.size(); ++i) {
        const auto column = static_cast<lxw_col_t>(i);
        check(worksheet_set_column(sheet, column, column, content.widths[i], nullptr));
    }
    for (std::size_t r = 0; r < content.rows.size(); ++r)
        for (std::size_t c = 0; c < content.rows[r].size(); ++c)
            write_cell(sheet, static_cast<lxw_row_t>(r), static_cast<lxw_col_t>(c),
                       content.rows[r][c], formats.of(content.rows[r][c]));
    for (std::size_t r = 0; r < content.rows.size(); ++r) {
        const double height = height_of(content.rows[r], content.widths);
        if (height > line_height)
            check(worksheet_set_row(sheet, static_cast<lxw_row_t>(r), height, nullptr));
    }
    worksheet_set_landscape(sheet);
    worksheet_fit_to_pages(sheet, 1, 0);
    if (content.frozen_rows > 0) {
        worksheet_freeze_panes(sheet, static_cast<lxw_row_t>(content.frozen_rows), 0);
        check(worksheet_repeat_rows(sheet, 0, static_cast<lxw_row_t>(content.frozen_rows - 1)));
    }
    for (const SheetBars& bars : content.bars)
        add_bars(book, sheet, bars);
}

} // namespace

std::string cell_name(std::size_t row, std::size_t column, bool fixed) {
    std::string letters;
    for (std::size_t at = column + 1; at > 0; at = (at - 1) / 26)
        letters.insert(letters.begin(), static_cast<char>('A' + (at - 1) % 26));
    const std::string mark = fixed ? "$" : "";
    return mark + letters + mark + std::to_string(row + 1);
}

std::string xlsx_bytes(const std::string& title, const std::vector<WorkSheet>& sheets) {
    // One at a time: the library asks the C library for the date, whose answer is shared.
    static std::mutex one_at_a_time;
    const std::lock_guard<std::mutex> lock(one_at_a_time);
    const PlainNumbers plain;
    const MemoryFile file;
    const std::string path = file.path();
    lxw_workbook* book = workbook_new(path.c_str());
    if (!book)
        fail("out of memory");
    try {
        constexpr long first_of_1980 = 315532800; // seconds since 1970, Greenwich
        lxw_doc_properties properties{};
        std::string name = title;
        properties.title = name.data();
        properties.created = first_of_1980;
        check(workbook_set_properties(book, &properties));
        Formats formats(book);
        for (const WorkSheet& sheet : sheets)
            add_sheet(book, formats, sheet);
    } catch (...) {
        lxw_workbook_free(book);
        throw;
    }
    check(workbook_close(book));
    return file.bytes();
}

} // namespace coilwright
