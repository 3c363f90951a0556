#include "geometry/plan/form_stock.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

FormStock form_stock(DisplayUnit unit) {
    FormStock stock;
    if (unit == DisplayUnit::feet) {
        stock.board = stock.batten = 0.75 * metres_per_inch;
        stock.batten_width = 2.5 * metres_per_inch;
        stock.wedge = metres_per_inch;
        stock.board_width = 8 * metres_per_inch;
    } else {
        stock = {0.018, 0.020, 0.060, 0.6, 0.025, 0.2};
    }
    return stock;
}

FormBoards form_boards(double girth, double depth, bool closed, const FormStock& stock) {
    FormBoards boards;
    boards.faces = std::max(2, static_cast<int>(std::ceil(depth / stock.span - 1e-9)) + 1);
    boards.battens = std::max(2, static_cast<int>(std::floor(girth / stock.batten_width + 1e-9)));
    const int steps = std::max(2, static_cast<int>(std::ceil(girth / stock.span - 1e-9)));
    boards.stiffeners = closed ? steps : steps + 1;
    boards.stiffener_length = (depth - boards.faces * stock.board) / (boards.faces - 1);
    return boards;
}

} // namespace coilwright
