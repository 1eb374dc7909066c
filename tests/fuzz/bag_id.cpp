// A bag id as somebody types one.

#include "kitchen/bag_id.h"

#include "fuzz/target.h"

using namespace thawslip;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const auto typed = fuzz::text_of(data, size);
    const auto id = kitchen::parse_bag_id(typed);
    if (!id) {
        fuzz::hold(!id.fault().message.empty(), "a refusal says why");
        fuzz::hold(id.fault().offset <= size, "a refusal points into the text");
        return 0;
    }
    const bool whole = id.value().size() == 11 || id.value().size() == 15;
    fuzz::hold(whole, "an id is printed as three or four times three symbols");
    const auto again = kitchen::parse_bag_id(id.value());
    fuzz::hold(again.ok() && again.value() == id.value(), "an id is read as it is printed");
    return 0;
}
