#include "thawslip/bag.h"

#include "code/message.h"
#include "library/parts.h"

namespace thawslip {

Outcome<BagText> read_code_text(const std::string& text) {
    auto read = code::parse(text);
    if (!read) {
        const auto& fault = read.fault();
        return library::refused<BagText>(fault.message, fault.text.empty()
                                                            ? std::vector<std::string>{}
                                                            : std::vector{fault.text});
    }
    auto message = std::move(read).value();
    BagText bag;
    bag.dish = std::move(message.dish);
    bag.id = std::move(message.bag_id);
    bag.keep_until = message.keep_until ? kitchen::to_iso(message.keep_until->date) : "";
    bag.raw = message.raw;
    bag.servings = message.servings.value_or(0);
    bag.steps = std::move(message.steps);
    bag.cautions = std::move(message.cautions);
    bag.see_card = message.extent == code::Extent::SeeCard;
    return {std::move(bag), {}};
}

} // namespace thawslip
