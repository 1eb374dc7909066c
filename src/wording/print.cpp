#include "wording/print.h"

#include <algorithm>

namespace thawslip::wording {

const Field* Print::field(std::string_view name) const {
    const auto found = std::ranges::find(fields, name, &Field::name);
    return found == fields.end() ? nullptr : &*found;
}

} // namespace thawslip::wording
