#include "thawslip/freezer.h"

#include "base/list.h"
#include "library/parts.h"
#include "service/freezer/freezer_list.h"

#include <fmt/format.h>

namespace thawslip {
namespace {

FrozenBag bag_of(const archive::Bag& bag) {
    return {bag.id,
            bag.dish,
            bag.servings,
            bag.number,
            bag.of,
            kitchen::to_iso(bag.made),
            kitchen::to_iso(bag.keep_until),
            std::string{archive::shown_word(bag.state)}};
}

} // namespace

Outcome<std::vector<FrozenBag>> list_bags(const std::string& archive_file,
                                          const std::vector<std::string>& words,
                                          const std::string& today) {
    const auto date = kitchen::parse_iso(today);
    if (!date) {
        return library::refused<std::vector<FrozenBag>>(fmt::format("\"{}\" is no date", today),
                                                        {"write it as 2026-10-17"});
    }
    auto opened = archive::Archive::open(archive_file, archive::Mode::Copy);
    if (!opened) {
        return library::refused<std::vector<FrozenBag>>(opened.fault().message);
    }
    auto archive = std::move(opened).value();
    const auto& allergens = *kitchen::KitchenSettings{}.allergens;
    const auto list = service::freezer_list(archive, {words, false}, *date, allergens);
    return {mapped(list.bags, [](const auto& found) { return bag_of(found.bag); }), {}};
}

} // namespace thawslip
