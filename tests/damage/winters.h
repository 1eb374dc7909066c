#pragma once

#include "damage/photo.h"
#include "damage/print.h"

#include <array>
#include <string_view>

namespace thawslip::damage {

/// Levels of what befalls a label between the printer and the stove.
enum class Winter {
    None,         ///< printed and photographed, no more
    Frost,        ///< after a wipe: ice grains over 0.5 % of the label, rime all over
    FrostScuff,   ///< and a scuff 2 mm wide, two thirds of the code long
    FrostCrease,  ///< and a crease right across the code
    HardFrost,    ///< not wiped: ice grains over 2 %, and a scuff
    TenthSmeared, ///< frost and a scuff, and a tenth of the code smeared
    SixthSmeared, ///< frost and a scuff, and a sixth of the code smeared
    WetCorner,    ///< frost and a scuff, a tenth smeared, and one of the code's corners got wet
};

struct NamedWinter {
    Winter winter;
    std::string_view name;
};
inline constexpr std::array<NamedWinter, 8> winters = {{
    {Winter::None, "fresh"},
    {Winter::Frost, "frost"},
    {Winter::FrostScuff, "frost and a scuff"},
    {Winter::FrostCrease, "frost, scuff, crease"},
    {Winter::HardFrost, "hard frost and a scuff"},
    {Winter::TenthSmeared, "frost, scuff, a tenth smeared"},
    {Winter::SixthSmeared, "frost, scuff, a sixth smeared"},
    {Winter::WetCorner, "frost, scuff, a tenth smeared, a wet corner"},
}};

/// A code as it is printed.
struct Printed {
    code::Symbol symbol;
    std::string text;
    double module_mm = 0.0;
    double dots_per_inch = 300.0;
};

/// Who can still read a label.
struct Readers {
    bool zxing = false;
    bool zbar = false;
    bool either() const { return zxing || zbar; }
};

enum class Ask { ZXingOnly, Both };

struct Trial {
    Winter winter = Winter::None;
    Camera camera = Camera::Good;
    Ask ask = Ask::ZXingOnly;
};

/// Who reads a label with this code after such a winter? The label is printed by some printer
/// and harmed once; then a person holds a phone over it, which takes up to `frames` pictures, each
/// from another side. Equal seeds are equal printers, harm and hands.
Readers read_after(const Printed& printed, const Trial& trial, std::uint64_t seed);

inline constexpr int frames = 5;

} // namespace thawslip::damage
