#include "archive/contents.h"

#include "base/utf8.h"
#include "kitchen/bag_id.h"

#include <algorithm>
#include <fmt/format.h>
#include <set>

namespace thawslip::archive {
namespace {

/// What reaches a terminal or a list of lines holds no control characters.
bool is_one_line(std::string_view text) {
    return !first_invalid_utf8(text) && std::ranges::none_of(text, [](char c) {
        return static_cast<unsigned char>(c) < 0x20 || c == 0x7F;
    });
}

bool are_lines(const std::optional<FoodRecord>& food) {
    return !food || (std::ranges::all_of(food->allergens, is_one_line) &&
                     std::ranges::all_of(food->classes, is_one_line));
}

using Revisions = std::set<std::pair<int, int>>;

std::optional<std::string> fault_in_day(const Contents::Day& day, Revisions& seen) {
    if (day.lineage < 1 || day.revision < 1 || !seen.emplace(day.lineage, day.revision).second) {
        return fmt::format("revision {} of description {} is there twice, or cannot be",
                           day.revision, day.lineage);
    }
    if (!day.record.made.ok()) {
        return fmt::format("description {} has no day", day.lineage);
    }
    for (const auto& package : day.record.packages) {
        if (!is_one_line(package.dish) || !is_one_line(package.words) || !are_lines(package.food)) {
            return fmt::format("a dish of description {} has a name that cannot be", day.lineage);
        }
        if (!package.made.ok() || !package.keep_until.ok()) {
            return fmt::format("\"{}\" of description {} has a date that cannot be", package.dish,
                               day.lineage);
        }
    }
    return std::nullopt;
}

std::optional<std::string> fault_in_bag(const Contents& contents, const Contents::Bag& bag,
                                        std::set<std::string>& seen) {
    if (!is_one_line(bag.changed)) {
        return std::string{"a bag has a time that cannot be"};
    }
    if (bag.ids.empty()) {
        return std::string{"a bag has no id"};
    }
    for (const auto& id : bag.ids) {
        const auto read = kitchen::parse_bag_id(id);
        if (!read || read.value() != id) {
            return std::string{"a bag has an id that cannot be"};
        }
        if (!seen.insert(id).second) {
            return fmt::format("the id {} is there twice", id);
        }
    }
    if (bag.day >= contents.days.size() || bag.position < 1 || bag.number < 1 ||
        static_cast<std::size_t>(bag.position) > contents.days[bag.day].record.packages.size()) {
        return fmt::format("bag {} belongs to a package that is not there", bag.ids.front());
    }
    return std::nullopt;
}

std::optional<std::string> fault_in_print(const Contents& contents, const Contents::Print& print) {
    if (!is_one_line(print.first_at) || !is_one_line(print.last_at)) {
        return std::string{"a print has a time that cannot be"};
    }
    for (const auto day : print.days) {
        if (day >= contents.days.size()) {
            return fmt::format("the print of {} is of a day that is not there", print.first_at);
        }
    }
    std::set<std::string> names;
    for (const auto& file : print.setup.files) {
        if (!names.insert(file.name).second) {
            return fmt::format("the print of {} has the file {} twice", print.first_at, file.name);
        }
    }
    return std::nullopt;
}

} // namespace

std::optional<std::string> fault_in(const Contents& contents) {
    Revisions revisions;
    std::set<std::string> ids;
    std::optional<std::string> fault;
    for (auto day = contents.days.begin(); !fault && day != contents.days.end(); ++day) {
        fault = fault_in_day(*day, revisions);
    }
    for (auto bag = contents.bags.begin(); !fault && bag != contents.bags.end(); ++bag) {
        fault = fault_in_bag(contents, *bag, ids);
    }
    for (auto print = contents.prints.begin(); !fault && print != contents.prints.end(); ++print) {
        fault = fault_in_print(contents, *print);
    }
    return fault;
}

} // namespace thawslip::archive
