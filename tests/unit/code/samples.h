#pragma once

#include "code/message.h"

namespace thawslip::test_support {

/// The typical label: what one bag of the orchard crew's stew says.
inline code::Message squash_stew() {
    using namespace std::chrono_literals;
    using Anchor = kitchen::When::Anchor;
    code::Message message;
    message.dish = "Squash and red lentil stew";
    message.servings = 6;
    message.bag_id = "K7Q-2M4-9XC";
    message.made = kitchen::Date{std::chrono::year{2026} / 10 / 17};
    message.keep_until = code::KeepUntil{kitchen::Date{std::chrono::year{2027} / 1 / 17},
                                         kitchen::DateBasis::StorageTable};
    message.thaw = kitchen::ThawMethod::Refrigerator;
    message.additions = {{{Anchor::AtStart, 0min}, "1 l vegetable stock", ""},
                         {{Anchor::BeforeEnd, 10min}, "200 g baby spinach", "small bag"}};
    message.cooking = {"slow cooker", "low", kitchen::TimeRange{7h, 9h}, code::Target{740, {}}};
    message.steps = {"Tip the thawed bag into the cooker.", "Stir in the stock."};
    message.thaw_time = kitchen::TimeRange{31h, 46h};
    message.placing = kitchen::Placing::Tray;
    message.cook_within_days = 3;
    message.cautions = {"Thaw fully before slow cooker"};
    message.allergens = {"celery"};
    message.may_contain = {"mustard"};
    return message;
}

} // namespace thawslip::test_support
