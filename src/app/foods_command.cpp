#include "app/bag_text.h"
#include "app/commands.h"
#include "json/answers.h"
#include "kitchen/measures/temperature_text.h"

#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

using service::FoodFacts;

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
        out << fmt::format("    {} ({})\n", service::why_text(*facts.unsuitable),
                           facts.unsuitable->source);
    }
    if (!facts.words.empty()) {
        out << "    words:   " << some_of(facts.words) << "\n";
    }
}

} // namespace

ExitStatus foods(const std::string& words, AnswerAs answer, const Settings& settings,
                 Console console) {
    const auto facts = service::food_facts(words, settings.storage_list, settings.language);
    if (facts.empty()) {
        console.err << fmt::format("error: no kind of food comes near \"{}\"\n    hint: thawslip "
                                   "foods names them all\n",
                                   words);
        return ExitStatus::Refused;
    }
    if (answer == AnswerAs::Json) {
        console.out << json::foods(facts);
        return ExitStatus::Done;
    }
    for (const auto& kind : facts) {
        say(kind, settings, console.out);
    }
    console.out << "Months are for best quality at -18 °C (0 °F), the low end is printed; the "
                   "rules of your food authority come first.\n";
    return ExitStatus::Done;
}

} // namespace thawslip::app
