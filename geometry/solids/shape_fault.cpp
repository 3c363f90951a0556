#include "geometry/solids/shape_fault.hpp"

namespace coilwright {

std::string fault_text(ShapeFault fault, const std::string& first, const std::string& second) {
    const std::string both = first == second ? first : first + " and " + second;
    switch (fault) {
    case ShapeFault::crossing:
        return both + " cut through each other where the model is finer than they are apart; move "
                      "them apart, or make the tolerance smaller.";
    case ShapeFault::touching:
        return both + " meet in a single point or line; move them apart or let them overlap.";
    case ShapeFault::open_boundary:
        return "The edges of " + both + " do not close around a face.";
    case ShapeFault::too_many_triangles:
        return both + " would need millions of triangles; make the tolerance larger.";
    case ShapeFault::tolerance:
        return "The tolerance of a model lies between 0.1 mm and 50 mm.";
    case ShapeFault::apart:
        return "A piece of " + first + " stands apart from the rest of " + second + ".";
    case ShapeFault::close_in_height:
        return "What starts or ends at " + both +
               " does so within a hundredth of a millimetre of height; make it one height, or move "
               "them apart.";
    case ShapeFault::undecided:
        return "Faces of " + both + " run too close to each other to tell them apart; move them.";
    case ShapeFault::not_proven:
        return "The model of " + both + " is not a sound solid at single precision.";
    }
    return {};
}

} // namespace coilwright
