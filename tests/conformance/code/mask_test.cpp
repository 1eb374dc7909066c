// qrcodegen (Nayuki, QR Code generator library 1.8.0) weighs the masks in its own way, module by
// module; ours must come to the same symbol.
#include "code/capacity.h"
#include "code/draw.h"
#include "code/mask.h"
#include "support/random.h"

#include <doctest/doctest.h>
#include <qrcodegen/qrcodegen.hpp>

// src/code/mask.cpp once more, as libraries.cmake has it compiled.
namespace thawslip::code {
Symbol with_best_mask_at_O2(const Symbol& symbol);
Symbol with_best_mask_at_O3(const Symbol& symbol);
} // namespace thawslip::code

using namespace thawslip::code;
using qrcodegen::QrCode;
using qrcodegen::QrSegment;

namespace {

constexpr QrCode::Ecc qrcodegen_levels[] = {QrCode::Ecc::LOW, QrCode::Ecc::MEDIUM,
                                            QrCode::Ecc::QUARTILE, QrCode::Ecc::HIGH};

void check_same_symbol(const std::string& text, int version, Level level) {
    CAPTURE(text);
    CAPTURE(version);
    const auto expected = QrCode::encodeSegments({QrSegment::makeBytes({text.begin(), text.end()})},
                                                 qrcodegen_levels[static_cast<int>(level)], version,
                                                 version, -1, false);
    std::vector<bool> dark;
    for (int y = 0; y < expected.getSize(); ++y) {
        for (int x = 0; x < expected.getSize(); ++x) {
            dark.push_back(expected.getModule(x, y));
        }
    }
    const Symbol drawn = draw({{Mode::Byte, text}}, version, level);
    for (const Symbol& symbol : {drawn, with_best_mask_at_O2(drawn), with_best_mask_at_O3(drawn)}) {
        REQUIRE(symbol.mask == expected.getMask());
        REQUIRE(symbol.side == expected.getSize());
        const bool is_same = symbol.dark == dark;
        CHECK(is_same);
    }
}

std::string bytes_for(thawslip::test_support::Random& random, int version, Level level) {
    const auto room = static_cast<std::size_t>(blocks_of(version, level).data_codewords()) - 3;
    std::string text(random.below(room + 1), ' ');
    // Every other text is monotonous: such symbols show long runs and finder-like patterns.
    const bool monotonous = random.chance(2);
    for (char& c : text) {
        c = static_cast<char>(monotonous ? random.below(2) * 255 : random.below(256));
    }
    return text;
}

} // namespace

TEST_CASE("the mask is the one that another encoder prefers, in every version at every level") {
    thawslip::test_support::Random random{3};
    // Of one, a compiler's wrong code once chose right by chance. Symbols up to version 11, to 27
    // and to 40 are weighed each by code of their own: for each, these are more than 150.
    constexpr int texts_each = 3;
    for (int version = 1; version <= 40; ++version) {
        for (const Level level : {Level::Low, Level::Medium, Level::Quartile, Level::High}) {
            for (int text = 0; text < texts_each; ++text) {
                check_same_symbol(bytes_for(random, version, level), version, level);
            }
        }
    }
}

TEST_CASE("the mask is the one that another encoder prefers for two hundred texts") {
    thawslip::test_support::Random random{4};
    for (int i = 0; i < 200; ++i) {
        const int version = 1 + static_cast<int>(random.below(14));
        const auto level = static_cast<Level>(random.below(4));
        check_same_symbol(bytes_for(random, version, level), version, level);
    }
}

TEST_CASE("where two masks are nearly as good, the better one is chosen all the same") {
    // In the smallest symbols points are few: among so many, each weight decides somewhere.
    thawslip::test_support::Random random{5};
    for (int i = 0; i < 2000; ++i) {
        const int version = 1 + static_cast<int>(random.below(2));
        const auto level = static_cast<Level>(random.below(4));
        check_same_symbol(bytes_for(random, version, level), version, level);
    }
}
