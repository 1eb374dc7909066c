#include "service/setup/settings_edits.h"

#include "service/print/job.h"

#include <cmath>
#include <cstdint>
#include <string>
#include <utility>

namespace thawslip::service {
namespace {

using toml::Edit;

Edit key_set(std::string path, toml::Content content) {
    return {Edit::What::Set, KeyPath{std::move(path)}, toml::Value{std::move(content), {}}};
}

Edit key_taken_out(std::string path) {
    return {Edit::What::TakeOut, KeyPath{std::move(path)}};
}

/// A text, or a key taken out where it is empty.
Edit set_or_take_out(std::string path, const std::string& text) {
    return text.empty() ? key_taken_out(std::move(path))
                        : key_set(std::move(path), toml::Content{text});
}

toml::Content languages_value(const Settings& settings) {
    if (settings.second_language.empty()) {
        return settings.language;
    }
    return toml::Array{{{settings.language, {}}, {settings.second_language, {}}}};
}

bool is_whole_number(double number) {
    return std::floor(number) == number;
}

/// 300 as a cook writes it, not 300.0.
toml::Content dots_of(double dots) {
    return is_whole_number(dots) ? toml::Content{static_cast<std::int64_t>(dots)}
                                 : toml::Content{dots};
}

/// What one kind of print is printed by and on: a table of the settings.
struct JobTable {
    std::string name;
    What what;
};

void add_job(const JobTable& table, const Settings& before, const Settings& answered,
             std::vector<Edit>& edits) {
    const auto& was = settings_of(table.what, before);
    const auto& now = settings_of(table.what, answered);
    if (now.printer != was.printer) {
        edits.push_back(set_or_take_out(table.name + ".printer", now.printer));
    }
    // A stock that is named although it is the usual one may stay named.
    const bool is_same_stock =
        now.stock.empty() && usual_stock(table.what, before) == usual_stock(table.what, answered);
    if (now.stock != was.stock && !is_same_stock) {
        edits.push_back(set_or_take_out(table.name + ".stock", now.stock));
    }
    const auto dots = now.dots_per_inch.value_or(usual_dots_per_inch);
    if (dots != was.dots_per_inch.value_or(usual_dots_per_inch)) {
        edits.push_back(key_set(table.name + ".dpi", dots_of(dots)));
    }
}

/// Settings of the command line that `setup` may be told.
void add_options(const Settings& before, const Settings& answered, std::vector<Edit>& edits) {
    for (const auto& option : setting_options()) {
        const bool is_of_its_own =
            option.key == std::string_view{"paper"} || option.key == std::string_view{"language"};
        if (const auto text = option.text(answered);
            !is_of_its_own && text != option.text(before)) {
            edits.push_back(key_set(option.key, toml::Content{text}));
        }
    }
}

} // namespace

std::vector<Edit> settings_edits(const Settings& before, const Settings& answered) {
    std::vector<Edit> edits;
    if (before.paper_from != PaperFrom::Settings || before.paper != answered.paper) {
        edits.push_back(key_set("paper", toml::Content{answered.paper}));
    }
    if (before.language != answered.language ||
        before.second_language != answered.second_language) {
        edits.push_back(key_set("language", languages_value(answered)));
    }
    add_options(before, answered, edits);
    const JobTable tables[] = {{"labels", What::Labels},
                               {"finishing_cards", What::FinishingCards},
                               {"cook_day_cards", What::CookDayCards},
                               {"lists", What::Lists}};
    for (const auto& table : tables) {
        add_job(table, before, answered, edits);
    }
    return edits;
}

} // namespace thawslip::service
