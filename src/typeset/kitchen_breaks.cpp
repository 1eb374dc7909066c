#include "typeset/kitchen_breaks.h"

#include "base/letters.h"
#include "base/utf8.h"
#include "unicode/character.h"

#include <algorithm>
#include <array>
#include <string>

namespace thawslip::typeset {
namespace {

/// What a word between two spaces is to a cook.
enum class Part {
    Number,   ///< 180, 2.2, ½, 1½, 7–9, 1/2, −18, 2×400
    Whole,    ///< 180
    Fraction, ///< ½, 1/2
    Unit,     ///< °C, kg, cups, min, %
    Hour,     ///< h, hours
    Minute,   ///< min, minutes
    Pound,    ///< lb, pounds
    Ounce,    ///< oz, ounces
    Heap,     ///< heaping, level: how a spoon is filled
    Times,    ///< ×
    Range,    ///< –, to, or
    Month,    ///< Oct, October
    Count,    ///< bag, step, mark: what a number after it counts
    Of,       ///< of
};

struct Rule {
    const char* reason;
    std::array<Part, 4> pattern; ///< words in a row
    std::size_t words;           ///< how many of them
    std::array<std::string_view, 5> examples;
};

/// The kitchen's rules: words in a row that match a pattern stay on one line. Common practice of
/// the trade (a number keeps its unit), no source.
constexpr std::array rules{
    Rule{"a number keeps its unit",
         {Part::Number, Part::Unit},
         2,
         {"180 °C", "2.2 kg", "½ cup", "7–9 h", "100 %"}},
    Rule{"a spoon keeps how it is filled",
         {Part::Number, Part::Heap, Part::Unit},
         3,
         {"2 heaping tbsp", "½ level tsp"}},
    Rule{"a fraction keeps its whole number", {Part::Whole, Part::Fraction}, 2, {"1 1/2", "1 ½"}},
    Rule{"factors stay together",
         {Part::Number, Part::Times, Part::Number},
         3,
         {"2 × 400", "2 x 400"}},
    Rule{"both ends of a range stay together",
         {Part::Number, Part::Range, Part::Number},
         3,
         {"7 – 9", "7 - 9", "7 to 9", "7 or 8"}},
    Rule{"hours keep their minutes",
         {Part::Number, Part::Hour, Part::Number, Part::Minute},
         4,
         {"1 h 30 min", "2 hours 15 minutes"}},
    Rule{"pounds keep their ounces",
         {Part::Number, Part::Pound, Part::Number, Part::Ounce},
         4,
         {"6 lb 10 oz", "4 pounds 14 ounces"}},
    Rule{"a day keeps its month", {Part::Number, Part::Month}, 2, {"17 Oct", "17 October"}},
    Rule{"a month keeps its year", {Part::Month, Part::Whole}, 2, {"Oct 2026", "Oct 17"}},
    Rule{"a count keeps what it counts", {Part::Count, Part::Number}, 2, {"bag 2", "mark 4"}},
    Rule{"a part keeps its whole", {Part::Number, Part::Of, Part::Number}, 3, {"2 of 3"}},
};

/// Words by kind. A kind that is not here is told by its characters: is_number and the like.
struct Vocabulary {
    Part kind;
    std::string_view words; ///< with a space before and after each
};
constexpr std::array vocabulary{
    Vocabulary{Part::Unit,
               " % ° °C °F C F K kg g mg lb lbs oz l L ml mL cl dl fl pt qt gal cup cups "
               "c tsp tsps tbsp tbsps teaspoon teaspoons tablespoon tablespoons pint "
               "pints quart quarts litre litres liter liters gram grams kilo kilos "
               "pound pounds ounce ounces mm cm m in inch inches h hr hrs hour hours "
               "min mins minute minutes s sec secs second seconds day days week weeks "
               "month months year years am pm a.m p.m W kW watt watts kJ kcal "
               "degrees deg percent "
               "Tag Tage Tagen Stunde Stunden Minute Minuten Woche Wochen Monat Monate Monaten "
               "Jahr Jahre Jahren Tasse Tassen EL TL Personen "
               "día días hora horas minuto minutos semana semanas mes meses año años taza tazas "
               "cda cdas cdta cdtas personas "},
    Vocabulary{Part::Hour, " h hr hrs hour hours "},
    Vocabulary{Part::Minute, " min mins minute minutes "},
    Vocabulary{Part::Pound, " lb lbs pound pounds "},
    Vocabulary{Part::Ounce, " oz ounce ounces "},
    Vocabulary{Part::Heap, " heaping heaped level rounded scant generous large small fl "},
    Vocabulary{Part::Times, " × x "},
    Vocabulary{Part::Range, " – — - to or and "},
    Vocabulary{Part::Month,
               " Jan Feb Mar Apr May Jun Jul Aug Sep Sept Oct Nov Dec January February "
               "March April June July August September October November December "},
    Vocabulary{Part::Count,
               " bag bags Bag Bags step Step mark Mark no No card Card serves Serves "
               "Beutel Schritt Karte bolsa bolsas Bolsa Bolsas paso Paso tarjeta Tarjeta "},
    Vocabulary{Part::Of, " of von de "},
};

constexpr std::u32string_view opening_marks = U"([{“‘„‚«‹\"'~≈<>≤≥";
constexpr std::u32string_view closing_marks = U".,;:!?)]}”’»›\"'…";
/// Marks between two words that stay with the one before.
constexpr std::u32string_view separators = U"–—-·•/|&+=→";
constexpr std::u32string_view number_marks = U".,/⁄:–—-−×x+°";
constexpr std::u32string_view dashes = U"-‐–—−/";

bool holds(std::u32string_view marks, char32_t c) {
    return marks.find(c) != std::u32string_view::npos;
}

bool is_vulgar_fraction(char32_t c) {
    return (c >= U'¼' && c <= U'¾') || (c >= U'⅐' && c <= U'⅟') || c == U'↉';
}

bool is_figure(char32_t c) {
    return is_digit(c) || is_vulgar_fraction(c);
}

bool has_figure(std::u32string_view word) {
    return std::any_of(word.begin(), word.end(), is_figure);
}

bool is_number(std::u32string_view core) {
    return has_figure(core) && std::all_of(core.begin(), core.end(), [](char32_t c) {
               return is_figure(c) || holds(number_marks, c);
           });
}

bool is_whole(std::u32string_view core) {
    return !core.empty() && std::all_of(core.begin(), core.end(), is_digit<char32_t>);
}

bool is_fraction(std::u32string_view core) {
    const auto slash = core.find_first_of(U"/⁄");
    return (core.size() == 1 && is_vulgar_fraction(core.front())) ||
           (slash != std::u32string_view::npos && is_whole(core.substr(0, slash)) &&
            is_whole(core.substr(slash + 1)));
}

bool is_in_vocabulary(std::u32string_view core, Part kind) {
    const auto wanted = " " + to_utf8(core) + " ";
    return std::any_of(vocabulary.begin(), vocabulary.end(), [&](const Vocabulary& entry) {
        return entry.kind == kind && entry.words.find(wanted) != std::string_view::npos;
    });
}

/// A word without the marks around it.
std::u32string_view core_of(std::u32string_view word) {
    while (!word.empty() && holds(opening_marks, word.front())) {
        word.remove_prefix(1);
    }
    while (!word.empty() && holds(closing_marks, word.back())) {
        word.remove_suffix(1);
    }
    return word;
}

/// What stands between two spaces.
struct Word {
    TextRange range;
    std::u32string whole;

    bool opens_with_mark() const { return holds(opening_marks, whole.front()); }
    bool closes_with_mark() const { return holds(closing_marks, whole.back()); }
};

bool is(const Word& word, Part kind) {
    const auto core = core_of(word.whole);
    switch (kind) {
    case Part::Number: return is_number(core);
    case Part::Whole: return is_whole(core);
    case Part::Fraction: return is_fraction(core);
    case Part::Unit:
    case Part::Hour:
    case Part::Minute:
    case Part::Pound:
    case Part::Ounce:
    case Part::Heap:
    case Part::Times:
    case Part::Range:
    case Part::Month:
    case Part::Count:
    case Part::Of: break;
    }
    return !core.empty() && is_in_vocabulary(core, kind);
}

std::vector<Word> words_of(std::string_view text) {
    std::vector<Word> words;
    bool inside = false;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t before = at;
        const char32_t c = next_code_point(text, at);
        const bool space = unicode::is_space(c);
        if (!space && !inside) {
            words.push_back({{before, at}, {}});
        }
        if (!space) {
            words.back().range.end = at;
            words.back().whole.push_back(c);
        }
        inside = !space;
    }
    return words;
}

/// Whether the words from `first` on match: marks may stand before the first and after the last
/// only, as in "(4¼ cups)", since "at 180, C" is no temperature.
bool matches(const Rule& rule, const std::vector<Word>& words, std::size_t first) {
    if (first + rule.words > words.size()) {
        return false;
    }
    for (std::size_t i = 0; i < rule.words; ++i) {
        const auto& word = words[first + i];
        const bool interrupted =
            (i > 0 && word.opens_with_mark()) || (i + 1 < rule.words && word.closes_with_mark());
        if (interrupted || !is(word, rule.pattern[i])) {
            return false;
        }
    }
    return true;
}

/// "20–30", "180°–200°", "½-1": a dash between figures ends no line.
bool has_dash_before_figure(std::u32string_view word) {
    for (std::size_t i = 1; i + 1 < word.size(); ++i) {
        const char32_t before = word[i - 1];
        const bool after_figure = is_figure(before) || before == U'°' || before == U'%';
        if (holds(dashes, word[i]) && after_figure && is_figure(word[i + 1])) {
            return true;
        }
    }
    return false;
}

/// Whether the word may not end a line: it is nothing but opening marks.
bool clings_to_word_after(const Word& word) {
    return std::all_of(word.whole.begin(), word.whole.end(),
                       [](char32_t c) { return holds(opening_marks, c); });
}

/// Whether the word may not open a line: it begins with a closing mark, or is nothing but marks
/// that separate.
bool clings_to_word_before(const Word& word) {
    const char32_t first = word.whole.front();
    const bool quote = first == U'"' || first == U'\'';
    const bool separates = std::all_of(word.whole.begin(), word.whole.end(),
                                       [](char32_t c) { return holds(separators, c); });
    return separates || (holds(closing_marks, first) && !quote);
}

std::vector<TextRange> merged(std::vector<TextRange> ranges) {
    std::sort(ranges.begin(), ranges.end(), [](const TextRange& a, const TextRange& b) {
        return a.begin != b.begin ? a.begin < b.begin : a.end < b.end;
    });
    std::vector<TextRange> disjoint;
    for (const auto& range : ranges) {
        if (!disjoint.empty() && range.begin < disjoint.back().end) {
            disjoint.back().end = std::max(disjoint.back().end, range.end);
        } else {
            disjoint.push_back(range);
        }
    }
    return disjoint;
}

} // namespace

std::vector<TextRange> kept_together(std::string_view text) {
    const auto words = words_of(text);
    std::vector<TextRange> kept;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const auto& word = words[i];
        if (has_dash_before_figure(word.whole)) {
            kept.push_back(word.range);
        }
        if (i > 0 && (clings_to_word_before(word) || clings_to_word_after(words[i - 1]))) {
            kept.push_back({words[i - 1].range.end - 1, word.range.begin + 1});
        }
        // Every rule has a figure in its first or its second word.
        const bool figure_near =
            has_figure(word.whole) || (i + 1 < words.size() && has_figure(words[i + 1].whole));
        for (const auto& rule : rules) {
            if (figure_near && matches(rule, words, i)) {
                kept.push_back({word.range.begin, words[i + rule.words - 1].range.end});
            }
        }
    }
    return merged(std::move(kept));
}

std::vector<std::size_t> better_together(std::string_view text) {
    const auto words = words_of(text);
    std::vector<std::size_t> places;
    for (std::size_t i = 1; i < words.size(); ++i) {
        const auto& before = words[i - 1];
        const bool is_measure = i > 1 && is(before, Part::Unit) && is(words[i - 2], Part::Number) &&
                                !words[i - 2].closes_with_mark();
        const bool is_amount =
            is(before, Part::Number) || (is_measure && is(words[i], Part::Number));
        if (is_amount && !before.closes_with_mark()) {
            places.push_back(words[i].range.begin);
        }
    }
    return places;
}

std::vector<KitchenRule> kitchen_rules() {
    std::vector<KitchenRule> described;
    for (const auto& rule : rules) {
        described.push_back({rule.reason, {}});
        std::copy_if(rule.examples.begin(), rule.examples.end(),
                     std::back_inserter(described.back().examples),
                     [](std::string_view example) { return !example.empty(); });
    }
    return described;
}

} // namespace thawslip::typeset
