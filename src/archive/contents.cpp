#include "archive/contents.h"

#include "archive/events.h"
#include "archive/limits.h"
#include "archive/tables/rows.h"
#include "base/list.h"
#include "base/shown.h"
#include "kitchen/bag_id.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>
#include <set>
#include <tuple>

namespace thawslip::archive {
namespace {

using Revisions = std::set<std::pair<int, int>>;

std::optional<std::string> fault_in_day(const Contents::Day& day, Revisions& seen) {
    if (day.lineage < 1 || day.revision < 1 || !seen.emplace(day.lineage, day.revision).second) {
        return fmt::format("revision {} of description {} is there twice, or cannot be",
                           day.revision, day.lineage);
    }
    if (const auto fault = fault_in(day.record)) {
        return fmt::format("description {} {}", day.lineage, *fault);
    }
    if (!is_moment(day.recorded) || !is_within(day.ordered, Most::ordered)) {
        return fmt::format("description {} was recorded at a time that cannot be", day.lineage);
    }
    for (const auto& package : day.record.packages) {
        if (const auto fault = fault_in(package)) {
            return fmt::format("\"{}\" of description {} {}", named(package.dish), day.lineage,
                               *fault);
        }
        const auto& batch = package.batch;
        if (!is_name(batch.kitchen) || !is_name(package.origin) || batch.number < 1 ||
            batch.kitchen_number < 0 || batch.kitchen_number > kitchen::highest_kitchen_number ||
            !is_within(batch.size, Most::size)) {
            return fmt::format("\"{}\" of description {} is of a batch that cannot be",
                               named(package.dish), day.lineage);
        }
    }
    return std::nullopt;
}

std::optional<std::string> fault_in_bag(const Contents& contents, const Contents::Bag& bag,
                                        std::set<std::string>& seen) {
    if (bag.ids.empty()) {
        return std::string{"a bag has no id"};
    }
    const bool has_state = std::ranges::any_of(bag.events, [](const BagEvent& event) {
        return event.state && event.state != State::Renamed;
    });
    if (!has_state || !std::ranges::all_of(bag.events, can_be)) {
        return fmt::format("bag {} has a state or a time that cannot be", named(bag.ids.front()));
    }
    if (bag.events.size() > Most::events || bag.ids.size() > Most::ids) {
        return fmt::format("bag {} changed its state or its name more often than can be",
                           named(bag.ids.front()));
    }
    for (const auto& id : bag.ids) {
        const auto read = kitchen::parse_bag_id(id);
        if (!read || read.value() != id) {
            return fmt::format("a bag has the id \"{}\", which cannot be one", named(id));
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
    const auto& package =
        contents.days[bag.day].record.packages[static_cast<std::size_t>(bag.position - 1)];
    if (static_cast<std::size_t>(bag.number) > package.bags.size()) {
        return fmt::format("bag {} is beyond the number of bags of its dish", bag.ids.front());
    }
    return std::nullopt;
}

/// A bag of a package has a number of its own.
std::optional<std::string> fault_in_numbers(const Contents& contents) {
    std::set<std::tuple<std::size_t, int, int>> seen;
    for (const auto& bag : contents.bags) {
        if (!seen.emplace(bag.day, bag.position, bag.number).second) {
            return fmt::format("bag {} has the number of another bag of its dish", bag.ids.front());
        }
    }
    return std::nullopt;
}

std::optional<std::string> fault_in_print(const Contents& contents, const Contents::Print& print) {
    const bool keys_are_lines = std::ranges::all_of(print.keys, [](const Contents::Key& key) {
        return is_name(key.key) && is_moment(key.at) && is_name(key.station);
    });
    if (!is_moment(print.first_at) || !is_moment(print.last_at) || !keys_are_lines) {
        return std::string{"a print has a time that cannot be"};
    }
    if (print.keys.size() > Most::keys) {
        return fmt::format("the print of {} was made more often than can be", print.first_at);
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

void complete_days(Contents& contents) {
    std::map<int, std::pair<std::string, std::int64_t>> lineages; // origin, last order
    auto days = mapped(contents.days, [](Contents::Day& day) { return &day; });
    std::ranges::stable_sort(days, {}, &Contents::Day::revision);
    for (auto* day : days) {
        const auto origin =
            fmt::format("{} {}", day->recorded, hash_of_description(day->record.description));
        auto& [first, last] = lineages.try_emplace(day->lineage, origin, 0).first->second;
        last = day->ordered = order_after(last, day->recorded);
        for (auto& package : day->record.packages) {
            package.origin = first;
        }
    }
}

void complete_prints(Contents& contents) {
    std::set<std::string> taken;
    for (auto& print : contents.prints) {
        for (const auto& at : {print.first_at, print.last_at}) {
            const auto key = at + " " + print.setup.what;
            if (taken.insert(key).second) {
                print.keys.push_back({key, at, {}});
            }
        }
    }
}

} // namespace

void complete(Contents& contents, const std::vector<BagState>& states) {
    complete_days(contents);
    complete_prints(contents);
    for (std::size_t i = 0; i < contents.bags.size(); ++i) {
        const auto& [state, changed] = states.at(i);
        const auto clock = seconds_of(changed);
        contents.bags[i].events = {{clock * 1000, {}, 0, state, changed, clock}};
    }
}

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
    if (!fault) {
        fault = fault_in_numbers(contents);
    }
    for (auto print = contents.prints.begin(); !fault && print != contents.prints.end(); ++print) {
        fault = fault_in_print(contents, *print);
    }
    return fault;
}

} // namespace thawslip::archive
