#include "service/dinner/plan_parts.h"

#include <algorithm>

namespace thawslip::service {
namespace {

/// Where part `i` of `parts` begins, of `count` things: the first parts are the larger ones.
std::size_t share_begin(std::size_t count, std::size_t parts, std::size_t i) {
    return (count * i + parts - 1) / parts;
}

/// Piece `i` of each lane; a lane with fewer events than pieces is whole in the first.
std::vector<kitchen::Lane> pieces_of(const std::vector<kitchen::Lane>& lanes, std::size_t pieces,
                                     std::size_t i) {
    std::vector<kitchen::Lane> cut;
    for (const auto& lane : lanes) {
        const auto count = lane.events.size();
        const auto first = share_begin(count, pieces, i);
        const auto next = share_begin(count, pieces, i + 1);
        if (count < pieces ? i == 0 : first < next) {
            cut.push_back(count < pieces ? lane : part_of(lane, first, next - first));
        }
    }
    return cut;
}

} // namespace

std::vector<wording::PlanPart> plan_parts(const std::vector<kitchen::Lane>& lanes,
                                          PlanSpread spread) {
    const auto sheets = (lanes.size() + spread.lanes - 1) / spread.lanes;
    std::vector<wording::PlanPart> parts;
    for (std::size_t sheet = 0; sheet < sheets; ++sheet) {
        const auto at = [&](std::size_t i) {
            return lanes.begin() +
                   static_cast<std::ptrdiff_t>(share_begin(lanes.size(), sheets, i));
        };
        const std::vector<kitchen::Lane> together{at(sheet), at(sheet + 1)};
        for (std::size_t i = 0; i < spread.pieces; ++i) {
            if (auto cut = pieces_of(together, spread.pieces, i); !cut.empty()) {
                parts.push_back({std::move(cut)});
            }
        }
    }
    for (std::size_t i = 0; i < parts.size(); ++i) {
        parts[i].number = static_cast<int>(i) + 1;
        parts[i].of = static_cast<int>(parts.size());
    }
    return parts;
}

} // namespace thawslip::service
