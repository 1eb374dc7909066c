#include "archive/values.h"
#include "json/members.h"
#include "json/value.h"
#include "json/values.h"
#include "service/read/message_text.h"
#include "wording/phrases.h"

namespace thawslip::json {
namespace {

/// Adds what is said: neither an empty text nor an empty list.
template <class Value>
void add_said(Json& object, const char* key, const Value& value) {
    if (!value.empty()) {
        object[key] = value;
    }
}

void add_dates(Json& object, const code::Message& message, kitchen::Date today) {
    if (message.made) {
        object["made"] = kitchen::to_iso(*message.made);
    }
    if (const auto& keep = message.keep_until) {
        object["keep_until"] = kitchen::to_iso(keep->date);
        object["basis"] = archive::word_of(keep->basis);
        object["days_left"] = kitchen::days_between(today, keep->date).count();
    }
}

std::optional<std::chrono::days> days_of(std::optional<int> days) {
    return days ? std::optional{std::chrono::days{*days}} : std::nullopt;
}

void add_how_to_thaw(Json& object, const code::Message& message) {
    if (message.thaw) {
        object["thaw"] = archive::word_of(*message.thaw);
    }
    add_thaw(object, message.thaw_time, days_of(message.cook_within_days));
    add_said(object, "thaw_note", message.thaw_note);
    for (const auto& other : message.other_thaws) {
        Json way{{"thaw", archive::word_of(other.thaw)}};
        add_thaw(way, other.thaw_time, days_of(other.cook_within_days));
        object["other_thaws"].push_back(std::move(way));
    }
}

Json additions_json(const std::vector<code::Addition>& additions, const wording::Style& style) {
    return list_of(additions, [&style](const code::Addition& addition) {
        Json one{{"add", addition.what}, {"when", say_when(addition.when, style.language)}};
        add_said(one, "bag", addition.bag);
        return one;
    });
}

} // namespace

Json message_json(const code::Message& message, kitchen::Date today, const wording::Style& style) {
    Json json{{"dish", message.dish}};
    if (message.raw) {
        json["raw"] = true;
    }
    add_said(json, "id", message.bag_id);
    if (message.servings) {
        json["servings"] = *message.servings;
    }
    add_dates(json, message, today);
    add_how_to_thaw(json, message);
    json["finish"] = additions_json(message.additions, style);
    add_said(json, "cook", service::cooking_text(message.cooking, style));
    add_said(json, "steps", message.steps);
    add_said(json, "cautions", message.cautions);
    add_said(json, "may_contain", message.may_contain);
    add_said(json, "contains", message.allergens);
    add_said(json, "note", message.note);
    if (message.extent == code::Extent::SeeCard) {
        json["see_card"] = true;
    }
    return json;
}

Json text_json(const std::string& text) {
    return {{"text", text}};
}

} // namespace thawslip::json
