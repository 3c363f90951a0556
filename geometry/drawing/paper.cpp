#include "geometry/drawing/crew_book.hpp"

namespace coilwright {

PaperSize letter_paper() { return {"letter", 215.9, 279.4}; }
PaperSize a4_paper() { return {"a4", 210, 297}; }

} // namespace coilwright
