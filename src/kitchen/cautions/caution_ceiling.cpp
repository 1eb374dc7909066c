#include "kitchen/cautions/caution_topics.h"
#include "kitchen/heat/thaw_ceiling.h"
#include "kitchen/measures/temperature_text.h"
#include "kitchen/measures/unit_text.h"
#include "kitchen/sources.h"

#include <algorithm>

// Cold water and microwave have a ceiling: how long the outside of a bag may be warm.

namespace thawslip::kitchen {
namespace {

using namespace scene;

constexpr std::string_view food_code_thawing =
    "FDA Food Code 3-501.13(B), Thawing (read as Washington's WAC 246-215-03510)";

// As much as a day's description can say of one bag.
constexpr Length largest_thickness = Length::millimetres(300.0);
constexpr Mass largest_weight{20000.0};

Served served(const Scene& scene) {
    return served(scene.package, scene.table);
}

std::optional<PastCeiling> past_ceiling(const Scene& scene, ThawMethod method) {
    const auto& package = scene.package;
    if (package.thaw.method != method || !is_perishable(scene)) {
        return std::nullopt;
    }
    const auto settings =
        settings_for(package, wetness_of(scene.table, package), scene.settings.thaw);
    return past_ceiling(method, package.thickness, package.weight, served(scene), settings);
}

/// "3 h 30 min"; the same in every language.
std::string span_text(std::chrono::minutes span) {
    const auto hours = span.count() / 60;
    auto minutes = std::to_string(span.count() % 60) + " min";
    if (hours == 0) {
        return minutes;
    }
    return std::to_string(hours) + " h" + (span.count() % 60 == 0 ? "" : " " + minutes);
}

/// "44 mm (1¾ in), 3.1 kg (6 lb 13 oz)": what would pass.
std::string sizes_that_pass(const PastCeiling& past, const UnitStyle& style) {
    std::string text = past.thickness ? thickness_text(*past.thickness, style) : "";
    if (past.weight) {
        text += (text.empty() ? "" : ", ") + to_text(*past.weight, style);
    }
    return text;
}

std::string five_degrees(const Scene& scene) {
    return published_text(41, TemperatureUse::ColdLimit, style(scene));
}

Findings cold_water_too_long(const Scene& scene) {
    const auto past = past_ceiling(scene, ThawMethod::ColdWater);
    if (!past || served(scene) == Served::AsItIs) {
        return {};
    }
    const auto& [warm, limit] = past->face;
    return {{{span_text(past->lead.lead), five_degrees(scene), span_text(warm), span_text(handling),
              span_text(limit), sizes_that_pass(*past, style(scene))},
             method_place(scene)}};
}

Findings cold_water_as_it_is(const Scene& scene) {
    const auto past = past_ceiling(scene, ThawMethod::ColdWater);
    if (!past || served(scene) == Served::Cooked) {
        return {};
    }
    return {{{five_degrees(scene), span_text(past->face.warm)}, method_place(scene)}};
}

Findings microwave_as_it_is(const Scene& scene) {
    return found_if(scene.package.thaw.method == ThawMethod::Microwave &&
                        served(scene) == Served::AsItIs,
                    method_place(scene), {five_degrees(scene)});
}

Findings microwave_too_long(const Scene& scene) {
    const auto past = past_ceiling(scene, ThawMethod::Microwave);
    if (!past) {
        return {};
    }
    return {{{span_text(past->lead.lead), span_text(past->face.limit),
              sizes_that_pass(*past, style(scene))},
             method_place(scene)}};
}

/// Where neither size is known nobody has reckoned anything: the print says what may be thawed so.
Findings ceiling_unsaid(const Scene& scene) {
    const auto& package = scene.package;
    const auto method = package.thaw.method;
    if (package.thickness || package.weight || !is_perishable(scene) ||
        served(scene) == Served::AsItIs) {
        return {};
    }
    const auto settings =
        settings_for(package, wetness_of(scene.table, package.food), scene.settings.thaw);
    const auto largest =
        past_ceiling(method, largest_thickness, largest_weight, Served::Cooked, settings);
    if (!largest) {
        return {};
    }
    return {{{sizes_that_pass(*largest, style(scene)), span_text(largest->face.limit)},
             method_place(scene)}};
}

Findings still_hard(const Scene& scene) {
    return found_if(scene.package.thaw.method == ThawMethod::Refrigerator && is_perishable(scene),
                    method_place(scene));
}

constexpr CautionRule ceiling_rows[] = {
    refusal("cold-water-too-long", food_code_thawing, cold_water_too_long,
            "in cold water this bag takes {0}, and with {3} of handling its outside is warmer than "
            "{1} for {2}; expected {4} at most",
            "thaw it in the refrigerator, or fill bags of at most {5}"),
    refusal("cold-water-eaten-as-it-is", food_code_thawing, cold_water_as_it_is,
            "in cold water the outside of this bag is warmer than {0} for {1}; what is eaten "
            "without cooking stays at {0} or colder while it thaws",
            "thaw it in the refrigerator, or say in [package.cook] how it is heated"),
    refusal("microwave-eaten-as-it-is",
            "FDA Food Code 3-501.13(A) and (C), Thawing (read as Washington's WAC 246-215-03510)",
            microwave_as_it_is,
            "the microwave warms parts of this bag; what is eaten without cooking stays at {0} or "
            "colder while it thaws",
            "thaw it in the refrigerator, or say in [package.cook] how it is heated"),
    refusal("microwave-too-long", "USDA FSIS, Policy Memo 119, 1989 (read in a copy)",
            microwave_too_long, "in the microwave this bag takes {0}; expected {1} at most",
            "thaw it in the refrigerator, or fill bags of at most {2}"),
    {"ceiling-unsaid", CautionLevel::LabelAndCard, food_code_thawing, ceiling_unsaid,
     "AT MOST {0} - {1}"},
    {"thaw-still-hard", CautionLevel::Card, practice, still_hard},
};

} // namespace

std::span<const CautionRule> ceiling_rules() {
    return ceiling_rows;
}

} // namespace thawslip::kitchen
