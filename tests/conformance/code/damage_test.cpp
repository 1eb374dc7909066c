// What codes are for: they are read after a winter. A few labels only; thawslip_damage_lab prints
// the tables over many.
#include "damage/candidates.h"
#include "damage/hard_photo.h"
#include "damage/readers.h"
#include "damage/winters.h"

#include <doctest/doctest.h>

using namespace thawslip::damage;

namespace {

constexpr Situation usual{200, 36.0, 300.0};

const Printed& usual_code() {
    constexpr double least_mm = 0.4;
    static const auto codes = candidates(usual, least_mm);
    return codes.at(chosen(codes, usual, least_mm));
}

/// How many of so many labels, 200 characters in a 36 mm square on a 4 × 2 in label, are still
/// read by ZXing-C++.
int labels_read(Winter winter, int labels) {
    int read = 0;
    for (int i = 0; i < labels; ++i) {
        read += read_after(usual_code(), {winter}, static_cast<std::uint64_t>(i)).zxing ? 1 : 0;
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

TEST_CASE("photographs that a plain reader gives up are read: bent, in shadows, out of focus") {
    // Of these, by a poor camera, ZXing-C++ alone reads none in any turn, size or threshold.
    constexpr std::pair<Hardship, std::uint64_t> photos[] = {
        {Hardship::Bottle, 0},  {Hardship::Bottle, 3},  {Hardship::Bottle, 6},
        {Hardship::FullBag, 5}, {Hardship::Shadows, 2}, {Hardship::Shadows, 6},
        {Hardship::Blur, 8},    {Hardship::Blur, 9},    {Hardship::Together, 0},
        {Hardship::Together, 1}};
    int read = 0;
    for (const auto& [hardship, seed] : photos) {
        const auto photo = hard_photo(usual_code(), hardship, Camera::Poor, seed);
        read += zxing_reads(photo, usual_code().text) ? 1 : 0;
    }
    CHECK(read >= 9); // of ten: compilers round differently
}
