#include "kitchen/measures/number_words.h"

#include "base/letters.h"
#include "base/list.h"
#include "kitchen/measures/unit_words.h"

#include <algorithm>
#include <span>
#include <string>

namespace thawslip::kitchen {
namespace {

constexpr std::string_view halves[] = {"half a",     "half an",      "halbe",      "halber",
                                       "halbes",     "halben",       "eine halbe", "ein halber",
                                       "ein halbes", "einen halben", "medio",      "media"};

constexpr std::string_view ones[] = {"a", "an", "ein", "eine", "einen", "un", "una"};

/// From one on; "once" is left out, which is also English.
constexpr std::string_view english[] = {"one",   "two",   "three", "four", "five",   "six",
                                        "seven", "eight", "nine",  "ten",  "eleven", "twelve"};
constexpr std::string_view spanish[] = {"uno",  "dos",   "tres", "cuatro", "cinco",
                                        "seis", "siete", "ocho", "nueve",  "diez"};
constexpr std::string_view german[] = {"eins",   "zwei", "drei", "vier", "fünf", "sechs",
                                       "sieben", "acht", "neun", "zehn", "elf",  "zwölf"};

struct NumberWord {
    int number = 0;                 ///< 0 where a word is none
    bool needs_plural_in_s = false; ///< else a name has it: "five spice powder"; German joins those
};

constexpr std::string_view between_two[] = {"or", "to", "oder", "bis", "o", "a"};

/// Behind a number these begin no item: "one of the pears", "one and a half", "a la plancha".
constexpr std::string_view no_item[] = {"of", "and", "or", "und", "oder", "von", "y",   "o",
                                        "u",  "de",  "la", "las", "lo",   "los", "bis", "to"};

/// Names of mixtures that Spanish writes as counts.
constexpr std::string_view counted_names[] = {"especias", "quesos",    "leches",
                                              "semillas", "pimientas", "cereales"};

/// A word in small letters, without the punctuation behind it.
struct Word {
    std::string text;
    std::size_t end = 0;      ///< the byte behind it
    std::size_t next = 0;     ///< where the one after it begins
    bool ends_phrase = false; ///< punctuation is behind it
};

Word word_from(std::string_view text, std::size_t at) {
    auto end = at;
    while (end < text.size() && space_at(text, end) == 0) {
        ++end;
    }
    auto word = lower(text.substr(at, end - at));
    const auto kept = word.find_last_not_of(".,;:");
    const bool ends = kept + 1 != word.size();
    word.resize(kept == std::string::npos ? 0 : kept + 1);
    return {std::move(word), end, skip_spaces(text, end), ends};
}

/// The place of a word in a list, from 1 on; 0 where it is not there.
int place_in(std::span<const std::string_view> list, std::string_view word) {
    const auto found = std::ranges::find(list, word);
    return found == list.end() ? 0 : static_cast<int>(found - list.begin()) + 1;
}

NumberWord number_word(std::string_view word) {
    if (contains(ones, word)) {
        return {1};
    }
    if (const int number = place_in(german, word); number > 0) {
        return {number};
    }
    const int number = std::max(place_in(english, word), place_in(spanish, word));
    return {number, number > 1};
}

/// Whether a word up to the next comma or "of" that ends the name of a thing ends in an s.
bool is_plural_at(std::string_view text, std::size_t at) {
    std::string last;
    while (at < text.size()) {
        auto word = word_from(text, at);
        if (is_one_of(word.text, {"of", "de", "for", "with"}) || word.text.starts_with('(')) {
            break;
        }
        last = std::move(word.text);
        at = word.next;
        if (word.ends_phrase) {
            break;
        }
    }
    return last.ends_with('s') && !last.ends_with("ss");
}

/// Whether what stands at `at` is counted by the number before it.
bool is_counted(std::string_view text, std::size_t at, const NumberWord& number) {
    const auto word = word_from(text, at);
    if (word.text.empty() || contains(no_item, word.text)) {
        return false;
    }
    return !number.needs_plural_in_s || unit_named(word.text) ||
           (is_plural_at(text, at) && !contains(counted_names, word.text));
}

} // namespace

std::optional<ReadRange> number_in_words(std::string_view text, std::size_t at) {
    const auto half = opening(halves, lower(text.substr(at)));
    if (!half.empty()) {
        return ReadRange{{1, 2}, {1, 2}, at + half.size()};
    }
    const auto first = word_from(text, at);
    const auto low = number_word(first.text);
    if (low.number == 0 || first.ends_phrase) {
        return std::nullopt;
    }
    const auto mark = word_from(text, first.next);
    const auto second = word_from(text, mark.next);
    const auto high = contains(between_two, mark.text) ? number_word(second.text) : NumberWord{};
    const bool is_range = high.number > low.number;
    const auto& last = is_range ? second : first;
    if (!is_counted(text, last.next, is_range ? high : low)) {
        return std::nullopt;
    }
    return ReadRange{{low.number, 1}, {is_range ? high.number : low.number, 1}, last.end};
}

} // namespace thawslip::kitchen
