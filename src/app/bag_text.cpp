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

} // namespace thawslip::app
