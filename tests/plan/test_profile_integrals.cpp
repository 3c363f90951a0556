#include "geometry/plan/profile.hpp"

#include "tests/plan/reference_curve.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;

namespace {

void check_near(double value, long double reference, double whole, double allowed) {
    CHECK(std::abs(value - static_cast<double>(reference)) <= allowed * whole);
}

} // namespace

TEST_CASE("closed forms agree with Simpson's rule on the parametric curve") {
    Seeded seeded(31);
    for (int trial = 0; trial < 250; ++trial) {
        const Profile profile = random_profile(seeded);
        const ReferenceCurve reference =
            reference_curve(profile.kind, profile.half_span, profile.rise);
        double y0 = 0, y1 = profile.rise;
        if (trial % 3 != 0) {
            y0 = profile.rise * seeded.between(0, 1);
            y1 = profile.rise * seeded.between(0, 1);
            if (y0 > y1)
                std::swap(y0, y1);
        }
        CAPTURE(trial, word(profile.kind), profile.half_span, profile.rise, y0, y1);
        const double h = profile.rise;
        check_near(area_between(profile, y0, y1), reference.area(y0, y1),
                   area_between(profile, 0, h), 1e-11);
        check_near(length_between(profile, y0, y1), reference.length(y0, y1),
                   length_between(profile, 0, h), 1e-11);
        check_near(volume_between(profile, y0, y1), reference.volume(y0, y1),
                   volume_between(profile, 0, h), 1e-11);
        check_near(surface_between(profile, y0, y1), reference.surface(y0, y1),
                   surface_between(profile, 0, h), 1e-11);
    }
}

TEST_CASE("thin slices keep their digits, down to the crown") {
    Seeded seeded(37);
    for (int trial = 0; trial < 250; ++trial) {
        Profile profile = random_profile(seeded);
        if (profile.kind == ProfileKind::catenary) // reckoned as differences of the whole
            profile = round_profile(profile.half_span);
        const double y0 = profile.rise * seeded.between(0.05, 0.99);
        const double y1 = y0 + 1e-4 * profile.rise;
        CAPTURE(trial, word(profile.kind), profile.half_span, profile.rise, y0);
        const double x0 = half_width(profile, y0), xm = half_width(profile, (y0 + y1) / 2),
                     x1 = half_width(profile, y1);
        const double height = y1 - y0; // Simpson's rule, error of the fourth order
        CHECK(area_between(profile, y0, y1) ==
              Approx(height * 2 * (x0 + 4 * xm + x1) / 6).epsilon(1e-8));
        CHECK(volume_between(profile, y0, y1) ==
              Approx(height * pi * (x0 * x0 + 4 * xm * xm + x1 * x1) / 6).epsilon(1e-8));
    }
}

TEST_CASE("Pappus: volume and surface are area and length times the path of their centroid") {
    // Pappus of Alexandria; Guldinus 1641. Centroids by cutting the plane figure into triangles
    // (shoelace) and the curve into chords, at two finenesses, and Richardson's extrapolation.
    Seeded seeded(41);
    for (int trial = 0; trial < 60; ++trial) {
        const Profile profile = random_profile(seeded);
        const ReferenceCurve curve = reference_curve(profile.kind, profile.half_span, profile.rise);
        CAPTURE(trial, word(profile.kind), profile.half_span, profile.rise);
        const auto moments = [&](int pieces) {
            const long double from = curve.s_at_height(0), to = curve.s_at_height(profile.rise);
            std::array<long double, 4> m{}; // area, its moment, length, its moment
            for (int i = 0; i < pieces; ++i) {
                const long double s0 = from + (to - from) * i / pieces;
                const long double s1 = from + (to - from) * (i + 1) / pieces;
                const long double x0 = curve.x(s0), y0 = curve.y(s0), x1 = curve.x(s1),
                                  y1 = curve.y(s1);
                const long double triangle = (x0 * y1 - x1 * y0) / 2,
                                  chord = std::hypot(x1 - x0, y1 - y0);
                m[0] += triangle;
                m[1] += triangle * (x0 + x1) / 3;
                m[2] += chord;
                m[3] += chord * (x0 + x1) / 2;
            }
            return m;
        };
        const auto coarse = moments(2000), fine = moments(4000);
        std::array<double, 4> m{};
        for (int i = 0; i < 4; ++i)
            m[i] = static_cast<double>((4 * fine[i] - coarse[i]) / 3);
        const double h = profile.rise;
        CHECK(area_between(profile, 0, h) == Approx(2 * m[0]).epsilon(1e-9));
        CHECK(length_between(profile, 0, h) == Approx(m[2]).epsilon(1e-9));
        const double half_area = area_between(profile, 0, h) / 2;
        CHECK(volume_between(profile, 0, h) ==
              Approx(2 * pi * (m[1] / m[0]) * half_area).epsilon(1e-9));
        CHECK(surface_between(profile, 0, h) ==
              Approx(2 * pi * (m[3] / m[2]) * length_between(profile, 0, h)).epsilon(1e-9));
    }
}

TEST_CASE("drawn: integrals agree with a fine sum over each span") {
    Seeded seeded(43);
    for (int trial = 0; trial < 40; ++trial) {
        const Profile profile = random_drawn(seeded);
        CAPTURE(trial, profile.knots.size());
        const auto sums = [&](int pieces) {
            std::array<double, 4> m{}; // area, length, volume, surface of frusta
            for (std::size_t k = 0; k + 1 < profile.knots.size(); ++k) {
                const double from = profile.knots[k].height, to = profile.knots[k + 1].height;
                for (int i = 0; i < pieces; ++i) {
                    const double y0 = from + (to - from) * i / pieces;
                    const double y1 = from + (to - from) * (i + 1) / pieces;
                    const double x0 = half_width(profile, y0), x1 = half_width(profile, y1);
                    const double chord = std::hypot(x1 - x0, y1 - y0);
                    m[0] += (x0 + x1) * (y1 - y0);
                    m[1] += chord;
                    m[2] += pi * (y1 - y0) * (x0 * x0 + x0 * x1 + x1 * x1) / 3;
                    m[3] += pi * (x0 + x1) * chord;
                }
            }
            return m;
        };
        const auto coarse = sums(1000), fine = sums(2000);
        const double h = profile.rise;
        const double value[] = {area_between(profile, 0, h), length_between(profile, 0, h),
                                volume_between(profile, 0, h), surface_between(profile, 0, h)};
        for (int i = 0; i < 4; ++i) {
            CAPTURE(i);
            CHECK(value[i] == Approx((4 * fine[i] - coarse[i]) / 3).epsilon(1e-9));
        }
    }
}

TEST_CASE("integrals over parts add up, and stop at the ends of the curve") {
    Seeded seeded(47);
    using Integral = double (*)(const Profile&, double, double);
    const Integral integrals[] = {area_between, length_between, volume_between, surface_between};
    for (int trial = 0; trial < 300; ++trial) {
        const Profile profile = trial % 5 == 0 ? random_drawn(seeded) : random_profile(seeded);
        const double h = profile.rise, y = h * seeded.between(0, 1);
        CAPTURE(trial, word(profile.kind), profile.half_span, h, y);
        for (const Integral integral : integrals) {
            const double whole = integral(profile, 0, h);
            CHECK(integral(profile, 0, y) + integral(profile, y, h) ==
                  Approx(whole).epsilon(1e-12));
            CHECK(integral(profile, -3, h + 3) == whole);
            CHECK(integral(profile, y, y) == 0);
            CHECK(integral(profile, y, y / 2) == 0);
            CHECK(integral(profile, h, h + 1) == 0);
        }
    }
}

TEST_CASE("integrals scale with length, area and volume") {
    Seeded seeded(53);
    for (int trial = 0; trial < 100; ++trial) {
        const double a = seeded.between(0.5, 2), h = a * seeded.between(1, 4), k = 3.7;
        const Profile one = catenary_profile(a, h), other = catenary_profile(k * a, k * h);
        CAPTURE(trial, a, h);
        CHECK(length_between(other, 0, k * h) == Approx(k * length_between(one, 0, h)));
        CHECK(area_between(other, 0, k * h) == Approx(k * k * area_between(one, 0, h)));
        CHECK(surface_between(other, 0, k * h) == Approx(k * k * surface_between(one, 0, h)));
        CHECK(volume_between(other, 0, k * h) == Approx(k * k * k * volume_between(one, 0, h)));
    }
}
