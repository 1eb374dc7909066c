#include "base/list.h"
#include "desk/answers.h"
#include "desk/body.h"
#include "desk/day_text.h"
#include "desk/edits.h"
#include "desk/route.h"
#include "json/value.h"
#include "kitchen/allergens/allergen_list.h"
#include "service/setup/settings_text.h"

#include <array>
#include <cmath>
#include <fmt/format.h>

namespace thawslip::desk {
namespace {

using service::JobSettings;
using service::Settings;

/// What one kind of print is printed by and on: a table of the settings.
struct Job {
    const char* table;
    JobSettings Settings::*job;
};
constexpr Job jobs[] = {{"labels", &Settings::labels},
                        {"finishing_cards", &Settings::finishing_cards},
                        {"cook_day_cards", &Settings::cook_day_cards},
                        {"lists", &Settings::lists}};

json::Json languages_json(const Settings& settings) {
    auto languages = json::Json::array({settings.language});
    if (!settings.second_language.empty()) {
        languages.push_back(settings.second_language);
    }
    return languages;
}

std::string units_of(const Settings& settings) {
    const auto options = service::setting_options();
    return std::ranges::find(options, std::string_view{"units"}, &service::SettingOption::key)
        ->text(settings);
}

/// "4 °C", "4.4 °C": to the tenth, as thermometers show it.
std::string degrees_text(double celsius) {
    return fmt::format("{:g} °C", std::round(celsius * 10) / 10);
}

/// What holds now, by the keys that the page may set.
json::Json values_json(const Settings& settings) {
    json::Json values{{"language", languages_json(settings)},
                      {"paper", settings.paper},
                      {"large_print", settings.large_print},
                      {"units", units_of(settings)},
                      {"allergens", settings.kitchen.allergens->name},
                      {"storage_list", settings.storage_list},
                      {"people_at_risk", settings.kitchen.people_at_risk},
                      {"refrigerator", degrees_text(settings.kitchen.thaw.refrigerator.celsius)}};
    for (const auto& [table, job] : jobs) {
        const auto& [printer, stock, dots, copies] = settings.*job;
        const std::string of = std::string{table} + ".";
        values[of + "stock"] = stock;
        values[of + "printer"] = printer;
        values[of + "dpi"] = dots ? json::Json(*dots) : json::Json{};
    }
    return values;
}

json::Json words_json(std::span<const toml::Word> words) {
    return json::list_of(words, [](const toml::Word& word) { return word.word; });
}

json::Json choices_json() {
    return {{"paper", words_json(service::paper_words())},
            {"units", words_json(service::unit_words())},
            {"storage_list", words_json(service::storage_list_words())},
            {"language", wording::shipped_languages()},
            {"allergens", json::list_of(kitchen::allergen_lists(),
                                        [](const auto& list) { return json::Json(list.name); })}};
}

http::Response shown_setup(Session& session, const Asked&) {
    const auto settings = needed(session.machine.settings());
    const auto text = session.machine.settings_file.read();
    return answer_with({{"file", session.machine.settings_file.place},
                        {"there", text.has_value()},
                        {"etag", etag_of(text)},
                        {"values", values_json(settings)},
                        {"choices", choices_json()}});
}

/// What the page asks to be set. \throws BadRequest for what it has no field for
std::vector<toml::Edit> settings_edits(const json::Json& body, const Settings& now) {
    auto edits = edits_at(body);
    const auto known = values_json(now);
    for (const auto& edit : edits) {
        const bool sets =
            edit.what == toml::Edit::What::Set || edit.what == toml::Edit::What::TakeOut;
        if (!sets || !known.contains(edit.path.text())) {
            throw BadRequest{"this key of the settings is not set here"};
        }
    }
    return edits;
}

http::Response changed_meanwhile() {
    return refusal(409, "the settings were changed elsewhere meanwhile: look at them again");
}

http::Response kept_setup(Session& session, const Asked& asked) {
    const auto& file = session.machine.settings_file;
    const auto now = needed(session.machine.settings());
    const auto before = file.read();
    if (http::header_of(asked.request, "if-match") != etag_of(before)) {
        return changed_meanwhile();
    }
    const auto text = before ? page_text(*before) : service::settings_text(now);
    const auto edited = toml::edit(text, settings_edits(body_of(asked.request), now));
    if (!edited) {
        return refusal(422, edited.fault());
    }
    const auto read = service::settings_from(edited.value().text, file.place);
    needed(read);
    const auto whole = file_text(edited.value().text, before.value_or(""));
    if (!file.write(before, whole)) {
        return changed_meanwhile();
    }
    return answer_with({{"etag", etag_of(whole)},
                        {"values", values_json(needed(session.machine.settings()))},
                        {"messages", messages_for_page(read.messages)}});
}

} // namespace

std::span<const Route> setup_routes() {
    using http::Method;
    static constexpr std::array routes = {Route{Method::Get, "/api/setup", shown_setup},
                                          Route{Method::Put, "/api/setup", kept_setup}};
    return routes;
}

} // namespace thawslip::desk
