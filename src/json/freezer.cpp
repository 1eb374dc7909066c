#include "archive/values.h"
#include "json/members.h"
#include "json/value.h"
#include "json/values.h"
#include "service/freezer/bags.h"

namespace thawslip::json {
namespace {

/// A whole number of grams without a point.
Json grams_json(const std::optional<kitchen::Mass>& weight) {
    if (!weight) {
        return {};
    }
    const auto whole = static_cast<std::int64_t>(weight->grams);
    return static_cast<double>(whole) == weight->grams ? Json(whole) : Json(weight->grams);
}

Json names_json(const std::vector<kitchen::DeclaredAllergen>& all, const wording::Style& style) {
    Json names = Json::array();
    for (const auto& declared : all) {
        for (const auto& named : declared.meant) {
            names.push_back(kitchen::label_name(named, *style.allergens));
        }
        if (declared.meant.empty()) {
            names.push_back(declared.as_written);
        }
    }
    return names;
}

std::string_view word_of(service::NamedIn in) {
    using enum service::NamedIn;
    switch (in) {
    case Contains: return "contains";
    case MayContain: return "may contain";
    case Added: return "added";
    case Words: return "words";
    case Group: break;
    }
    return "group";
}

/// What its label names; null where that is not known any longer.
void add_allergens(Json& json, const service::FoundBag& found, const wording::Style& style) {
    const auto& known = found.allergens;
    json["contains"] = known ? names_json(known->contains, style) : Json{};
    json["may_contain"] = known ? names_json(known->may_contain, style) : Json{};
    json["added"] = known ? names_json(known->added, style) : Json{};
    if (!found.named.empty()) {
        json["named"] = list_of(found.named, [](const service::AvoidedNamed& named) {
            return Json{{"word", named.avoided}, {"where", word_of(named.in)}, {"as", named.as}};
        });
    }
}

Json bag_json(const archive::Bag& bag, kitchen::Date today) {
    return {{"id", bag.id},
            {"dish", bag.dish},
            {"raw", service::is_raw(bag)},
            {"servings", bag.servings},
            {"made", kitchen::to_iso(bag.made)},
            {"keep_until", kitchen::to_iso(bag.keep_until)},
            {"basis", archive::word_of(bag.basis)},
            {"days_left", kitchen::days_between(today, bag.keep_until).count()},
            {"grams", grams_json(bag.weight)},
            {"state", shown_word(bag.state)},
            {"changed", bag.changed},
            {"place", bag.place}};
}

Json proposal_json(const service::Proposal& proposal) {
    const auto& bag = proposal.bags.front();
    Json json{{"eat", kitchen::to_iso(proposal.eat)},
              {"thaw_start", nullptr},
              {"thaw", nullptr},
              {"id", bag.id},
              {"ids", list_of(proposal.bags, &archive::Bag::id)},
              {"dish", bag.dish},
              {"raw", service::is_raw(bag)},
              {"servings", proposal.servings()},
              {"place", bag.place},
              {"keep_until", kitchen::to_iso(bag.keep_until)},
              {"basis", archive::word_of(bag.basis)}};
    if (proposal.thaw_start) {
        json["thaw_start"] = kitchen::to_iso(*proposal.thaw_start);
    }
    if (proposal.method) {
        json["thaw"] = archive::word_of(*proposal.method);
    }
    add_thaw(json, proposal.thaw_time, proposal.cook_within);
    return json;
}

} // namespace

Json freezer_json(std::span<const service::FoundBag> bags, kitchen::Date today,
                  const wording::Style& style) {
    return list_of(bags, [&](const service::FoundBag& found) {
        auto json = bag_json(found.bag, today);
        add_allergens(json, found, style);
        return json;
    });
}

namespace {

Json past_json(const archive::PastEvent& past) {
    const auto& event = past.event;
    Json json{{"at", event.at}, {"id", past.id}, {"undone", past.is_undone}};
    if (event.state) {
        json["state"] = shown_word(*event.state);
    }
    if (event.place) {
        json["place"] = *event.place;
    }
    if (!event.joined.empty()) {
        json["known_as"] = event.joined;
    }
    if (event.undoes != 0) {
        json["takes_back"] = true;
    }
    return json;
}

} // namespace

Json history_json(const archive::Bag& bag, std::span<const archive::PastEvent> history) {
    return {{"id", bag.id}, {"dish", bag.dish}, {"history", list_of(history, past_json)}};
}

Json next_json(std::span<const service::Proposal> proposals) {
    return list_of(proposals, proposal_json);
}

} // namespace thawslip::json
