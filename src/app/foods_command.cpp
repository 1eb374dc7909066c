#include "app/commands.h"
#include "app/json.h"
#include "intake/storage_file.h"
#include "kitchen/cooking/safe_minimum.h"
#include "kitchen/foods/food_catalogue.h"
#include "kitchen/foods/food_reading.h"
#include "kitchen/measures/temperature_text.h"
#include "kitchen/storage/fridge_life.h"

#include <cmath>
#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

/// All that is said of one kind of food.
struct FoodFacts {
    std::string food;
    std::optional<kitchen::StorageRow> frozen;
    std::optional<kitchen::FridgeRow> chilled;
    std::optional<kitchen::DaysLeft> thawed;
    std::optional<kitchen::SafeMinimum> minimum;
    std::optional<kitchen::UnsuitableRow> unsuitable;
    std::vector<std::string> words;
};

FoodFacts facts_of(const kitchen::StorageTable& table, const std::string& food,
                   const Settings& settings) {
    const std::vector<std::string> alone{food};
    kitchen::Package package;
    package.food = alone;
    FoodFacts facts{food,
                    kitchen::find_storage(table, food),
                    kitchen::find_fridge_life(table, food),
                    std::nullopt,
                    kitchen::safe_minimum(table, package),
                    kitchen::find_unsuitable(table, food),
                    kitchen::words_for(table, food, settings.language)};
    if (facts.frozen) {
        facts.thawed = kitchen::days_left_after_thawing(table, alone, std::chrono::days{0});
    }
    return facts;
}

std::string days_text(std::chrono::days low, std::chrono::days high) {
    const auto unit = high.count() == 1 ? "day" : "days";
    return low == high ? fmt::format("{} {}", high.count(), unit)
                       : fmt::format("{} to {} {}", low.count(), high.count(), unit);
}

std::string minimum_text(const FoodFacts& facts, const Settings& settings) {
    if (!facts.minimum) {
        return "no safe minimum is published";
    }
    return "at least " + kitchen::published_text(facts.minimum->fahrenheit,
                                                 kitchen::TemperatureUse::SafeMinimum,
                                                 style_of(settings).units);
}

/// A figure's row in its list.
template <class Row>
std::string source_text(const Row& row) {
    return fmt::format("list \"{}\", row \"{}\" ({}; {})", row.rule_set, row.row, row.source,
                       row.status);
}

/// As many words as fit a few lines; `--json` has them all.
std::string some_of(const std::vector<std::string>& words) {
    constexpr std::size_t most = 24;
    const auto count = std::min(words.size(), most);
    return fmt::format("{}{}",
                       fmt::join(words.begin(), words.begin() + static_cast<long>(count), ", "),
                       words.size() > most ? ", …" : "");
}

void say_frozen(const FoodFacts& facts, const Settings& settings, std::ostream& out) {
    out << fmt::format("    frozen {}", span_text(*facts.frozen));
    if (facts.chilled) {
        out << fmt::format("; chilled {}", days_text(facts.chilled->low, facts.chilled->high));
    }
    if (facts.thawed) {
        out << fmt::format("; once thawed {}", days_text(facts.thawed->low, facts.thawed->high));
    }
    out << fmt::format("; {}\n", minimum_text(facts, settings));
    out << "    frozen:  " << source_text(*facts.frozen) << "\n";
    if (facts.chilled) {
        out << "    chilled: " << source_text(*facts.chilled) << "\n";
    }
}

void say(const FoodFacts& facts, const Settings& settings, std::ostream& out) {
    out << facts.food << "\n";
    if (facts.frozen) {
        say_frozen(facts, settings, out);
    } else if (facts.unsuitable) {
        const auto& row = *facts.unsuitable;
        out << fmt::format("    {} ({})\n", row.why.empty() ? "does not freeze well" : row.why,
                           row.source);
    }
    if (!facts.words.empty()) {
        out << "    words:   " << some_of(facts.words) << "\n";
    }
}

template <class Row>
std::string row_json(const Row& row, long low, long high, std::string_view unit) {
    return fmt::format(
        R"({{"low":{},"high":{},"unit":{},"list":{},"row":{},"source":{},"status":{}}})", low, high,
        json_string(unit), json_string(row.rule_set), json_string(row.row), json_string(row.source),
        json_string(row.status));
}

std::string frozen_json(const kitchen::StorageRow& row) {
    return row.high_weeks.count() > 0
               ? row_json(row, row.low_weeks.count(), row.high_weeks.count(), "weeks")
               : row_json(row, row.low.count(), row.high.count(), "months");
}

std::string json_of(const FoodFacts& facts) {
    const std::string none = "null";
    const auto& [food, frozen, chilled, thawed, minimum, unsuitable, words] = facts;
    return fmt::format(
        R"({{"food":{},"frozen":{},"chilled":{},"thawed":{},"minimum_celsius":{},"unsuitable":{},"words":{}}})",
        json_string(food), frozen ? frozen_json(*frozen) : none,
        chilled ? row_json(*chilled, chilled->low.count(), chilled->high.count(), "days") : none,
        thawed ? row_json(thawed->row, thawed->low.count(), thawed->high.count(), "days") : none,
        minimum ? std::to_string(minimum->celsius) : none,
        unsuitable ? json_string(unsuitable->why.empty() ? "does not freeze well" : unsuitable->why)
                   : none,
        json_strings(words));
}

} // namespace

ExitStatus foods(const std::string& words, AnswerAs answer, const Settings& settings,
                 Console console) {
    const auto table = intake::built_in_storage(settings.storage_list);
    const auto kinds =
        words.empty() ? kitchen::all_kinds(table) : kitchen::kinds_near(table, words);
    if (kinds.empty()) {
        console.err << fmt::format("error: no kind of food comes near \"{}\"\n    hint: thawslip "
                                   "foods names them all\n",
                                   words);
        return ExitStatus::Refused;
    }
    std::vector<std::string> rows;
    for (const auto& kind : kinds) {
        const auto facts = facts_of(table, kind, settings);
        if (answer == AnswerAs::Json) {
            rows.push_back(json_of(facts));
        } else {
            say(facts, settings, console.out);
        }
    }
    if (answer == AnswerAs::Json) {
        console.out << json_lines(rows);
    } else {
        console.out << "Months are for best quality at -18 °C (0 °F), the low end is printed; the "
                       "rules of your food authority come first.\n";
    }
    return ExitStatus::Done;
}

} // namespace thawslip::app
