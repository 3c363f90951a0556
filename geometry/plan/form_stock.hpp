// The boards that forms are made of, and how many a form takes.
#pragma once

#include "geometry/base/length.hpp"

namespace coilwright {

/// Metres. Common practice, no source; in feet: 3/4 in boards and battens, the battens 2-1/2 in
/// wide; in metres 18 mm, 20 mm and 60 mm.
struct FormStock {
    double board = 0, batten = 0, batten_width = 0;
    double span = 0.6;      // most between faces, and between stiffeners along an edge
    double wedge = 0;       // a form stands this much above its sill, on folding wedges
    double board_width = 0; // of a profile board
};
FormStock form_stock(DisplayUnit unit);

/// The boards of one form: faces a span apart or less, battens along their edge, stiffeners between
/// each two faces.
struct FormBoards {
    int faces = 2;
    int battens = 2;
    int stiffeners = 3; // between two faces
    double stiffener_length = 0;
};

/// `girth`: of the edge under battens; a closed one (a circle) has no feet. Edge 2 m, 0.5 m deep,
/// in metres: 2 faces, 33 battens, 5 stiffeners of 0.464 m. Precondition: both lengths over 0.
FormBoards form_boards(double girth, double depth, bool closed, const FormStock& stock);

} // namespace coilwright
