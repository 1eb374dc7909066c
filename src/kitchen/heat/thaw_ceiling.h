#pragma once

#include "kitchen/heat/thaw_lead.h"
#include "kitchen/storage/storage.h"

#include <chrono>
#include <optional>

namespace thawslip::kitchen {

/// Whether a food is cooked after it has thawed, eaten as it is, or eaten without thawing.
enum class Served { Cooked, AsItIs, Frozen };

/// AsItIs where its maker made some of it to be eaten so, and nothing says that it is cooked;
/// Frozen by is_eaten_frozen().
Served served(const Package& package, const StorageTable& table);

/// How long a bag's outside is warmer than 5 °C (41 °F) until it is cooked, and how long it may be.
///
/// In cold water: from when its face gets warmer, by face_stays_cold() of thaw_time.h, to the end
/// of the lead that is printed, and `handling` after it. At most 4 h, preparation included, for
/// what is cooked then; never for what is eaten as it is (FDA Food Code 3-501.13(B), Thawing, read
/// as Washington's WAC 246-215-03510). In the microwave: all its time, at most 2 h (USDA FSIS,
/// Policy Memo 119, 1989, read in a copy).
struct WarmFace {
    std::chrono::minutes warm{0};
    std::chrono::minutes limit{0};
};

/// Opening, cutting and seasoning between thawing and the heat: common practice, no source.
inline constexpr std::chrono::minutes handling{30};

/// \returns nothing for the refrigerator and from frozen
std::optional<WarmFace> warm_face(const ThawLead& lead, Served served,
                                  const ThawSettings& settings);

/// A bag that is warm for longer than it may be, and what would pass.
struct PastCeiling {
    ThawLead lead;
    WarmFace face;
    std::optional<Length> thickness; ///< whole mm: no thicker; nothing: not what decides
    std::optional<Mass> weight;      ///< whole 100 g: no heavier; nothing: not what decides
};

/// \returns nothing where the method is safe for this bag, or its time cannot be reckoned
std::optional<PastCeiling> past_ceiling(ThawMethod method, std::optional<Length> thickness,
                                        std::optional<Mass> weight, Served served,
                                        const ThawSettings& settings);

} // namespace thawslip::kitchen
