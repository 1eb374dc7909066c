#include "service/settings.h"

#include "base/list.h"
#include "base/nearest.h"
#include "intake/placing.h"
#include "intake/values.h"
#include "kitchen/bag_id.h"
#include "service/print/part.h"
#include "toml/choice.h"
#include "toml/file_table.h"
#include "toml/reader.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace thawslip::service {
namespace {

using kitchen::Measures;
using kitchen::Units;
using toml::Choice;
using toml::Word;

const std::array<Word, 2> papers = {{{"letter", {"us letter"}}, {"a4"}}};
const std::array<Word, 9> storage_lists = {{{"us"},
                                            {"us-fsis"},
                                            {"us-fda"},
                                            {"us-older"},
                                            {"canada"},
                                            {"newfoundland"},
                                            {"oregon"},
                                            {"uk"},
                                            {"practice"}}};
const Choice<Units> unit_systems[] = {{Units::Metric, {"metric", {"si"}}},
                                      {Units::Us, {"us", {"imperial"}}},
                                      {Units::Both, {"both"}},
                                      {Units::Written, {"written", {"as written"}}}};
const Choice<Measures> measure_systems[] = {{Measures::Us, {"us"}},
                                            {Measures::Metric, {"metric"}},
                                            {Measures::Australian, {"australian"}},
                                            {Measures::Imperial, {"imperial", {"uk"}}}};

constexpr const char* cups_key = "cups";

template <std::size_t N>
std::string word(toml::Table& table, const toml::Key& key, std::string_view what,
                 const std::array<Word, N>& words, const std::string& fallback) {
    const auto found = table.word(key, what, words);
    return found ? words[*found].word : fallback;
}

const kitchen::AllergenList* read_allergen_list(toml::Table& table,
                                                const kitchen::AllergenList* fallback) {
    const auto lists = kitchen::allergen_lists();
    const auto words = mapped(lists, [](const kitchen::AllergenList& list) {
        return Word{std::string{list.name}, {list.also.begin(), list.also.end()}};
    });
    const auto found = table.word("allergens", "a list of allergens", words);
    return found ? &lists[*found] : fallback;
}

kitchen::KitchenSettings read_kitchen(toml::Table& table) {
    kitchen::KitchenSettings kitchen;
    kitchen.allergens = read_allergen_list(table, kitchen.allergens);
    kitchen.units =
        read_choice(table, "units", "a system of units", unit_systems).value_or(kitchen.units);
    kitchen.measures = read_choice(table, cups_key, "a kind of cups and spoons", measure_systems)
                           .value_or(kitchen.measures);
    const char* altitude = table.has("altitude_meters") ? "altitude_meters" : "altitude_metres";
    kitchen.altitude_metres =
        table.real({altitude, "1500"}, {-430.0, 6000.0}).value_or(kitchen.altitude_metres);
    kitchen.number = static_cast<int>(
        table.integer({"kitchen_number", "7"}, {1, kitchen::highest_kitchen_number})
            .value_or(kitchen.number));
    kitchen.people_at_risk = table.boolean("people_at_risk").value_or(kitchen.people_at_risk);
    return kitchen;
}

/// Cups, and which degrees come first, where the settings do not say: those of where the language
/// is at home. Whoever cooks in Spanish or German has cups of 250 ml, and ovens in Celsius.
void set_usual_measures(Settings& settings) {
    Diagnostics none; // they were reported when the settings were read
    const auto document = toml::parse(settings.text, settings.file, none);
    if (document.well_formed() && !toml::Reader{document, none}.root().has(cups_key)) {
        settings.kitchen.measures = settings.language == "en" ? Measures::Us : Measures::Metric;
    }
}

/// One language, or a list of two.
void read_languages(toml::Table& table, Settings& settings) {
    std::string all;
    for (const auto& text : table.string_or_strings({"language", "\"en\""}, 2)) {
        all += (all.empty() ? "" : ",") + text.value;
        if (const auto fault = set_languages(settings, all)) {
            table.reader().error(text.key, *fault);
            return;
        }
    }
}

/// From 0 to 5 °C (Food Standards Scotland, "Storing food safely"; FDA Food Code 3-501.16: 41 °F at
/// most). Above 8 °C no food may be kept chilled (UK Food Standards Agency, read in a copy), at 0
/// and below none thaws.
void read_refrigerator(toml::Table& table, kitchen::ThawSettings& thaw) {
    constexpr double freezes = 0.0;
    constexpr double advised = 5.0;
    constexpr double highest = 8.0;
    constexpr double hair = 1e-6; // 41 °F is 5 °C
    const toml::Key key{"refrigerator", "\"4 °C\""};
    const auto written = table.line("refrigerator", 200);
    const bool below_zero =
        written && (written->starts_with('-') || written->starts_with("\u2212"));
    const auto read = written && !below_zero ? intake::read_temperature(table, key) : std::nullopt;
    if (!read && !below_zero) {
        return;
    }
    if (below_zero || read->celsius <= freezes || read->celsius > highest + hair) {
        table.reader().error(table.path_of(key),
                             "refrigerator must be above 0 °C and at most 8 °C (32 to 46 °F): food "
                             "in it would freeze, or spoil before it has thawed",
                             {"set it to 4 °C (40 °F), and measure it with a thermometer"});
        return;
    }
    if (read->celsius > advised + hair) {
        table.reader().caution(table.path_of(key),
                               "a refrigerator is kept at 5 °C (41 °F) or colder: food spoils "
                               "sooner in this one than the lists say",
                               {"turn it colder, and measure it with a thermometer"});
    }
    thaw.refrigerator.celsius = read->celsius;
}

JobSettings read_job(toml::Table& settings, const char* name) {
    JobSettings job;
    if (auto table = settings.table(name)) {
        job.printer = table->line("printer", 200).value_or("");
        job.stock = table->line("stock", 200).value_or("");
        job.dots_per_inch = table->real({"dpi", "300"}, {72.0, 4800.0});
        if (const auto copies = table->integer({"copies", "2"}, {1, most_copies})) {
            job.copies = static_cast<int>(*copies);
        }
        table->refuse_unknown();
    }
    return job;
}

/// Keys that say now in a table of their own for which prints they are.
struct MovedKey {
    const char* before;
    const char* now;
};
constexpr MovedKey moved_keys[] = {
    {"label_stock", "stock, below [labels]"},
    {"card_stock", "stock, below [finishing_cards] and below [cook_day_cards]"},
    {"dpi", "dpi, below [labels], [finishing_cards], [cook_day_cards] or [lists]"},
};

void read_jobs(toml::Table& table, Settings& settings) {
    for (const auto& [before, now] : moved_keys) {
        table.refuse_moved(before, now);
    }
    settings.labels = read_job(table, "labels");
    settings.finishing_cards = read_job(table, "finishing_cards");
    settings.cook_day_cards = read_job(table, "cook_day_cards");
    settings.lists = read_job(table, "lists");
}

Settings read(toml::Table& table) {
    Settings settings;
    settings.paper_from = table.has("paper") ? PaperFrom::Settings : PaperFrom::Nobody;
    settings.paper = word(table, {"paper", "\"a4\""}, "a paper", papers, settings.paper);
    read_jobs(table, settings);
    settings.large_print = table.boolean("large_print").value_or(settings.large_print);
    settings.storage_list = word(table, {"storage_list", "\"us\""}, "a list of storage times",
                                 storage_lists, settings.storage_list);
    read_languages(table, settings);
    settings.kitchen = read_kitchen(table);
    read_refrigerator(table, settings.kitchen.thaw);
    settings.kitchen.thaw.placing =
        read_choice(table, {"placing", "\"tray\""}, "a placing", intake::placings())
            .value_or(settings.kitchen.thaw.placing);
    settings.paper_reflectance =
        table.real({"paper_reflectance", "0.85"}, {0.05, 1.0}).value_or(settings.paper_reflectance);
    settings.printers = layout::read_printers(table);
    settings.archive = table.line("archive", 4096).value_or("");
    settings.goods_file = table.line("goods", 4096).value_or("");
    settings.record_prints = table.boolean("record_prints").value_or(settings.record_prints);
    table.refuse_unknown();
    return settings;
}

std::optional<std::string> set_text(std::string& setting, std::string_view text) {
    setting = text;
    return std::nullopt;
}

std::string languages_text(const Settings& settings) {
    return settings.second_language.empty() ? settings.language
                                            : settings.language + "," + settings.second_language;
}

std::string units_text(const Settings& settings) {
    return std::ranges::find(unit_systems, settings.kitchen.units, &Choice<Units>::value)
        ->word.word;
}

std::optional<std::string> set_units(Settings& settings, std::string_view text) {
    const auto* found = std::ranges::find(
        unit_systems, text, [](const Choice<Units>& system) { return system.word.word; });
    if (found == std::end(unit_systems)) {
        return fmt::format("\"{}\" is not a system of units", text);
    }
    settings.kitchen.units = found->value;
    return std::nullopt;
}

/// The words of a language, where food is declared by the list that is set.
const wording::Language& language_called(std::string_view code, const Settings& settings) {
    return wording::shipped_language(
        wording::language_where(code, settings.kitchen.allergens->name));
}

} // namespace

const wording::Goods& goods_of(const Settings& settings) {
    return settings.goods ? *settings.goods : wording::shipped_goods();
}

std::string why_paper(const Settings& settings) {
    switch (settings.paper_from) {
    case PaperFrom::Settings: return "as the settings have it";
    case PaperFrom::Option: return "as --paper has it";
    case PaperFrom::Locale: return fmt::format("as the locale {} has it", settings.locale);
    case PaperFrom::Nobody: break;
    }
    return "for neither settings nor locale say which";
}

const wording::Language& language_of(const Settings& settings) {
    return language_called(settings.language, settings);
}

wording::Style style_of(const Settings& settings) {
    return wording::style_for(language_of(settings), settings.kitchen);
}

wording::Style message_style(const Settings& settings) {
    return wording::style_for(wording::shipped_language("en"), settings.kitchen);
}

std::optional<wording::Style> second_style_of(const Settings& settings) {
    if (settings.second_language.empty()) {
        return std::nullopt;
    }
    return wording::style_for(language_called(settings.second_language, settings),
                              settings.kitchen);
}

std::optional<std::string> set_languages(Settings& settings, std::string_view text) {
    const auto known = wording::shipped_languages();
    std::vector<std::string> named;
    for (std::size_t at = 0; at <= text.size();) {
        const auto end = std::min(text.find(',', at), text.size());
        const std::string code{text.substr(at, end - at)};
        if (std::ranges::find(known, code) == known.end()) {
            return fmt::format("\"{}\" is not a language: {}", code, near_names(code, known));
        }
        if (std::ranges::find(named, code) != named.end()) {
            return fmt::format("\"{}\" is named twice", code);
        }
        named.push_back(code);
        at = end + 1;
    }
    if (named.size() > 2) {
        return fmt::format("{} languages are named, expected one or two", named.size());
    }
    settings.language = named.front();
    settings.second_language = named.size() > 1 ? named.back() : "";
    set_usual_measures(settings);
    return std::nullopt;
}

std::span<const toml::Word> paper_words() {
    return papers;
}

std::span<const toml::Word> storage_list_words() {
    return storage_lists;
}

std::span<const toml::Word> unit_words() {
    static const auto words = words_of(unit_systems);
    return words;
}

std::span<const SettingOption> setting_options() {
    static constexpr SettingOption options[] = {
        {"paper", [](const Settings& settings) { return settings.paper; },
         [](Settings& settings, std::string_view text) { return set_text(settings.paper, text); }},
        {"storage_list", [](const Settings& settings) { return settings.storage_list; },
         [](Settings& settings, std::string_view text) {
             return set_text(settings.storage_list, text);
         }},
        {"language", languages_text, set_languages},
        {"units", units_text, set_units},
    };
    return options;
}

Outcome<Settings> settings_from(std::string text, const std::string& file) {
    Diagnostics faults;
    const auto document = toml::parse(std::move(text), file, faults);
    toml::Reader reader{document, faults};
    auto table = reader.root();
    auto settings = document.well_formed() ? read(table) : Settings{};
    settings.file = file;
    settings.text = document.text();
    set_usual_measures(settings);
    reader.finish();
    Outcome<Settings> outcome;
    outcome.messages.add_in_order(faults, document.text());
    if (!has_errors(faults)) {
        outcome.value = std::move(settings);
    }
    return outcome;
}

} // namespace thawslip::service
