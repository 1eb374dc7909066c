#pragma once

#include "base/length.h"
#include "base/result.h"
#include "kitchen/day.h"
#include "kitchen/heat/heat_properties.h"

#include <chrono>
#include <optional>

namespace thawslip::kitchen {

/// What thawing is reckoned with. All of it is the cook's to set.
struct ThawSettings {
    Wetness wetness = Wetness::Dish; ///< of the food in the bag
    Placing placing = Placing::Tray; ///< how the bag lies in the refrigerator

    /// 4 °C, the whole degree below the 40 °F of USDA FSIS. A colder one thaws much slower: 2 °C
    /// adds about 40 %. The coefficient is the middle of the 5–7 W/(m² K) measured for meat
    /// thawing in household refrigerators by Anderson, Sun, Erdogdu and Singh, Int. J.
    /// Refrigeration 27(1):63–72, 2004.
    Surroundings refrigerator{.celsius = 4.0, .coefficient = 6.0};

    /// Cold tap water, standing and changed; both figures from memory. USDA FSIS and the FDA Food
    /// Code (3-501.13) allow at most 70 °F (21 °C).
    Surroundings water{.celsius = 10.0, .coefficient = 100.0};

    double freezer_celsius = -18.0;

    /// What reaches the food on the defrost setting: 260 W is the oven of the pork leg trial in
    /// Korean J. Food Preservation 30(1):88, Table 1.
    double microwave_watts = 260.0;

    /// Added to what heat transfer says, as a share: 0.2 is what a coefficient of 5 instead of 6
    /// adds. Taken off again where the question is how soon it may be thawed.
    double margin = 0.2;
};

/// What had the last word on a lead.
enum class LeadBasis {
    HeatTransfer,   ///< the thickness, by thaw_time.h, with the margin
    HeatBalance,    ///< the weight and the oven's power, with the margin
    AgencyRule,     ///< the food-safety agencies' time for the weight
    CommonPractice, ///< nothing was known of the bag and no agency gives a figure
};

enum class MissingSize { None, Thickness, Weight, Both };

/// How long before cooking a bag has to start thawing.
struct ThawLead {
    ThawMethod method = ThawMethod::Refrigerator;

    Placing placing = Placing::Tray;
    Wetness wetness = Wetness::Dish;

    /// Rounded up: to whole hours in the refrigerator, half hours in water (its change of water),
    /// 5 minutes in the microwave. 0 from frozen.
    std::chrono::minutes lead{0};
    /// It may be thawed through this soon after it went into the refrigerator: rounded down to
    /// whole hours, at most `lead`. How long it keeps once thawed is counted from here.
    std::chrono::minutes soonest{0};

    LeadBasis decided_by = LeadBasis::AgencyRule;
    MissingSize missing = MissingSize::None;

    /// The two figures before the longer one was taken, in whole minutes, for showing why.
    std::optional<std::chrono::minutes> by_heat = std::nullopt;
    std::optional<std::chrono::minutes> by_agency = std::nullopt;
};

/// The kitchen's settings for one package: how it lies, and how much water it holds.
ThawSettings settings_for(const Package& package, Wetness wetness, ThawSettings kitchen);

/// The lead, where anything is known of the bag that it was worked out from.
std::optional<std::chrono::minutes> known_lead(const std::optional<ThawLead>& lead);

/// The lead for one bag: the longer of what heat transfer says of its thickness and of what the
/// agencies say of its weight. Where one is not known (or not a positive number) the other decides
/// and `missing` says so.
///
/// Agencies, by USDA FSIS ("The Big Thaw: Safe Defrosting Methods", 2013, and "Freezing and Food
/// Safety"), read in copies:
/// refrigerator: a full day even for a small pack, 24 h for each 4–5 lb (4 lb is used here; it
/// also covers the 10–12 h/kg of UK advice for poultry); cold water: 1 lb about 1 h, 3–4 lb 2–3 h,
/// more 30 min per lb. No agency gives microwave minutes.
///
/// In the refrigerator the lead is reckoned for the slowest of what the placing and the water may
/// be, the soonest for the quickest. Where a size is not known the soonest takes a thin or a small
/// one: 15 mm and at most the 12 h of a 1-inch steak (an older household table, publisher not
/// known), half a litre (common practice, no source).
///
/// \returns the lead, or the fault of thaw_time for settings in which food does not thaw
Result<ThawLead, HeatFault> thaw_lead(ThawMethod method, std::optional<Length> thickness,
                                      std::optional<Mass> weight, const ThawSettings& settings);

} // namespace thawslip::kitchen
