#include "wording/print.h"

#include <algorithm>

namespace thawslip::wording {

const Field* Print::field(std::string_view name) const {
    const auto found = std::ranges::find(fields, name, &Field::name);
    return found == fields.end() ? nullptr : &*found;
}

const std::vector<Paragraph>& Field::said(std::size_t form) const {
    return form == 0 || shorter.empty() ? paragraphs : shorter[std::min(form, shorter.size()) - 1];
}

} // namespace thawslip::wording
