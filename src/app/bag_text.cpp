#include "app/bag_text.h"

#include "service/freezer/bags.h"
#include "wording/phrases.h"

namespace thawslip::app {

std::string_view date_head(const archive::Bag& bag) {
    return bag.basis == kitchen::DateBasis::SetByCook ? "use by" : "best by";
}

std::string dish_text(const archive::Bag& bag) {
    return wording::say_dish(bag.dish, service::is_raw(bag), wording::shipped_language("en"));
}

std::string shown_moment(const std::string& at) {
    auto text = at.substr(0, 16);
    if (const auto letter = text.find('T'); letter != std::string::npos) {
        text[letter] = ' ';
    }
    return text;
}

} // namespace thawslip::app
