#include "code/message.h"

namespace thawslip::code {
namespace {

/// Dish, bag and what keeps people safe, without the instructions.
Message pointer_to_card(const Message& message) {
    Message pointer;
    pointer.dish = message.dish;
    pointer.raw = message.raw;
    pointer.bag_id = message.bag_id;
    pointer.keep_until = message.keep_until;
    pointer.thaw = message.thaw;
    pointer.placing = message.placing;
    pointer.thaw_time = message.thaw_time;
    pointer.cook_within_days = message.cook_within_days;
    pointer.cooking.until = message.cooking.until;
    pointer.cautions = message.cautions;
    pointer.allergens = message.allergens;
    pointer.may_contain = message.may_contain;
    return pointer;
}

/// Without how to thaw, which every label says large; but that a bag must not thaw stays.
Message without_thawing(Message pointer) {
    if (pointer.thaw != kitchen::ThawMethod::FromFrozen) {
        pointer.thaw.reset();
        pointer.placing.reset();
        pointer.thaw_time.reset();
        pointer.cook_within_days.reset();
    }
    return pointer;
}

Message name_and_bag(const Message& message) {
    Message pointer;
    pointer.dish = message.dish;
    pointer.raw = message.raw;
    pointer.bag_id = message.bag_id;
    return pointer;
}

} // namespace

std::vector<std::string> texts(const Message& unfolded) {
    Message form = folded(unfolded);
    std::vector<std::string> texts{write(form)};
    Message last = form;
    const auto offer = [&](Message shorter) {
        shorter.extent = last.extent;
        if (shorter != last) {
            shorter.extent = Extent::SeeCard;
            last = shorter;
            texts.push_back(write(last));
        }
    };
    // What stands on the label beside the code leaves first; steps stand there nowhere.
    form.note.clear();
    offer(form);
    form.made.reset();
    offer(form);
    form.servings.reset();
    offer(form);
    form.other_thaws.clear();
    offer(form);
    form.thaw_note.clear();
    for (Addition& addition : form.additions) {
        addition.bag.clear();
    }
    offer(form);
    form.steps.clear();
    offer(form);
    offer(pointer_to_card(form));
    offer(without_thawing(pointer_to_card(form)));
    offer(name_and_bag(form));
    return texts;
}

} // namespace thawslip::code
