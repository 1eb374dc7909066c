#include "wording/print.h"

#include "base/fill.h"

#include <algorithm>
#include <utility>

namespace thawslip::wording {

const Field* Print::field(std::string_view name) const {
    const auto found = std::ranges::find(fields, name, &Field::name);
    return found == fields.end() ? nullptr : &*found;
}

const std::vector<Paragraph>& Field::said(std::size_t form) const {
    return form == 0 || shorter.empty() ? paragraphs : shorter[std::min(form, shorter.size()) - 1];
}

Paragraph said_again(Paragraph heading, std::string_view phrase) {
    if (!phrase.empty() && !heading.spans.empty() && !heading.is_again) {
        auto& words = heading.spans.front().text;
        words = fill(phrase, {std::move(words)});
        heading.is_again = true;
    }
    return heading;
}

} // namespace thawslip::wording
