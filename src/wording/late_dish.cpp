#include "wording/late_dish.h"

#include "wording/phrases.h"
#include "wording/timeline_words.h"

#include <algorithm>

namespace thawslip::wording {
namespace {

using kitchen::RemarkId;

constexpr RemarkId of_late_dishes[] = {RemarkId::ThawOnRack,      RemarkId::ThawByWater,
                                       RemarkId::ThawByMicrowave, RemarkId::CookFromFrozen,
                                       RemarkId::IfThawed,        RemarkId::IfThawedAt,
                                       RemarkId::NoWayInTime,     RemarkId::StartTooLate,
                                       RemarkId::ThawTooLate,     RemarkId::FrozenStartTooLate};

/// A way with what to mind on it, in one line.
std::string way_text(const kitchen::Timeline& line, std::span<const kitchen::TimelineDish> dishes,
                     const kitchen::FasterWay& way, std::size_t dish, const Style& style) {
    auto text = say_remark(line, dishes, remark_of(way, dish), style);
    for (const auto& caution : cautions_of(way.method, dish)) {
        text += " " + say_remark(line, dishes, caution, style);
    }
    return text;
}

/// What is said of a dish by one of the remarks; empty where it is not among them.
std::string said_of(const kitchen::Timeline& line, std::span<const kitchen::TimelineDish> dishes,
                    RemarkId id, std::size_t dish, const Style& style) {
    const auto found = std::ranges::find_if(
        line.remarks, [&](const auto& remark) { return remark.id == id && remark.dish == dish; });
    return found == line.remarks.end() ? std::string{} : say_remark(line, dishes, *found, style);
}

} // namespace

bool is_of_late_dish(const kitchen::TimelineRemark& remark) {
    return remark.dish && std::ranges::find(of_late_dishes, remark.id) != std::end(of_late_dishes);
}

std::optional<LateDish> say_late_dish(const kitchen::Timeline& line,
                                      std::span<const kitchen::TimelineDish> dishes,
                                      std::size_t dish, const Style& style) {
    const bool is_late = std::ranges::any_of(line.remarks, [dish](const auto& remark) {
        return remark.dish == dish && is_of_late_dish(remark);
    });
    if (!is_late) {
        return std::nullopt;
    }
    const auto& ways = line.dishes[dish].ways;
    LateDish late{style.say(ways.empty() ? "plan.late-no-way" : "plan.late",
                            {say_sized(dishes[dish].package, style)}),
                  {},
                  {}};
    for (const auto& way : ways) {
        late.ways.push_back(way_text(line, dishes, way, dish, style));
    }
    for (const auto id : {RemarkId::IfThawed, RemarkId::IfThawedAt, RemarkId::NoWayInTime,
                          RemarkId::StartTooLate, RemarkId::FrozenStartTooLate}) {
        if (auto said = said_of(line, dishes, id, dish, style); !said.empty()) {
            late.further.push_back(std::move(said));
        }
    }
    if (const auto said = said_of(line, dishes, RemarkId::ThawTooLate, dish, style);
        !said.empty()) {
        late.further.push_back(style.say("plan.no-longer", {said}));
    }
    return late;
}

} // namespace thawslip::wording
