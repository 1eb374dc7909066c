#include "service/freezer/gone_bags.h"

#include "service/freezer/bags.h"
#include "service/print/printed_bags.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::service {

Messages cautions_of_gone(std::span<const archive::Bag> bags) {
    Messages messages;
    for (const auto& bag : bags) {
        if (is_gone(bag)) {
            messages.caution(fmt::format(
                "bag {} of \"{}\" is noted as {} since {}, and its label is printed again: put it "
                "on no other bag; if the bag is there: thawslip freezer back {}",
                bag.id, bag.dish, shown_word(bag.state), bag.changed.substr(0, 10), bag.id));
        }
    }
    return messages;
}

bool is_unprinted(archive::Archive& archive, const archive::Bag& bag) {
    return bag.state == archive::State::NeverFilled &&
           std::ranges::count_if(archive.history(bag.id), [](const archive::PastEvent& past) {
               return past.event.state && !past.is_undone;
           }) == 1;
}

std::string printed_since_gone(archive::Archive& archive, const archive::Bag& bag) {
    std::string last;
    if (is_gone(bag)) {
        for (const auto& print : archive.prints_of(bag.day)) {
            const auto part = part_of(print);
            if (is_labels(print) && print.last_at > bag.changed &&
                (!part || part->contains(bag.id))) {
                last = std::max(last, print.last_at.substr(0, 10));
            }
        }
    }
    return last;
}

bool is_labels(const archive::StoredPrint& print) {
    return print.setup.what == "labels";
}

} // namespace thawslip::service
