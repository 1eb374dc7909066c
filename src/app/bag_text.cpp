#include "app/bag_text.h"

#include "base/counted.h"
#include "service/freezer/bags.h"
#include "wording/phrases.h"

#include <fmt/format.h>

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

std::string days_text(std::chrono::days low, std::chrono::days high) {
    const auto most = high.count() == 0 ? "the same day" : counted(high.count(), "day");
    return low == high ? most : fmt::format("{} to {}", low.count(), most);
}

} // namespace thawslip::app
