#include "service/freezer/bags.h"

#include "base/letters.h"
#include "base/utf8.h"
#include "intake/storage_file.h"
#include "kitchen/bag_id.h"
#include "service/day/door_rows.h"
#include "service/freezer/named_bags.h"
#include "service/freezer/packages_of_bags.h"
#include "unicode/ascii.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::service {
namespace {

/// The symbols of an id as typed: capitals, without what parts them, O as 0, I and L as 1.
std::string symbols_in(std::string_view typed) {
    std::string symbols;
    for (const char each : typed) {
        const char c = to_upper(each);
        if (is_letter_or_digit(c)) {
            symbols += c == 'O' ? '0' : c == 'I' || c == 'L' ? '1' : c;
        }
    }
    return symbols;
}

std::vector<std::string> near_ids(archive::Archive& archive, const std::string& typed) {
    std::string near;
    for (const auto& id : archive.near_ids(symbols_in(typed))) {
        const auto bag = archive.bag(id);
        near +=
            fmt::format("{}{} ({})", near.empty() ? "there is " : ", ", id, bag ? bag->dish : "");
    }
    return {near.empty() ? "thawslip freezer list names all bags by their ids" : near};
}

std::optional<archive::Bag> bag_by_id(archive::Archive& archive, const std::string& typed,
                                      Messages& messages) {
    const auto id = kitchen::parse_bag_id(typed);
    if (!id) {
        const bool clean = !first_invalid_utf8(typed);
        const bool named = id.fault().kind == kitchen::BagIdFault::Kind::WrongCheck;
        messages.error(named || !clean
                           ? id.fault().message
                           : fmt::format("\"{}\" is not a bag id: {}", typed, id.fault().message),
                       near_ids(archive, typed));
        return std::nullopt;
    }
    auto bag = archive.bag(id.value());
    if (!bag) {
        messages.error(fmt::format("no bag {} was ever printed", id.value()),
                       near_ids(archive, typed));
    }
    return bag;
}

/// \param planned what the bag was filled with; nullptr where that is not known any longer
wording::DoorRow row_of(const archive::Bag& bag, const kitchen::PlannedPackage* planned,
                        const kitchen::AllergenList& list) {
    wording::DoorRow row{bag.keep_until, bag.basis, bag.dish, bag.servings, {}, {}};
    row.raw = is_raw(bag);
    if (planned != nullptr) {
        row.allergens = door_allergens(*planned, list);
        row.eaten_frozen = planned->served == kitchen::Served::Frozen;
    }
    row.place = bag.place;
    if (bag.thaw) {
        row.thaw = bag.thaw->method;
        row.thaw_lead = bag.thaw->lead;
    }
    return row;
}

} // namespace

Outcome<std::vector<archive::Bag>> bags_by_id(archive::Archive& archive,
                                              const std::vector<std::string>& typed) {
    Outcome<std::vector<archive::Bag>> outcome;
    std::vector<archive::Bag> bags;
    for (const auto& one : typed) {
        const auto bag = bag_by_id(archive, one, outcome.messages);
        if (bag && std::ranges::find(bags, bag->id, &archive::Bag::id) == bags.end()) {
            bags.push_back(*bag);
        }
    }
    if (!outcome.messages.have_errors()) {
        outcome.value = std::move(bags);
    }
    return outcome;
}

Outcome<std::vector<archive::Bag>>
bags_meant(archive::Archive& archive, const std::vector<std::string>& typed, archive::Which which) {
    Outcome<std::vector<archive::Bag>> outcome;
    std::vector<archive::Bag> bags;
    for (const auto& part : parts_of(archive, typed)) {
        auto named = named_bags(archive, part, which);
        outcome.messages.add(named.messages);
        for (auto& bag : named.value.value_or(NamedBags{}).bags) {
            if (std::ranges::find(bags, bag.id, &archive::Bag::id) == bags.end()) {
                bags.push_back(std::move(bag));
            }
        }
    }
    if (!outcome.messages.have_errors()) {
        outcome.value = std::move(bags);
    }
    return outcome;
}

std::string search_words(const std::vector<std::string>& words) {
    std::string all;
    for (const auto& word : words) {
        all += first_invalid_utf8(word) ? "" : word + " ";
    }
    return unicode::fold_for_search(all);
}

bool is_raw(const archive::Bag& bag) {
    static const auto table = intake::built_in_storage("us"); // raw is raw in every list
    return kitchen::any_raw(table, bag.classes);
}

bool are_of_one_package(const archive::Bag& a, const archive::Bag& b) {
    return a.day == b.day && a.dish == b.dish && a.made == b.made && a.size == b.size;
}

bool is_gone(const archive::Bag& bag) {
    return bag.state == archive::State::Eaten || bag.state == archive::State::Discarded ||
           bag.state == archive::State::NeverFilled;
}

std::vector<wording::DoorRow> door_rows(archive::Archive& archive,
                                        const kitchen::AllergenList& list) {
    std::vector<wording::DoorRow> rows;
    PackagesOfBags packages{archive};
    auto bags = archive.bags(archive::Which::InFreezer);
    // Bags of one package that lie at two places are two rows.
    std::ranges::stable_sort(bags, [](const archive::Bag& a, const archive::Bag& b) {
        return std::tie(a.keep_until, a.dish, a.day, a.size, a.place) <
               std::tie(b.keep_until, b.dish, b.day, b.size, b.place);
    });
    const archive::Bag* last = nullptr;
    for (const auto& bag : bags) {
        if (last == nullptr || !are_of_one_package(*last, bag) || last->place != bag.place) {
            rows.push_back(row_of(bag, packages.of(bag), list));
        }
        rows.back().bags.push_back({bag.id, bag.number});
        last = &bag;
    }
    return rows;
}

} // namespace thawslip::service
