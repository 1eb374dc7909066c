#include "app/archive_bags.h"

#include "app/archive_place.h"
#include "app/day_files.h"
#include "app/print_setup.h"
#include "base/utf8.h"
#include "intake/storage_file.h"
#include "kitchen/bag_id.h"
#include "unicode/ascii.h"
#include "wording/phrases.h"

#include <algorithm>
#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

bool has_digit(std::string_view text) {
    return std::ranges::any_of(text, [](char c) { return c >= '0' && c <= '9'; });
}

/// The symbols of an id as typed: capitals, without what parts them, O as 0, I and L as 1.
std::string symbols_in(std::string_view typed) {
    std::string symbols;
    for (char c : typed) {
        c = c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
        if ((c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9')) {
            symbols += c == 'O' ? '0' : c == 'I' || c == 'L' ? '1' : c;
        }
    }
    return symbols;
}

void refuse(const std::string& message, archive::Archive& archive, const std::string& typed,
            Console console) {
    console.err << "error: " << message << "\n";
    const auto near = archive.near_ids(symbols_in(typed));
    if (!near.empty()) {
        std::string hint;
        for (const auto& id : near) {
            const auto bag = archive.bag(id);
            hint += fmt::format("{}{} ({})", hint.empty() ? "" : ", ", id, bag ? bag->dish : "");
        }
        console.err << "    hint: there is " << hint << "\n";
    }
}

std::optional<archive::Bag> bag_by_id(archive::Archive& archive, const std::string& typed,
                                      Console console) {
    const auto id = kitchen::parse_bag_id(typed);
    if (!id) {
        const bool clean = !first_invalid_utf8(typed);
        const bool named = id.fault().kind == kitchen::BagIdFault::Kind::WrongCheck;
        refuse(named || !clean
                   ? id.fault().message
                   : fmt::format("\"{}\" is no bag's id: {}", typed, id.fault().message),
               archive, typed, console);
        return std::nullopt;
    }
    auto bag = archive.bag(id.value());
    if (!bag) {
        refuse(fmt::format("no bag {} was ever printed", id.value()), archive, typed, console);
    }
    return bag;
}

/// The packages of a day of the archive; none where its description cannot be read any longer.
std::vector<kitchen::PlannedPackage> packages_of(archive::Archive& archive, archive::DayKey key) {
    const auto day = archive.day(key);
    if (day.is_rotten) {
        return {};
    }
    const auto prints = archive.prints_of(key);
    const auto settings = prints.empty() ? Settings{} : printed_with(prints.front().setup).settings;
    auto days = plan_days(std::vector<DayText>{{day.file, day.description, day.batches}}, settings);
    return days.plans.empty() ? std::vector<kitchen::PlannedPackage>{}
                              : std::move(days.plans.front().packages);
}

} // namespace

std::optional<std::vector<archive::Bag>>
bags_by_id(archive::Archive& archive, const std::vector<std::string>& typed, Console console) {
    std::vector<archive::Bag> bags;
    bool all_known = true;
    for (const auto& one : typed) {
        const auto bag = bag_by_id(archive, one, console);
        if (bag && std::ranges::find(bags, bag->id, &archive::Bag::id) == bags.end()) {
            bags.push_back(*bag);
        }
        all_known = all_known && bag;
    }
    return all_known ? std::optional{bags} : std::nullopt;
}

std::optional<std::vector<archive::Bag>>
bags_meant(archive::Archive& archive, const std::vector<std::string>& typed, Console console) {
    std::string words;
    for (const auto& one : typed) {
        if (first_invalid_utf8(one)) {
            console.err << "error: the words are not UTF-8\n";
            return std::nullopt;
        }
        words += one + " ";
    }
    // A word of nine letters may look like an id; only one that exists is taken for one.
    const auto first = kitchen::parse_bag_id(typed.empty() ? "" : typed.front());
    const bool ids =
        !typed.empty() && (has_digit(typed.front()) || (first && archive.bag(first.value())));
    if (ids) {
        return bags_by_id(archive, typed, console);
    }
    auto bags = archive.find(unicode::fold_for_search(words), archive::Which::InFreezer);
    if (bags.empty()) {
        console.err << fmt::format("error: no bag in the freezer is called \"{}\"\n",
                                   words.substr(0, words.size() - 1));
        return std::nullopt;
    }
    return bags;
}

std::string_view date_head(const archive::Bag& bag) {
    return bag.basis == kitchen::DateBasis::SetByCook ? "use by" : "best by";
}

bool is_raw(const archive::Bag& bag) {
    static const auto table = intake::built_in_storage("us"); // raw is raw in every list
    return kitchen::any_raw(table, bag.classes);
}

std::string dish_text(const archive::Bag& bag) {
    return wording::say_dish(bag.dish, is_raw(bag), wording::shipped_language("en"));
}

const kitchen::PlannedPackage* PackagesOfBags::of(const archive::Bag& bag) {
    const auto [known, is_new] = days_.try_emplace(bag.day);
    if (is_new) {
        known->second = packages_of(*archive_, bag.day);
    }
    const auto has_bag = [&bag](const kitchen::PlannedPackage& planned) {
        return std::ranges::find(planned.bags, bag.id, &kitchen::Bag::id) != planned.bags.end();
    };
    const auto found = std::ranges::find_if(known->second, has_bag);
    return found == known->second.end() ? nullptr : &*found;
}

std::string rotten_text(const archive::StoredDay& day) {
    return fmt::format("the description of {}{} is not what was recorded: its hash is another, so "
                       "nothing is said by it\n    hint: a backup has it: thawslip archive restore "
                       "FILE; all that is wrong is named by: thawslip archive check",
                       kitchen::to_iso(day.made),
                       day.file.empty() ? "" : ", read from " + day.file);
}

std::string PackagesOfBags::why_not(const archive::Bag& bag) const {
    const auto day = archive_->day(bag.day);
    return day.is_rotten
               ? rotten_text(day)
               : fmt::format("the description of bag {} cannot be read any longer", bag.id);
}

std::optional<KnownBag> package_of(const std::string& typed_id, const Settings& settings,
                                   Console console) {
    auto archive = existing_archive(settings, archive::Mode::Read);
    if (!archive) {
        console.err << "error: nothing has been printed yet, so no bag is known\n";
        return std::nullopt;
    }
    const auto bags = bags_by_id(*archive, {typed_id}, console);
    if (!bags) {
        return std::nullopt;
    }
    PackagesOfBags packages{*archive};
    const auto* package = packages.of(bags->front());
    if (!package) {
        console.err << fmt::format("error: {}\n", packages.why_not(bags->front()));
        return std::nullopt;
    }
    return KnownBag{bags->front(), *package};
}

} // namespace thawslip::app
