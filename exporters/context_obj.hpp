// The shapes of [context.NAME]: OBJ files of other origin, read, placed, and put into models.
#pragma once

#include "geometry/design/design.hpp"
#include "geometry/solids/solid_model.hpp"

#include <string>

namespace coilwright {

/// Larger is no furniture.
inline constexpr std::size_t most_context_bytes = std::size_t{64} << 20;

/// A shape as the file has it, or the line that is wrong and why (line 0: the file as a whole).
struct ContextShape {
    Mesh mesh; // any triangles: they need not be closed
    int line = 0;
    std::string fault;
    bool ok() const { return fault.empty(); }
};

/// Reads an OBJ file through tinyobjloader, after a check of every vertex and face of our own:
/// numbers that are none, faces of less than three corners or of vertices that are not there yet,
/// are refused with their line. Polygons become triangles; materials, normals and everything else
/// are passed over.
ContextShape read_context_obj(const std::string& text);

/// The mesh where the design puts it: scaled, turned up, turned about its own origin, moved.
Mesh placed_mesh(const Mesh& mesh, const ContextObject& object);

/// A part for the models, under the group "CONTEXT" that add_context makes.
void add_context(SolidModel& model, const ContextObject& object, Mesh placed);

} // namespace coilwright
