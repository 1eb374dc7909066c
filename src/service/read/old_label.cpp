#include "service/read/old_label.h"

#include "base/list.h"
#include "service/allergen_names.h"
#include "service/freezer/packages_of_bags.h"

#include <algorithm>
#include <fmt/format.h>
#include <set>

namespace thawslip::service {
namespace {

using Names = std::set<std::string>;

void add(Names& names, const std::vector<std::string>& more) {
    names.insert(more.begin(), more.end());
}

/// Whether a code says no more than the dish and the bag: its date leaves it last.
bool is_bare(const code::Message& message) {
    return !message.keep_until;
}

/// \param extent of the code: one that sends the reader to the card does not say what is added
Names allergens_of(const code::Message& message, code::Extent extent) {
    Names names;
    add(names, allergen_names(kitchen::read_allergens(message.allergens)));
    add(names, allergen_names(kitchen::read_allergens(message.may_contain), "may contain "));
    for (const auto& addition : message.additions) {
        for (const auto& mention : kitchen::mentioned_allergens(addition.what)) {
            if (extent == code::Extent::Whole) {
                add(names, allergen_names({{mention.words, {mention.named}}}, "added "));
            }
        }
    }
    return names;
}

std::string listed(const Names& names) {
    return names.empty() ? "none"
                         : joined(std::vector<std::string>(names.begin(), names.end()), ", ");
}

std::string date_text(const code::KeepUntil& keep) {
    const bool is_use_by = keep.basis == kitchen::DateBasis::SetByCook;
    return (is_use_by ? "use by " : "best by ") + kitchen::to_iso(keep.date);
}

/// A date that only a list gave is about quality.
bool is_other_date(const code::KeepUntil& read, const code::KeepUntil& now) {
    const auto set_by_cook = kitchen::DateBasis::SetByCook;
    return read != now && (read.basis == set_by_cook || now.basis == set_by_cook);
}

/// What a label says otherwise than the archive, where that can harm.
std::vector<std::string> differences(const code::Message& read, const code::Message& now) {
    std::vector<std::string> found;
    if (read.keep_until && now.keep_until && is_other_date(*read.keep_until, *now.keep_until)) {
        found.push_back(fmt::format("it says {}, and the archive {}", date_text(*read.keep_until),
                                    date_text(*now.keep_until)));
    }
    const auto of_read = allergens_of(read, read.extent);
    const auto of_now = allergens_of(now, read.extent);
    if (of_read != of_now && !is_bare(read)) {
        found.push_back(fmt::format("its allergens are {}, and those in the archive {}",
                                    listed(of_read), listed(of_now)));
    }
    if (read.raw != now.raw) {
        found.push_back(fmt::format("it says that the food is {}raw, and the archive that it is {}",
                                    read.raw ? "" : "not ", now.raw ? "raw" : "not"));
    }
    return found;
}

} // namespace

void hold_against_archive(const code::Message& read, const archive::Bag& bag,
                          archive::Archive& archive, Messages& messages) {
    PackagesOfBags packages{archive};
    const auto* package = packages.of(bag);
    if (package == nullptr) {
        messages.caution(fmt::format("the description of bag {} cannot be read any longer, so "
                                     "whether this label is its newest is not known",
                                     bag.id));
        return;
    }
    const auto found = differences(read, code::message_for(*package, {bag.id, bag.number, bag.of}));
    if (!found.empty()) {
        messages.caution(
            fmt::format("this is an old label of bag {}: {}; the archive is the one to go by",
                        bag.id, joined(found, "; ")),
            {fmt::format("all that it has: thawslip read {}; take the old label off", bag.id)});
    }
}

} // namespace thawslip::service
