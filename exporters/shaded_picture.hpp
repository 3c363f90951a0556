// A shaded picture of a model from any side, drawn in memory: no GPU, no display.
#pragma once

#include "exporters/png.hpp"
#include "geometry/base/bearing.hpp"
#include "geometry/solids/solid_model.hpp"

namespace coilwright {

/// A parallel view from a bearing and `pitch` degrees above the level.
struct PictureView {
    Bearing from;
    double pitch = 20;
    int width = 1200, height = 900; // pixels, at most: what would stay white is left off
};

/// The model in the colours of its materials, in sunlight from the viewer's left with shadows, an
/// even sky, edges drawn darker, on white; as large as the picture allows, nine samples a pixel.
/// What is nearer hides what is behind (a depth for each sample). Parts need not be closed; both
/// sides of a face are shown. Reflected light is that of matt surfaces, linear, encoded as sRGB.
/// Nothing but white for a model without triangles.
Pixels shaded_picture(const SolidModel& model, const PictureView& view);

} // namespace coilwright
