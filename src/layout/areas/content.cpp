#include "layout/areas/content.h"

#include <algorithm>

namespace thawslip::layout {

Result<typeset::PreparedParagraph, typeset::UnsettableCharacter>
Shaper::prepare(const std::vector<typeset::StyledText>& spans) {
    std::string key;
    for (const auto& span : spans) { // no text has a zero in it
        key += span.text + '\0' + static_cast<char>(span.weight);
    }
    const auto known = prepared_.find(key);
    if (known != prepared_.end()) {
        return known->second;
    }
    auto shaped = typeset::prepare(spans, *fonts_);
    if (shaped) {
        prepared_.emplace(std::move(key), shaped.value());
    }
    return shaped;
}

void Content::share_with(const Content& other) {
    if (entries_ && other.entries_ && *entries_ == *other.entries_) {
        entries_ = other.entries_;
    }
    for (std::size_t i = 0; i < std::min(shorter_.size(), other.shorter_.size()); ++i) {
        shorter_[i].share_with(other.shorter_[i]);
    }
}

bool says_critical(const Content& content) {
    return content.is_there() && std::ranges::any_of(content.entries(), &PreparedEntry::critical);
}

} // namespace thawslip::layout
