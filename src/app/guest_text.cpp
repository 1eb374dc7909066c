#include "app/guest_text.h"

#include <ostream>
#include <utility>

namespace thawslip::app {

const std::string_view no_promise_to_guests =
    "That no label names it is no promise that it is not there: ask who cooked, and read the "
    "label\nand what is added on cook day. This is not medical advice; the rules of your local "
    "food\nauthority come first.\n";

std::optional<std::vector<service::Avoided>> avoided_of(const std::optional<std::string>& typed,
                                                        Console console) {
    if (!typed) {
        return std::vector<service::Avoided>{};
    }
    auto avoided = service::read_avoided(*typed);
    console.err << to_text(avoided.messages);
    return std::move(avoided.value);
}

} // namespace thawslip::app
