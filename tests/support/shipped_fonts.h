#pragma once

#include "typeset/font_set.h"

#include <stdexcept>
#include <string>

namespace thawslip::test_support {

inline const std::string clear_sans = "/usr/share/fonts/truetype/clear-sans/ClearSans-";
inline const std::string dejavu = "/usr/share/fonts/truetype/dejavu/DejaVuSans";

/// The chains that fonts/faces.toml names.
inline typeset::FontSet shipped_fonts() {
    auto set = typeset::make_font_set({
        {clear_sans + "Regular.ttf", dejavu + ".ttf"},
        {clear_sans + "Medium.ttf", dejavu + ".ttf"},
        {clear_sans + "Bold.ttf", dejavu + "-Bold.ttf"},
    });
    if (!set) {
        throw std::runtime_error{set.fault()};
    }
    return std::move(set).value();
}

inline typeset::Face face_from(const std::string& path) {
    auto face = typeset::Face::load(path);
    if (!face) {
        throw std::runtime_error{face.fault()};
    }
    return std::move(face).value();
}

} // namespace thawslip::test_support
