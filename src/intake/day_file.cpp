#include "intake/day_file.h"

#include "base/letters.h"
#include "base/printable.h"
#include "intake/sides.h"
#include "intake/sizes.h"
#include "intake/values.h"
#include "intake/vessel.h"
#include "toml/choice.h"
#include "toml/file_table.h"
#include "toml/reader.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::intake {
namespace {

using kitchen::IngredientDay;
using kitchen::Package;
using kitchen::ThawMethod;
using kitchen::TimeFrom;
using toml::Choice;
using toml::Key;
using toml::Table;

const Choice<ThawMethod> thaw_methods[] = {
    {ThawMethod::Refrigerator, {"refrigerator", {"fridge", "in the fridge"}}},
    {ThawMethod::ColdWater, {"cold water", {"water"}}},
    // Under running water of at most 21 °C is cold water, with its rules: FDA Food Code
    // 3-501.13(B).
    {ThawMethod::ColdWater, {"running water", {"tap", "tap water", "under the tap"}}},
    {ThawMethod::Microwave, {"microwave"}},
    {ThawMethod::FromFrozen, {"from frozen", {"frozen", "none"}}}};

const Choice<IngredientDay> ingredient_days[] = {
    {IngredientDay::PackingDay, {"packing day", {"the day", "assembly day"}}},
    {IngredientDay::DayBefore, {"day before", {"the day before", "eve", "prepared"}}},
    {IngredientDay::CookDay, {"cook day", {"cooking day"}}}};

const toml::Word prepared_words[] = {{"day before", {"the day before", "eve", "yesterday"}}};

const Choice<TimeFrom> times_from[] = {{TimeFrom::Thawed, {"thawed"}},
                                       {TimeFrom::Frozen, {"frozen", {"from frozen"}}}};

std::optional<std::string> text(Table& table, const Key& key) {
    return table.line(key, Limits::text_characters);
}

/// Stands in for a date that cannot be read. It lies before every date that can, so that no other
/// date seems to come too early.
constexpr kitchen::Date unknown_day{std::chrono::year{Limits::years.least}, std::chrono::January,
                                    std::chrono::day{1}};

std::optional<kitchen::Date> read_date(Table& table, const Key& key) {
    const auto date = table.date(key);
    const auto year = date ? static_cast<int>(date->year()) : Limits::years.least;
    if (year < Limits::years.least || year > Limits::years.most) {
        table.reader().error(table.path_of(key),
                             fmt::format("{} must lie in the years {} to {}, not {}", key.name,
                                         Limits::years.least, Limits::years.most,
                                         kitchen::to_iso(*date)));
        return std::nullopt;
    }
    return date;
}

bool is_among(ThawMethod method, const kitchen::Thaw& thaw) {
    return method == thaw.method ||
           std::ranges::find(thaw.others, method, &kitchen::OtherMethod::method) !=
               thaw.others.end();
}

/// One method, or a list of them: the first is the usual one.
void read_methods(Table& table, kitchen::Thaw& thaw) {
    const Key key{"method", "\"refrigerator\""};
    table.require(key);
    const auto methods =
        table.one_or_several(key, Limits::methods, "a thaw method", toml::words_of(thaw_methods));
    for (std::size_t i = 0; i < methods.size(); ++i) {
        const auto method = std::data(thaw_methods)[methods[i].position].value;
        if (i == 0) {
            thaw.method = method;
            thaw.method_where = methods[i].key;
        } else if (is_among(method, thaw)) {
            table.reader().error(methods[i].key, "this method stands here twice");
        } else {
            thaw.others.push_back({method, methods[i].key});
        }
    }
}

kitchen::Thaw read_thaw(Table& package) {
    kitchen::Thaw thaw;
    thaw.where = package.path_of("thaw");
    auto table = package.table("thaw");
    if (!table) {
        return thaw;
    }
    read_methods(*table, thaw);
    thaw.note = text(*table, "note").value_or("");
    table->refuse_unknown();
    return thaw;
}

std::vector<kitchen::Finish> read_finishes(Table& package) {
    std::vector<kitchen::Finish> finishes;
    for (auto& table : package.tables("finish", Limits::finishes)) {
        const Key add{"add", "\"200 g baby spinach\""};
        const Key when{"when", "\"last 10 min\""};
        table.require(add);
        table.require(when);
        kitchen::Finish finish;
        finish.where = table.path();
        finish.add = read_quantity(table, add).value_or(kitchen::Quantity{});
        finish.when = read_when(table, when).value_or(kitchen::When{});
        finish.bag = text(table, "bag").value_or("");
        table.refuse_unknown();
        finishes.push_back(std::move(finish));
    }
    return finishes;
}

/// Cooking rules hang on the vessel: neither a slip of the pen nor an unknown word may switch the
/// strict ones off in silence.
void settle_vessel(Table& table, const Key& key, kitchen::Cook& cook) {
    using kitchen::Vessel;
    cook.vessel = vessel_of(cook.in, cook.setting);
    if (cook.vessel != Vessel::Other || cook.in.empty()) {
        return;
    }
    const auto caution = [&](std::string_view what, std::string hint) {
        table.reader().caution(
            table.path_of(key),
            fmt::format("no rules are known for cooking in {}{}", in_quotes(cook.in), what),
            {std::move(hint)});
    };
    const auto near = nearest_vessel(cook.in);
    const bool strict =
        near && (near->vessel == Vessel::SlowCooker || near->vessel == Vessel::Warmer ||
                 near->vessel == Vessel::Microwave);
    if (strict) {
        cook.vessel = near->vessel;
        caution(fmt::format("; those of a {} are kept", near->name),
                fmt::format("did you mean \"{}\"?", near->name));
    } else if (cooks_like_slow_cooker(cook)) {
        cook.vessel = Vessel::SlowCooker;
        caution("; so slow, those of a slow cooker are kept",
                "name an oven, a pan or a pot where it is one");
    } else if (near) {
        caution("", fmt::format("did you mean \"{}\"?", near->name));
    }
}

std::optional<kitchen::Cook> read_cook(Table& package) {
    auto table = package.table("cook");
    if (!table) {
        return std::nullopt;
    }
    kitchen::Cook cook;
    cook.where = table->path();
    const Key in{"in", "\"oven\""};
    table->require(in);
    cook.in = text(*table, in).value_or("");
    cook.setting = text(*table, "setting").value_or("");
    cook.time = read_time(*table, {"time", "\"7-9 h\""});
    cook.time_from = read_choice(*table, "time_from", "what the time counts from", times_from);
    cook.until = read_target(*table, {"until", "\"74 °C\""});
    cook.hold = read_hold(*table, {"hold", "\"2 min\""});
    cook.because = text(*table, "because").value_or("");
    cook.steps = table->lines("steps", Limits::steps, Limits::step_characters);
    settle_vessel(*table, in, cook);
    table->refuse_unknown();
    return cook;
}

std::vector<kitchen::Ingredient> read_ingredients(Table& package) {
    std::vector<kitchen::Ingredient> ingredients;
    for (auto& table : package.tables("ingredient", Limits::ingredients)) {
        const Key add{"add", "\"1.2 kg squash\""};
        table.require(add);
        kitchen::Ingredient ingredient;
        ingredient.where = table.path();
        ingredient.add = read_quantity(table, add).value_or(kitchen::Quantity{});
        ingredient.day = read_choice(table, {"for", "\"cook day\""}, "a day", ingredient_days)
                             .value_or(ingredient.day);
        table.refuse_unknown();
        ingredients.push_back(std::move(ingredient));
    }
    return ingredients;
}

std::vector<std::string> values_of(Table& table, const Key& key) {
    std::vector<std::string> values;
    for (const auto& each : table.string_or_strings(key, Limits::values)) {
        if (auto line = toml::printable_line(table.reader(), each, Limits::text_characters)) {
            values.push_back(std::move(*line));
        }
    }
    return values;
}

void read_dates(Table& table, Package& package) {
    const auto made = read_date(table, {"made", "2026-10-17"});
    if (table.has("made")) {
        package.made = made.value_or(unknown_day);
    }
    package.food = values_of(table, {"food", "\"soup or stew\""});
    package.use_by = read_date(table, {"use_by", "2027-01-17"});
    package.days_refrigerated =
        static_cast<int>(table.integer({"days_refrigerated", "1"}, {0, 14}).value_or(0));
}

std::vector<Package> read_package(Table& table) {
    Package package;
    package.where = table.path();
    const Key dish{"dish", "\"Squash and red lentil stew\""};
    table.require(dish);
    package.dish = table.line(dish, Limits::dish_characters).value_or("");
    read_bag(table, package);
    read_dates(table, package);
    package.contains = values_of(table, {"contains", "[\"celery\"]"});
    package.may_contain = values_of(table, {"may_contain", "[\"hazelnuts\"]"});
    package.note = text(table, "note").value_or("");
    package.station = table.line("station", Limits::dish_characters).value_or("");
    package.thaw = read_thaw(table);
    package.finish = read_finishes(table);
    package.cook = read_cook(table);
    package.sides = read_sides(table);
    package.ingredients = read_ingredients(table);
    auto sizes = in_sizes(table, package);
    table.refuse_unknown();
    return sizes;
}

/// Two packages of one dish and date would share their bag ids.
void refuse_twins(toml::Reader& reader, const kitchen::Day& day) {
    for (std::size_t i = 0; i < day.packages.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            const auto& a = day.packages[i];
            const auto& b = day.packages[j];
            const bool same_day = a.made.value_or(day.made) == b.made.value_or(day.made);
            const bool of_one = a.where == b.where || goes_on(a) || goes_on(b);
            if (!a.dish.empty() && a.dish == b.dish && same_day && !of_one) {
                reader.error(a.where.key("dish"),
                             fmt::format("{} is listed twice in this day", in_quotes(a.dish)),
                             {"raise bags of the first, or give the dishes different names",
                              "one dish in bags of several sizes: [[package.size]] below it"});
                break;
            }
        }
    }
}

/// Why food may not be prepared on that day; nothing where it may.
std::optional<std::string> wrong_prepared(kitchen::Date prepared, kitchen::Date made) {
    const auto ahead = kitchen::days_between(prepared, made);
    if (ahead < std::chrono::days{1}) {
        return "does not lie before";
    }
    return ahead > Limits::prepared_ahead
               ? std::optional{fmt::format("lies more than {} days before",
                                           Limits::prepared_ahead.count())}
               : std::nullopt;
}

/// A date, or "day before".
std::optional<kitchen::Date> read_prepared(Table& table, kitchen::Date made) {
    const Key key{"prepared", "\"day before\""};
    const auto* written = table.text_at(key);
    if (written != nullptr && (written->empty() || !is_digit(written->front()))) {
        return table.word(key, "a day; a date stands without quotes", prepared_words)
                   ? std::optional{kitchen::add_days(made, -std::chrono::days{1})}
                   : std::nullopt;
    }
    const auto prepared = read_date(table, key);
    const auto wrong =
        prepared && made != unknown_day ? wrong_prepared(*prepared, made) : std::nullopt;
    if (wrong) {
        table.reader().error(table.path_of(key),
                             fmt::format("prepared {} {} the packing day, {}",
                                         kitchen::to_iso(*prepared), *wrong, kitchen::to_iso(made)),
                             {"write, for example, prepared = \"day before\"",
                              "a dish that was made earlier has a made of its own"});
        return std::nullopt;
    }
    return prepared;
}

void read_header(Table& root, kitchen::Day& day) {
    day.made = unknown_day;
    if (!root.has("day")) {
        root.reader().error(root.path(), "there is no [day], which says when the food was made",
                            {"write, for example, [day] and below it made = 2026-10-17"});
    }
    auto table = root.table("day");
    if (!table) {
        return;
    }
    const Key made{"made", "2026-10-17"};
    table->require(made);
    day.made = read_date(*table, made).value_or(unknown_day);
    day.kitchen = text(*table, "kitchen").value_or("");
    day.place = text(*table, {"place", "\"garage, basket 2\""}).value_or("");
    day.prepared = read_prepared(*table, day.made);
    day.freezer_litres = read_litres(*table, {"freezer", "\"180 l\""}, Limits::freezer_litres);
    table->refuse_unknown();
}

void read_packages(Table& root, kitchen::Day& day) {
    auto& reader = root.reader();
    const auto errors_before = reader.errors();
    auto tables = root.tables("package", Limits::packages);
    const bool unreadable = root.has("package") && !reader.document().well_formed();
    if (tables.empty() && reader.errors() == errors_before && !unreadable) {
        reader.error(root.path_of("package"), "there is no [[package]]: a day has at least one",
                     {"thawslip new DAY.toml writes a day to start from"});
    }
    for (auto& table : tables) {
        auto sizes = read_package(table);
        for (auto& size : sizes) {
            size.place = size.place.empty() ? day.place : size.place;
        }
        std::ranges::move(sizes, std::back_inserter(day.packages));
    }
    if (day.packages.size() > Limits::packages && tables.size() <= Limits::packages) {
        reader.error(root.path_of("package"),
                     fmt::format("the dishes have {} sizes together, at most {} are taken",
                                 day.packages.size(), Limits::packages));
    }
}

bool has_part_of_day_before(const Package& package) {
    return std::ranges::find(package.ingredients, IngredientDay::DayBefore,
                             &kitchen::Ingredient::day) != package.ingredients.end();
}

/// What is for the day before needs no more to be said; a day on which nothing is prepared does.
void settle_prepared(toml::Reader& reader, kitchen::Day& day) {
    if (!day.prepared) {
        if (std::ranges::any_of(day.packages, has_part_of_day_before)) {
            day.prepared = kitchen::add_days(day.made, -std::chrono::days{1});
        }
        return;
    }
    const bool used = std::ranges::any_of(day.packages, [&](const Package& package) {
        return package.made == day.prepared || has_part_of_day_before(package);
    });
    if (!used && reader.errors() == 0) {
        reader.caution(KeyPath{"day.prepared"}, "nothing is marked for that day",
                       {"write for = \"day before\" below an [[package.ingredient]]",
                        fmt::format("or made = {} below a [[package]] that is cooked then",
                                    kitchen::to_iso(*day.prepared))});
    }
}

kitchen::Day read_root(toml::Reader& reader) {
    kitchen::Day day;
    auto root = reader.root();
    read_header(root, day);
    read_packages(root, day);
    settle_prepared(reader, day);
    root.refuse_unknown();
    refuse_twins(reader, day);
    return day;
}

/// Whether `key` is `path` or stands below it.
bool is_at_or_below(const KeyPath& key, const KeyPath& path) {
    const auto& text = key.text();
    const auto size = path.text().size();
    return text.starts_with(path.text()) &&
           (text.size() == size || text[size] == '.' || text[size] == '[');
}

/// Whether a date was held against a day that could not be read.
bool counts_from_unknown_day(const Diagnostic& refusal, const Diagnostic& fault) {
    const auto& text = fault.key.text();
    const bool no_day = text.empty() || text == "day"; // nothing stands above [day]
    return refusal.key.text() == "day.made"
               ? no_day
               : refusal.key.text().ends_with(".use_by") && (no_day || text.ends_with("made"));
}

/// Whether what was refused, or a part of it, has a mistake of its own. A caution is none: what is
/// refused beside it stays refused.
bool is_spoilt(const Diagnostic& refusal, const Diagnostics& faults) {
    return std::ranges::any_of(faults, [&refusal](const Diagnostic& fault) {
        return fault.severity == Severity::Error &&
               (is_at_or_below(fault.key, refusal.key) || counts_from_unknown_day(refusal, fault));
    });
}

} // namespace

Reading read_day(const toml::Document& document, Diagnostics& faults, From from) {
    if (!document.has_values()) {
        return {};
    }
    toml::Reader reader{document, faults};
    auto day = read_root(reader);
    if (from == From::Cook) {
        refuse_twin_sizes(reader, day);
    }
    reader.finish();
    return {std::move(day), document.well_formed() && reader.errors() == 0};
}

void add_refusals(const toml::Document& document, Diagnostics refusals, Diagnostics& faults) {
    const auto known = faults;
    for (auto& refusal : refusals) {
        if (!is_spoilt(refusal, known)) {
            refusal.where = document.place(refusal.key);
            faults.push_back(std::move(refusal));
        }
    }
}

std::vector<std::string> accepted_keys() {
    // A reader notes every key it is asked for: one day that has every table gives them all.
    const std::string full = "[day]\n[[package]]\n[package.thaw]\n[[package.finish]]\n"
                             "[package.cook]\n[[package.side]]\n[[package.ingredient]]\n"
                             "[[package.size]]\n";
    Diagnostics unwanted;
    const auto document = toml::parse(full, "", unwanted);
    std::set<std::string> asked;
    toml::Reader reader{document, unwanted, &asked};
    read_root(reader);
    return {asked.begin(), asked.end()};
}

} // namespace thawslip::intake
