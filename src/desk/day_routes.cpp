#include "base/number_in.h"
#include "desk/answers.h"
#include "desk/body.h"
#include "desk/day_text.h"
#include "desk/edits.h"
#include "desk/route.h"
#include "json/value.h"
#include "service/new_day/day_again.h"
#include "service/new_day/new_day_text.h"

#include <array>

namespace thawslip::desk {
namespace {

/// What a page asks about a day: its file and what stands in it now.
struct DayFile {
    int number = 0;
    std::string name;
    std::optional<std::string> text; ///< nothing where it is gone
};

std::optional<DayFile> day_asked_for(const Session& session, const Asked& asked) {
    DayFile day;
    day.number = number_in<int>(asked.part).value_or(0);
    const auto name = session.days.name_of(day.number);
    if (!name) {
        return std::nullopt;
    }
    day.name = *name;
    day.text = session.machine.days.read(day.name);
    return day;
}

http::Response no_such_day() {
    return refusal(404, "there is no day of this number");
}

/// A text that a page may have put into a file. \throws BadRequest
void refuse_unfit(const std::string& text) {
    constexpr std::size_t largest = std::size_t{1} << 20U; // as a description may be
    if (text.size() > largest || text.find('\0') != std::string::npos) {
        throw BadRequest{"a day's text has no more than 1 MiB, and no NUL in it"};
    }
}

json::Json json_or_null(const std::optional<std::string>& text) {
    return text ? json::Json(*text) : json::Json{};
}

http::Response shown_day(Session& session, const Asked& asked) {
    const auto day = day_asked_for(session, asked);
    if (!day || !day->text) {
        return no_such_day();
    }
    return answer_with({{"number", day->number},
                        {"name", day->name},
                        {"text", page_text(*day->text)},
                        {"etag", etag_of(day->text)},
                        {"draft", json_or_null(session.machine.drafts.read(day->name))}});
}

/// What another program has saved meanwhile: nothing of it is lost, and nothing of the page's.
http::Response saved_meanwhile(const std::optional<std::string>& text) {
    return answer_with(
        {{"text", text ? json::Json(page_text(*text)) : json::Json{}}, {"etag", etag_of(text)}},
        409);
}

http::Response saved_day(Session& session, const Asked& asked) {
    const auto day = day_asked_for(session, asked);
    if (!day) {
        return no_such_day();
    }
    const auto text = needed_text(body_of(asked.request), "text");
    refuse_unfit(text);
    if (http::header_of(asked.request, "if-match") != etag_of(day->text)) {
        return saved_meanwhile(day->text);
    }
    const auto& machine = session.machine;
    const auto whole = file_text(text, day->text.value_or(""));
    if (!machine.days.write(day->name, day->text, whole)) {
        return saved_meanwhile(machine.days.read(day->name));
    }
    if (machine.drafts.read(day->name) == text) { // another tab may have one of its own
        machine.drafts.write(day->name, {});
    }
    return answer_with({{"etag", etag_of(whole)}});
}

/// A day is taken away as the page has seen it; what was printed of it stays in the archive.
http::Response removed_day(Session& session, const Asked& asked) {
    body_of(asked.request);
    const auto day = day_asked_for(session, asked);
    if (!day || !day->text) {
        return no_such_day();
    }
    const auto& machine = session.machine;
    if (http::header_of(asked.request, "if-match") != etag_of(day->text) ||
        !machine.days.remove(day->name, *day->text)) {
        return saved_meanwhile(machine.days.read(day->name));
    }
    machine.drafts.write(day->name, {}); // else a new day of this name would be offered it
    return answer_with({{"etag", etag_of(std::nullopt)}});
}

http::Response kept_draft(Session& session, const Asked& asked) {
    const auto day = day_asked_for(session, asked);
    if (!day) {
        return no_such_day();
    }
    const auto body = body_of(asked.request);
    const auto text = text_at(body, "text").value_or("");
    refuse_unfit(text);
    const auto& drafts = session.machine.drafts;
    const bool is_saved = day->text && page_text(*day->text) == text;
    const bool is_kept = !text.empty() && !is_saved;
    const auto there = drafts.read(day->name);
    // Another tab may have put one of its own in its place; who says no `was` does not mind.
    const bool is_own = !body.contains("was") || there == text_at(body, "was") || there == text;
    if (is_kept && there && !is_own) {
        return answer_with({{"draft", *there}}, 409);
    }
    if (is_kept || is_own) {
        drafts.write(day->name, is_kept ? text : std::string{});
    }
    return answer_with(json::Json::object());
}

/// What a new day begins with; nothing, with why in `why`, where a former one cannot be taken.
std::optional<std::string> beginning(const Session& session, const json::Json& body,
                                     const service::Settings& settings, kitchen::Date made,
                                     std::string& why) {
    service::NewDay day{made, {}, {}};
    const auto from = body.find("from");
    if (from != body.end() && from->is_number()) {
        const auto name = session.days.name_of(needed_number(body, "from"));
        const auto text = name ? session.machine.days.read(*name) : std::nullopt;
        auto again = text ? service::day_again(page_text(*text), made)
                          : Failure{std::string{"there is no day of this number"}};
        why = again ? std::string{} : again.fault();
        return again ? std::optional{std::move(again).value()} : std::nullopt;
    }
    const auto word = needed_text(body, "from");
    if (word != "blank" && word != "sample") {
        throw BadRequest{"\"from\" is to be \"blank\", \"sample\" or the number of a day"};
    }
    if (word == "blank") {
        day.dishes.emplace_back();
    }
    return service::new_day_text(day, settings.language, settings.kitchen.allergens->name,
                                 service::freezable_kinds(settings.storage_list));
}

http::Response new_day(Session& session, const Asked& asked) {
    const auto body = body_of(asked.request);
    const auto made = kitchen::parse_iso(needed_text(body, "made"));
    constexpr std::chrono::year first{1990}; // as a description may have it
    constexpr std::chrono::year last{2200};
    if (!made || made->year() < first || made->year() > last) {
        throw BadRequest{"\"made\" is to be a day from 1990 to 2200, as 2026-10-17"};
    }
    const auto settings = needed(session.machine.settings());
    std::string why;
    const auto text = beginning(session, body, settings, *made, why);
    if (!text) {
        return refusal(422, why);
    }
    constexpr int most_numbers = 1000; // files of one name
    for (int number = 1; number <= most_numbers; ++number) {
        const auto name = service::day_file_name(*made, text_at(body, "name").value_or(""), number);
        if (session.machine.days.write(name, std::nullopt, *text)) {
            return answer_with({{"number", session.days.number_of(name)}, {"name", name}});
        }
    }
    return refusal(422, "there are too many days of this name: give it another");
}

http::Response edited_text(Session&, const Asked& asked) {
    const auto body = body_of(asked.request);
    const auto text = needed_text(body, "text");
    const auto edited = toml::edit(text, edits_at(body));
    if (!edited) {
        return refusal(422, edited.fault());
    }
    return answer_with(
        {{"text", edited.value().text}, {"changes", changes_json(edited.value().changes, text)}});
}

} // namespace

std::span<const Route> day_routes() {
    using http::Method;
    static constexpr std::array routes = {
        Route{Method::Get, "/api/day/*", shown_day},
        Route{Method::Put, "/api/day/*", saved_day},
        Route{Method::Post, "/api/day/*/remove", removed_day},
        Route{Method::Post, "/api/days", new_day},
        Route{Method::Put, "/api/draft/*", kept_draft},
        Route{Method::Post, "/api/edit", edited_text, false},
    };
    return routes;
}

} // namespace thawslip::desk
