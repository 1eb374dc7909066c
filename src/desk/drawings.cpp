#include "desk/drawings.h"

#include "layout/fingerprint.h"
#include "render/svg.h"

#include <utility>

namespace thawslip::desk {
namespace {

/// Two checks of the largest day, some kilobytes each.
constexpr std::size_t most_drawings = 1024;

} // namespace

std::string Drawings::keep(layout::Frame frame, const typeset::FontSet& fonts, std::string title) {
    auto name = layout::fingerprint(frame);
    if (const auto known = places_.find(name); known != places_.end()) {
        drawings_.splice(drawings_.begin(), drawings_, known->second);
        return name;
    }
    drawings_.push_front({name, std::move(frame), fonts, std::move(title)});
    places_.emplace(name, drawings_.begin());
    if (drawings_.size() > most_drawings) {
        places_.erase(drawings_.back().name);
        drawings_.pop_back();
    }
    return name;
}

std::optional<std::string> Drawings::svg(const std::string& name) {
    const auto found = places_.find(name);
    return found == places_.end()
               ? std::nullopt
               : std::optional{
                     render::svg(found->second->frame, found->second->fonts, found->second->title)};
}

} // namespace thawslip::desk
