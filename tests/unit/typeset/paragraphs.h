#pragma once

#include "support/shipped_fonts.h"
#include "typeset/paragraph.h"
#include "typeset/total_fit.h"

#include <doctest/doctest.h>
#include <string>
#include <utility>
#include <vector>

namespace thawslip::test_support {

inline const typeset::FontSet& fonts() {
    static const auto set = shipped_fonts();
    return set;
}

/// One face for every weight, and none behind it.
inline typeset::FontSet only(const std::string& file) {
    auto set = typeset::make_font_set({{file}, {file}, {file}});
    REQUIRE(set);
    return std::move(set).value();
}

inline typeset::PreparedParagraph prepared(const std::vector<typeset::StyledText>& spans) {
    auto paragraph = typeset::prepare(spans, fonts());
    REQUIRE(paragraph);
    return std::move(paragraph).value();
}

inline typeset::PreparedParagraph prepared(const std::string& text) {
    return prepared(std::vector{typeset::StyledText{text, typeset::Weight::Regular}});
}

inline std::string text_of(const typeset::Line& line) {
    std::string text;
    for (const auto& piece : line.pieces) {
        text += piece.run.text;
    }
    return text;
}

/// Boxes of these widths with a space of 1 between them.
inline typeset::LineBoxes boxes(const std::vector<double>& widths) {
    typeset::LineBoxes result;
    double place = 0.0;
    for (const double width : widths) {
        result.boxes.push_back({place, place + width, 0.0});
        place += width + 1.0;
    }
    return result;
}

} // namespace thawslip::test_support
