#include "archive/contents.h"

#include "archive/limits.h"
#include "base/shown.h"
#include "kitchen/bag_id.h"

#include <algorithm>
#include <fmt/format.h>
#include <set>

namespace thawslip::archive {
namespace {

/// What reaches a terminal or a list of lines holds no control characters.
bool is_one_line(std::string_view text) {
    return is_name(text);
}

using Revisions = std::set<std::pair<int, int>>;

std::optional<std::string> fault_in_day(const Contents::Day& day, Revisions& seen) {
    if (day.lineage < 1 || day.revision < 1 || !seen.emplace(day.lineage, day.revision).second) {
        return fmt::format("revision {} of description {} is there twice, or cannot be",
                           day.revision, day.lineage);
    }
    if (const auto fault = fault_in(day.record)) {
        return fmt::format("description {} {}", day.lineage, *fault);
    }
    if (!is_one_line(day.recorded)) {
        return fmt::format("description {} was recorded at a time that cannot be", day.lineage);
    }
    for (const auto& package : day.record.packages) {
        if (const auto fault = fault_in(package)) {
            return fmt::format("\"{}\" of description {} {}", shown(package.dish), day.lineage,
                               *fault);
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
        bag.number > Most::bags ||
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
        if (file.text.size() > Most::file) {
            return fmt::format("the print of {} has a file that is too large", print.first_at);
        }
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
