#include "app/json/answers.h"
#include "app/json/members.h"
#include "archive/values.h"
#include "service/freezer/bags.h"

#include <nlohmann/json.hpp>

namespace thawslip::app {
namespace {

/// A whole number of grams without a point.
Json grams_json(const std::optional<kitchen::Mass>& weight) {
    if (!weight) {
        return {};
    }
    const auto whole = static_cast<std::int64_t>(weight->grams);
    return static_cast<double>(whole) == weight->grams ? Json(whole) : Json(weight->grams);
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
    const auto& bag = proposal.bag;
    Json json{{"eat", kitchen::to_iso(proposal.eat)},
              {"thaw_start", nullptr},
              {"thaw", nullptr},
              {"id", bag.id},
              {"dish", bag.dish},
              {"raw", service::is_raw(bag)},
              {"servings", bag.servings},
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

std::string freezer_json(std::span<const service::FoundBag> bags, kitchen::Date today) {
    Json answer = Json::array();
    for (const auto& found : bags) {
        answer.push_back(bag_json(found.bag, today));
    }
    return to_lines(answer);
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

std::string history_json(const archive::Bag& bag, std::span<const archive::PastEvent> history) {
    Json events = Json::array();
    for (const auto& past : history) {
        events.push_back(past_json(past));
    }
    return Json{{"id", bag.id}, {"dish", bag.dish}, {"history", std::move(events)}}.dump() + "\n";
}

std::string next_json(std::span<const service::Proposal> proposals) {
    Json answer = Json::array();
    for (const auto& proposal : proposals) {
        answer.push_back(proposal_json(proposal));
    }
    return to_lines(answer);
}

} // namespace thawslip::app
