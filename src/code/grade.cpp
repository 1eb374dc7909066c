#include "code/grade.h"

#include "code/capacity.h"
#include "code/codewords.h"
#include "code/patterns.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace thawslip::code {
namespace {

constexpr int fewest_pixels = 6; ///< a module

/// What a value must reach for D, C, B and A.
using Thresholds = std::array<double, 4>;
constexpr Thresholds contrast_thresholds = {0.20, 0.40, 0.55, 0.70};
constexpr Thresholds modulation_thresholds = {0.20, 0.30, 0.40, 0.50};
constexpr Thresholds unused_thresholds = {0.25, 0.37, 0.50, 0.62};
constexpr Thresholds pattern_thresholds = {2.5, 3.0, 3.5, 4.0};

// A share of 0.7 that came out of sums of doubles is still 0.7.
constexpr double rounding_slack = 1e-9;

Grade graded(double value, const Thresholds& thresholds) {
    int grade = 0;
    for (const double threshold : thresholds) {
        grade += value >= threshold - rounding_slack ? 1 : 0;
    }
    return static_cast<Grade>(grade);
}

/// The light that each module gives back, the quiet zone's modules included, row by row.
struct Light {
    int side = 0; ///< with the quiet zone
    std::vector<double> modules;
    double lightest = 0.0;
    double darkest = 0.0;

    double contrast() const { return lightest - darkest; }
    double threshold() const { return (lightest + darkest) / 2.0; }
    double of(Module module) const {
        return modules[index_of({module.x + quiet_zone_modules, module.y + quiet_zone_modules},
                                side)];
    }
};

/// The mean over a round aperture of 0.8 modules, as verifiers use.
double seen_through_aperture(const GreyPicture& picture, Module module, int pixels) {
    const double radius = 0.4 * pixels;
    double sum = 0.0;
    int count = 0;
    for (int y = 0; y < pixels; ++y) {
        for (int x = 0; x < pixels; ++x) {
            if (std::hypot(x + 0.5 - pixels / 2.0, y + 0.5 - pixels / 2.0) <= radius) {
                const int row = module.y * pixels + y;
                const int column = module.x * pixels + x;
                sum += picture.pixels[picture.index(column, row)];
                ++count;
            }
        }
    }
    return sum / count / 255.0;
}

Light measured(const GreyPicture& picture, int side, const Reflectance& reflectance) {
    const int pixels = picture.width / side;
    Light light{side, {}, 0.0, 1.0};
    for (int y = 0; y < side; ++y) {
        for (int x = 0; x < side; ++x) {
            const double white = seen_through_aperture(picture, {x, y}, pixels);
            light.modules.push_back(reflectance.ink +
                                    (reflectance.paper - reflectance.ink) * white);
        }
    }
    const auto [darkest, lightest] = std::ranges::minmax(light.modules);
    light.darkest = darkest;
    light.lightest = lightest;
    return light;
}

/// A picture held against the symbol that it should show.
class Comparison {
public:
    Comparison(const Light& light, const Symbol& symbol) : light_{light}, symbol_{symbol} {}

    bool is_wrong(Module module) const {
        return (light_.of(module) < light_.threshold()) != is_dark(module);
    }
    /// How far a module stands out from the threshold to its own side; 0 on the wrong one.
    double modulation(Module module) const {
        if (is_wrong(module) || light_.contrast() <= 0.0) {
            return 0.0;
        }
        return 2.0 * std::abs(light_.of(module) - light_.threshold()) / light_.contrast();
    }
    int wrong_in(Module corner, int width, int height) const {
        int wrong = 0;
        for (int y = corner.y; y < corner.y + height; ++y) {
            for (int x = corner.x; x < corner.x + width; ++x) {
                wrong += is_wrong({x, y}) ? 1 : 0;
            }
        }
        return wrong;
    }

private:
    bool is_dark(Module module) const {
        return is_inside(module, symbol_.side) && symbol_.dark[index_of(module, symbol_.side)];
    }
    const Light& light_;
    const Symbol& symbol_;
};

/// The lowest modulation within each codeword.
std::vector<double> codeword_modulations(const Comparison& comparison, const Symbol& symbol) {
    const std::vector<int> map = codeword_map(symbol.version);
    const Blocks blocks = blocks_of(symbol.version, symbol.level);
    std::vector<double> lowest(static_cast<std::size_t>(blocks.total_codewords), 1.0);
    for (int y = 0; y < symbol.side; ++y) {
        for (int x = 0; x < symbol.side; ++x) {
            const int codeword = map[index_of({x, y}, symbol.side)];
            if (codeword >= 0) {
                double& value = lowest[static_cast<std::size_t>(codeword)];
                value = std::min(value, comparison.modulation({x, y}));
            }
        }
    }
    return lowest;
}

/// Error-correction codewords that the smallest symbols keep back against misreading.
/// Source: ISO/IEC 18004:2015, table 9, note on p (from memory).
int kept_back(int version, Level level) {
    if (version == 1) {
        return level == Level::Low ? 3 : level == Level::Medium ? 2 : 1;
    }
    return level != Level::Low || version > 3 ? 0 : version == 2 ? 2 : 1;
}

/// What is left of the correction in the block worst off, when each codeword whose modulation is
/// below `least` costs `cost` of its error-correction codewords: 2 for an error that a reader does
/// not know of, 1 for a codeword that it can leave out.
double unused_correction(const std::vector<double>& modulations, const Symbol& symbol, double least,
                         int cost) {
    const Blocks blocks = blocks_of(symbol.version, symbol.level);
    const std::vector<int> map = block_map(symbol.version, symbol.level);
    std::vector<int> spent(static_cast<std::size_t>(blocks.count), 0);
    for (std::size_t i = 0; i < modulations.size(); ++i) {
        spent[static_cast<std::size_t>(map[i])] += modulations[i] < least ? cost : 0;
    }
    const int capacity = blocks.check_codewords - kept_back(symbol.version, symbol.level);
    const double worst = *std::ranges::max_element(spent);
    return std::max(0.0, 1.0 - worst / capacity);
}

/// The highest grade at which the modules that miss it, taken as left out, still leave unused error
/// correction of that grade.
Grade grade_modulation(const std::vector<double>& modulations, const Symbol& symbol) {
    Grade best = Grade::F;
    for (std::size_t i = 0; i < modulation_thresholds.size(); ++i) {
        const double least = modulation_thresholds[i] - rounding_slack;
        const double unused = unused_correction(modulations, symbol, least, 1);
        const auto level = static_cast<Grade>(i + 1);
        best = std::max(best, std::min(level, graded(unused, unused_thresholds)));
    }
    return best;
}

/// 4 for a whole pattern; one less for each wrong module of a finder.
double finder_grade(int wrong) {
    return std::max(0, 4 - wrong);
}

/// For timing and alignment patterns, by the share of wrong modules.
double share_grade(int wrong, int modules) {
    const double share = static_cast<double>(wrong) / modules;
    return wrong == 0 ? 4 : share <= 0.07 ? 3 : share <= 0.11 ? 2 : share <= 0.14 ? 1 : 0;
}

double alignment_grade(const Comparison& comparison, int version) {
    int wrong = 0;
    int modules = 0;
    for (const auto& [x, y] : alignment_middles(version)) {
        wrong += comparison.wrong_in({x - 2, y - 2}, 5, 5);
        modules += 25;
    }
    return modules == 0 ? 4.0 : share_grade(wrong, modules);
}

/// The mean grade of the three finders, each with separator and quiet zone, the two timing
/// patterns and all alignment patterns together.
double grade_patterns(const Comparison& comparison, const Symbol& symbol) {
    const int side = symbol.side;
    constexpr int finder = 8; // with its separator
    constexpr int quiet = quiet_zone_modules;
    const int reach = finder + quiet;
    const double finders =
        finder_grade(comparison.wrong_in({-quiet, -quiet}, reach, reach)) +
        finder_grade(comparison.wrong_in({side - finder, -quiet}, reach, reach)) +
        finder_grade(comparison.wrong_in({-quiet, side - finder}, reach, reach));
    const int length = side - 2 * finder;
    const double timing = share_grade(comparison.wrong_in({finder, 6}, length, 1), length) +
                          share_grade(comparison.wrong_in({6, finder}, 1, length), length);
    return (finders + timing + alignment_grade(comparison, symbol.version)) / 6.0;
}

} // namespace

char letter(Grade grade) {
    return "FDCBA"[static_cast<std::size_t>(grade)];
}

Grade Quality::overall() const {
    return std::min({contrast_grade, modulation_grade, fixed_pattern_damage_grade,
                     unused_error_correction_grade});
}

std::optional<Quality> grade(const GreyPicture& picture, const Symbol& symbol,
                             const Reflectance& reflectance) {
    const int side = symbol.side + 2 * quiet_zone_modules;
    if (picture.width != picture.height || picture.width % side != 0 ||
        picture.width / side < fewest_pixels ||
        picture.pixels.size() !=
            static_cast<std::size_t>(picture.width) * static_cast<std::size_t>(picture.height)) {
        return std::nullopt;
    }
    const Light light = measured(picture, side, reflectance);
    const Comparison comparison{light, symbol};
    const std::vector<double> modulations = codeword_modulations(comparison, symbol);
    Quality quality;
    quality.symbol_contrast = light.contrast();
    quality.modulation = *std::ranges::min_element(modulations);
    quality.fixed_pattern_grade = grade_patterns(comparison, symbol);
    quality.unused_error_correction = unused_correction(modulations, symbol, rounding_slack, 2);
    quality.contrast_grade = graded(quality.symbol_contrast, contrast_thresholds);
    quality.modulation_grade = grade_modulation(modulations, symbol);
    quality.fixed_pattern_damage_grade = graded(quality.fixed_pattern_grade, pattern_thresholds);
    quality.unused_error_correction_grade =
        graded(quality.unused_error_correction, unused_thresholds);
    return quality;
}

} // namespace thawslip::code
