#include "layout/sheets/paper.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace thawslip::layout {
namespace {

using namespace literals;

constexpr std::array all_papers{
    Paper{"a3", "iso_a3_297x420mm", {297_mm, 420_mm}},
    Paper{"legal", "na_legal_8.5x14in", {8.5_in, 14_in}},
    Paper{"letter", "na_letter_8.5x11in", {8.5_in, 11_in}},
    Paper{"a4", "iso_a4_210x297mm", {210_mm, 297_mm}},
    Paper{"a5", "iso_a5_148x210mm", {148_mm, 210_mm}},
    Paper{"5x8in", "na_index-5x8_5x8in", {5_in, 8_in}},
    Paper{"5x7in", "na_5x7_5x7in", {5_in, 7_in}},
    Paper{"4x6in", "na_index-4x6_4x6in", {4_in, 6_in}},
    Paper{"a6", "iso_a6_105x148mm", {105_mm, 148_mm}},
    Paper{"3x5in", "na_index-3x5_3x5in", {3_in, 5_in}},
    Paper{"a7", "iso_a7_74x105mm", {74_mm, 105_mm}},
};

Size turned(Size size) {
    return {size.height, size.width};
}

bool are_equal(Size a, Size b) {
    constexpr double slack_mm = 0.01; // the unit of IPP media sizes
    return std::abs((a.width - b.width).in_millimetres()) < slack_mm &&
           std::abs((a.height - b.height).in_millimetres()) < slack_mm;
}

} // namespace

std::span<const Paper> papers() {
    return all_papers;
}

std::optional<Size> paper_size(std::string_view name) {
    constexpr std::string_view landscape = " landscape";
    const bool is_turned = name.ends_with(landscape);
    if (is_turned) {
        name.remove_suffix(landscape.size());
    }
    const auto* const paper = std::ranges::find(all_papers, name, &Paper::name);
    if (paper == all_papers.end()) {
        return std::nullopt;
    }
    return is_turned ? turned(paper->size) : paper->size;
}

const Paper* paper_of(Size size) {
    const auto* const paper = std::ranges::find_if(all_papers, [&](const Paper& one) {
        return are_equal(one.size, size) || are_equal(turned(one.size), size);
    });
    return paper == all_papers.end() ? nullptr : paper;
}

} // namespace thawslip::layout
