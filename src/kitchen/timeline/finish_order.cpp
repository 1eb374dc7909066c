#include "kitchen/timeline/finish_order.h"

#include <algorithm>
#include <tuple>

namespace thawslip::kitchen {
namespace {

using std::chrono::minutes;

/// Where a moment stands among those of the same minute, and among all where no time is known.
int rank(When::Anchor anchor) {
    switch (anchor) {
    case When::Anchor::AtStart: return 0;
    case When::Anchor::AfterStart: return 1;
    case When::Anchor::Halfway: return 2;
    case When::Anchor::BeforeEnd: return 3;
    case When::Anchor::AtServing: return 4;
    }
    return 0;
}

/// The later of two moments with the same anchor has the larger value.
minutes within_anchor(When when) {
    return when.anchor == When::Anchor::BeforeEnd ? -when.offset : when.offset;
}

/// Whether two moments are the same minute of a dish that cooks for `cooking`: "halfway" and "after
/// 45 min" of one that takes 90. The start and serving are moments of their own.
bool are_one(When a, When b, minutes cooking) {
    const auto is_between = [](When when) {
        return when.anchor != When::Anchor::AtStart && when.anchor != When::Anchor::AtServing;
    };
    return is_between(a) && is_between(b) &&
           time_from_start(a, cooking) == time_from_start(b, cooking);
}

/// What goes in at the same minute is said to go in at the same moment.
void name_alike(std::vector<Finish>& finish, minutes cooking) {
    for (std::size_t i = 1; i < finish.size(); ++i) {
        if (are_one(finish[i - 1].when, finish[i].when, cooking)) {
            finish[i].when = finish[i - 1].when;
        }
    }
}

} // namespace

minutes time_from_start(When when, minutes cooking) {
    switch (when.anchor) {
    case When::Anchor::AtStart: return minutes{0};
    case When::Anchor::AfterStart: return when.offset;
    case When::Anchor::Halfway: return cooking / 2;
    case When::Anchor::BeforeEnd: return std::max(cooking - when.offset, minutes{0});
    case When::Anchor::AtServing: return cooking;
    }
    return minutes{0};
}

std::vector<Finish> in_order(std::vector<Finish> finish, const std::optional<TimeRange>& cooking,
                             Moments moments) {
    const auto key = [&](const Finish& one) {
        const auto at =
            cooking ? time_from_start(one.when, (cooking->low + cooking->high) / 2) : minutes{0};
        return std::tuple{at, rank(one.when.anchor), within_anchor(one.when)};
    };
    std::ranges::stable_sort(finish, {}, key);
    if (cooking && cooking->low == cooking->high && moments == Moments::NamedAlike) {
        name_alike(finish, cooking->low);
    }
    return finish;
}

} // namespace thawslip::kitchen
