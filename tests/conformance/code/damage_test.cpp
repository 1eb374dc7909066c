// What codes are for: they are read after a winter. A few labels only; thawslip_damage_lab prints
// the tables over many.
#include "damage/candidates.h"
#include "damage/winters.h"

#include <doctest/doctest.h>

using namespace thawslip::damage;

namespace {

/// How many of so many labels, 200 characters in a 36 mm square on a 4 × 2 in label, are still
/// read by ZXing-C++.
int labels_read(Winter winter, int labels) {
    constexpr Situation label{200, 36.0, 300.0};
    constexpr double least_mm = 0.4;
    const std::vector<Printed> codes = candidates(label, least_mm);
    const Printed& code = codes.at(chosen(codes, label, least_mm));
    int read = 0;
    for (int i = 0; i < labels; ++i) {
        read += read_after(code, {winter}, static_cast<std::uint64_t>(i)).zxing ? 1 : 0;
    }
    return read;
}

} // namespace

TEST_CASE("of labels with frost and a scuff, 99 in 100 are read") {
    CHECK(labels_read(Winter::FrostScuff, 30) == 30);
}

TEST_CASE("of labels with a tenth of the code smeared as well, 80 in 100 are read") {
    CHECK(labels_read(Winter::TenthSmeared, 15) >= 12);
}
