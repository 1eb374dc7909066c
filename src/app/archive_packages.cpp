#include "app/archive_bags.h"
#include "app/archive_place.h"
#include "kitchen/bag_id.h"
#include "service/freezer/bags.h"
#include "service/print/own_files.h"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>
#include <map>
#include <ostream>

namespace thawslip::app {
namespace {

bool names_a_file(const std::string& word) {
    std::error_code error;
    return service::is_file_name(word) || std::filesystem::is_regular_file(word, error);
}

/// "lentil stew" is one dish where a bag has both words; "stew compote" are two.
std::vector<std::vector<std::string>> parts_of(archive::Archive& archive,
                                               const std::vector<std::string>& typed) {
    if (!archive.find(service::search_words(typed), archive::Which::InFreezer).empty()) {
        return {typed};
    }
    std::vector<std::vector<std::string>> parts;
    for (const auto& one : typed) {
        parts.push_back({one});
    }
    return parts;
}

/// The first bags of each dish.
std::vector<archive::Bag> first_of_each(const std::vector<archive::Bag>& bags, int of_each) {
    std::map<std::string, int> taken;
    std::vector<archive::Bag> first;
    for (const auto& bag : bags) {
        if (taken[bag.dish]++ < of_each) {
            first.push_back(bag);
        }
    }
    return first;
}

bool are_ids(const std::vector<archive::Bag>& bags, const std::vector<std::string>& typed) {
    return bags.size() == typed.size() && std::ranges::all_of(typed, [](const std::string& word) {
               return kitchen::parse_bag_id(word).ok();
           });
}

/// \returns whether they can be eaten
bool judge(const std::vector<archive::Bag>& bags, kitchen::Date on, Console console) {
    bool all_there = true;
    for (const auto& bag : bags) {
        const auto which = fmt::format("bag {} ({})", bag.id, bag.dish);
        const bool gone = service::is_gone(bag);
        if (gone) {
            console.err << fmt::format("error: {} was {} on {}\n", which,
                                       bag.state == archive::State::Eaten ? "eaten" : "thrown away",
                                       bag.changed.substr(0, 10));
            all_there = false;
        } else if (bag.state == archive::State::Out) {
            console.err << fmt::format("caution: {} is out of the freezer since {}\n", which,
                                       bag.changed.substr(0, 16));
        }
        if (!gone && bag.keep_until < on) {
            console.err << fmt::format("caution: {} is past the date on its label by then, {}\n",
                                       which, kitchen::to_iso(bag.keep_until));
        }
    }
    return all_there;
}

/// Adds a bag to its package, which may stand there already with another bag.
void add(std::vector<kitchen::PlannedPackage>& packages, kitchen::PlannedPackage package,
         const std::string& id) {
    const auto known = std::ranges::find_if(packages, [&](const kitchen::PlannedPackage& other) {
        return other.package.dish == package.package.dish && other.made == package.made;
    });
    const auto bag = *std::ranges::find(package.bags, id, &kitchen::Bag::id);
    if (known != packages.end()) {
        if (std::ranges::find(known->bags, id, &kitchen::Bag::id) == known->bags.end()) {
            known->bags.push_back(bag);
        }
        return;
    }
    package.bags = {bag};
    packages.push_back(std::move(package));
}

} // namespace

bool mean_bags(const std::vector<std::string>& typed) {
    return !typed.empty() && std::ranges::none_of(typed, names_a_file);
}

std::optional<std::vector<kitchen::PlannedPackage>>
packages_meant(const BagsToEat& wanted, const Settings& settings, Console console) {
    auto archive = existing_archive(settings, archive::Mode::Read);
    if (!archive) {
        console.err << fmt::format("error: there is no file \"{}\", and nothing has been printed "
                                   "yet, so no bag is known\n",
                                   wanted.typed.front());
        return std::nullopt;
    }
    std::vector<archive::Bag> bags;
    for (const auto& one : parts_of(*archive, wanted.typed)) {
        const auto meant = service::bags_meant(*archive, one);
        console.err << to_text(meant.messages);
        if (!meant) {
            return std::nullopt;
        }
        std::ranges::move(are_ids(*meant.value, one) ? *meant.value
                                                     : first_of_each(*meant.value, wanted.of_each),
                          std::back_inserter(bags));
    }
    if (!judge(bags, wanted.on, console)) {
        return std::nullopt;
    }
    PackagesOfBags known{*archive};
    std::vector<kitchen::PlannedPackage> packages;
    for (const auto& bag : bags) {
        const auto* package = known.of(bag);
        if (package == nullptr) {
            console.err << fmt::format("error: {}\n", known.why_not(bag));
            return std::nullopt;
        }
        add(packages, *package, bag.id);
    }
    return packages;
}

} // namespace thawslip::app
