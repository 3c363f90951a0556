#include "geometry/drawing/scale.hpp"

namespace coilwright {
namespace {

const std::vector<Scale>& metric_scales() {
    static const std::vector<Scale> scales = [] {
        std::vector<Scale> made;
        for (const int per :
             {1, 2, 5, 10, 20, 25, 50, 75, 100, 125, 200, 250, 500, 1000, 2000, 5000, 10000, 20000})
            made.push_back({per, "1:" + std::to_string(per)});
        return made;
    }();
    return scales;
}

const std::vector<Scale>& foot_scales() {
    static const std::vector<Scale> scales = {{1, "full size (1:1)"},
                                              {2, "6 in = 1 ft (1:2)"},
                                              {4, "3 in = 1 ft (1:4)"},
                                              {8, "1-1/2 in = 1 ft (1:8)"},
                                              {12, "1 in = 1 ft (1:12)"},
                                              {16, "3/4 in = 1 ft (1:16)"},
                                              {24, "1/2 in = 1 ft (1:24)"},
                                              {32, "3/8 in = 1 ft (1:32)"},
                                              {48, "1/4 in = 1 ft (1:48)"},
                                              {64, "3/16 in = 1 ft (1:64)"},
                                              {96, "1/8 in = 1 ft (1:96)"},
                                              {128, "3/32 in = 1 ft (1:128)"},
                                              {192, "1/16 in = 1 ft (1:192)"},
                                              {240, "1 in = 20 ft (1:240)"},
                                              {480, "1 in = 40 ft (1:480)"},
                                              {600, "1 in = 50 ft (1:600)"},
                                              {1200, "1 in = 100 ft (1:1200)"},
                                              {2400, "1 in = 200 ft (1:2400)"},
                                              {6000, "1 in = 500 ft (1:6000)"},
                                              {12000, "1 in = 1000 ft (1:12000)"},
                                              {20000, "1:20000"}};
    return scales;
}

} // namespace

const std::vector<Scale>& standard_scales(DisplayUnit unit) {
    return unit == DisplayUnit::feet ? foot_scales() : metric_scales();
}

Scale largest_scale(double width, double height, double paper_width, double paper_height,
                    DisplayUnit unit) {
    const std::vector<Scale>& scales = standard_scales(unit);
    for (const Scale& scale : scales)
        if (scale.on_paper(width) <= paper_width && scale.on_paper(height) <= paper_height)
            return scale;
    return scales.back();
}

} // namespace coilwright
