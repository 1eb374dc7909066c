#pragma once

#include "base/length.h"
#include "base/result.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::code {

/// Blank modules wanted on each side of a QR Code symbol.
/// Source: ISO/IEC 18004:2015 (from memory); DENSO WAVE, "Point for determining the code area".
inline constexpr int quiet_zone_modules = 4;

/// Error-correction level: about 7, 15, 25 and 30 % of the codewords can be restored.
enum class Level { Low, Medium, Quartile, High };

/// One QR Code symbol, without its quiet zone.
struct Symbol {
    int version = 1; ///< 1 to 40
    Level level = Level::Low;
    int mask = 0;            ///< 0 to 7
    std::uint16_t side = 21; ///< modules: 17 + 4 · version
    std::vector<bool> dark;  ///< side × side, row by row
};

/// A symbol and how large it is printed.
struct SizedSymbol {
    Symbol symbol;
    std::string text;           ///< what it carries: one of the texts offered
    std::size_t text_index = 0; ///< which one: 0 is the fullest
    int dots_per_module = 0;
    Length module; ///< dots_per_module whole printer dots
};

struct PrinterDots {
    double per_inch = 300.0; ///< 203.2, 300, 600…
};

/// What makes a code last through a winter, wanted before words: at least this level, in modules at
/// least this large. Half a millimetre is 4 dots of a 203 dpi printer and 6 of a 300 dpi one.
struct Durable {
    Level level = Level::Medium;
    Length module = Length::millimetres(0.5);
};

/// Why no symbol serves: the room there is and the least that would do, quiet zone included.
struct TooSmall {
    Length available;
    Length needed;
};

/// The symbol with the best chance of surviving a winter, of all that carry one of `texts` (fullest
/// first, then shorter forms) in a square of side `available`, quiet zone included. What makes it
/// survive comes before words: the first text is taken that fits as `durable` says; failing that,
/// the first above level L; failing that, the first that fits at all. The last text, which says
/// only what bag it is, is taken where no other fits above level L.
///
/// A module is a whole number of printer dots and never under `least_module`. How large it is, the
/// version and the error-correction level are chosen together. For each level there is one sensible
/// candidate: the smallest version that carries the text, with the largest modules that fit. Of the
/// four the rule takes
///   1. level L only where nothing else fits: a tenth of the code smeared is more than it restores;
///   2. then the largest modules, but counts no more than durable ones: a camera must tell
///      them apart and a finder pattern must outlast a grain of frost;
///   3. then the highest level.
/// The damage laboratory (tests/damage) holds this against "the highest level that fits" and "the
/// largest module that fits".
/// \pre every text is printable ASCII or newline
Result<SizedSymbol, TooSmall> choose_symbol(const std::vector<std::string>& texts, Length available,
                                            PrinterDots printer, Length least_module,
                                            Durable durable = {});

/// The least side at which `choose_symbol` has a symbol for this text as `durable` says, quiet zone
/// included; nothing where no symbol carries it.
std::optional<Length> durable_side(std::string_view text, PrinterDots printer, Length least_module,
                                   Durable durable = {});

/// Was Thawslip built with an independent reader (CMake option THAWSLIP_READER)? Without one,
/// `read_back` never reads anything.
bool can_read_back();

/// What an independent reader reads from the symbol's modules, drawn as they will be printed, in
/// their quiet zone; nothing when it cannot read them. 60 to 150 µs, so every code that goes to
/// paper is read first.
std::optional<std::string> read_back(const Symbol& symbol);

} // namespace thawslip::code
