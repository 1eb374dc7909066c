#include "kitchen/measures/quantity.h"

#include "base/list.h"
#include "kitchen/measures/number_text.h"
#include "kitchen/measures/number_words.h"
#include "kitchen/measures/unit_words.h"
#include "kitchen/measures/units.h"
#include "kitchen/texts/text.h"

#include <algorithm>

namespace thawslip::kitchen {
namespace {

/// How full a spoon is, or how exact a number; before the unit or before the number.
constexpr std::string_view qualifier_words[] = {"heaping",       "heaped",   "level",  "rounded",
                                                "scant",         "generous", "packed", "about",
                                                "approximately", "approx",   "ca",     "roughly"};

/// Amounts without a number that stand before the item, and those that stand after it. A handful
/// is none: three bags with one each need three.
constexpr std::string_view vague_openings[] = {
    "a pinch of",   "a dash of", "a drizzle of", "a splash of",  "a little",   "a few",
    "some",         "a bit of",  "a couple of",  "a touch of",   "ein wenig",  "ein paar",
    "ein bisschen", "etwas",     "un poco de",   "una pizca de", "unos pocos", "unas pocas"};
constexpr std::string_view vague_endings[] = {"to taste",      "as needed", "nach geschmack",
                                              "nach belieben", "al gusto",  "a gusto"};

std::string_view without_end(std::string_view text, std::string_view characters) {
    const auto last = text.find_last_not_of(characters);
    return last == std::string_view::npos ? std::string_view{} : text.substr(0, last + 1);
}

/// The word at `at`, up to the next space, without a full stop or comma at its end.
std::string_view word_at(std::string_view text, std::size_t at) {
    auto end = at;
    while (end < text.size() && space_at(text, end) == 0) {
        ++end;
    }
    return without_end(text.substr(at, end - at), ".,");
}

/// Where the next word begins after the one at `at`.
std::size_t past_word(std::string_view text, std::size_t at) {
    at += word_at(text, at).size();
    while (at < text.size() && (text[at] == '.' || text[at] == ',')) {
        ++at;
    }
    return skip_spaces(text, at);
}

bool is_letter_at(std::string_view text, std::size_t at) {
    return at < text.size() && is_latin_letter(text[at]);
}

/// Whether a whole amount, not "7-inch" or "2%", stands at `at`.
bool is_amount_at(std::string_view text, std::size_t at) {
    const auto number = read_amount(text, at);
    if (!number) {
        return !is_absent(number.fault());
    }
    const auto end = number.value().end;
    return end == text.size() || space_at(text, end) > 0 ||
           unit_named(word_at(text, end)).has_value();
}

/// Whether the number that ends at `end` belongs to a name: "5-spice powder", "100% rye".
bool is_part_of_a_name(std::string_view text, std::size_t end) {
    const bool dash = text.substr(end).starts_with('-') && is_letter_at(text, end + 1);
    return dash || text.substr(end).starts_with('%');
}

/// A minus sign before a number, in any of the forms a keyboard gives.
bool is_negative_at(std::string_view text, std::size_t at) {
    for (const std::string_view sign : {"-", "−", "–"}) {
        if (text.substr(at).starts_with(sign)) {
            return is_amount_at(text, skip_spaces(text, at + sign.size()));
        }
    }
    return false;
}

/// "A few chives", "a gusto": what begins like a number in words, and is none.
bool is_vague(std::string_view text) {
    const auto small = lower(text);
    return !opening(vague_openings, small).empty() || contains(vague_endings, small);
}

/// "salt to taste", "a pinch of nutmeg": an item without a number.
Quantity read_words(std::string_view text) {
    Quantity quantity;
    quantity.as_written = text;
    const auto all = without_end(text.substr(skip_spaces(text, 0)), " ");
    const auto small = lower(all);
    quantity.item = all;
    if (const auto words = opening(vague_openings, small); !words.empty()) {
        quantity.qualifier = words;
        quantity.item = all.substr(skip_spaces(all, words.size()));
        return quantity;
    }
    for (const auto words : vague_endings) {
        const bool alone = small == words;
        if (alone || small.ends_with(" " + std::string{words})) {
            quantity.qualifier = words;
            quantity.item = without_end(all.substr(0, all.size() - words.size()), " ,");
            return quantity;
        }
    }
    return quantity;
}

/// A cursor over a text that begins with a number, and the quantity read so far.
class Reading {
public:
    explicit Reading(std::string_view text) : text_{text}, at_{skip_spaces(text, 0)} {
        quantity_.as_written = text;
    }

    Result<Quantity, TextFault> read() {
        while (qualifier()) {
        }
        const auto begin = at_;
        number_begin_ = begin;
        if (in_words()) {
            return after_words();
        }
        const auto range = read_range(text_, at_);
        if (!range) {
            return without_number(range.fault());
        }
        const auto& [low, high, end] = range.value();
        if (is_part_of_a_name(text_, end)) {
            return read_words(text_);
        }
        if (low.numerator == 0) {
            return fault_at(begin, "an amount is above 0");
        }
        quantity_.low = low;
        quantity_.high = high;
        at_ = end;
        const bool backwards = low.value() > high.value();
        auto whole = after_number(); // "500-1.500 g" is in doubt before it runs backwards
        return whole && backwards ? fault_at(begin, "the smaller amount comes first")
                                  : std::move(whole);
    }

private:
    Result<Quantity, TextFault> without_number(const TextFault& why) {
        if (!is_absent(why)) {
            return Failure{why};
        }
        if (is_negative_at(text_, at_)) {
            return fault_at(at_, "an amount is above 0");
        }
        if (unit_named(word_at(text_, at_)) && past_word(text_, at_) == text_.size()) {
            return fault_at(at_, "expected a number before the unit");
        }
        if (at_ < text_.size() && !quantity_.qualifier.empty()) {
            quantity_.item = without_end(text_.substr(at_), " ");
            return std::move(quantity_);
        }
        return read_words(text_);
    }

    /// "Half a lemon", "two onions": steps over the words up to the item. "Half a 400 g tin" stays
    /// in words.
    bool in_words() {
        const auto number =
            is_vague(text_.substr(at_)) ? std::nullopt : number_in_words(text_, at_);
        const bool is_half = number && number->low == Amount{1, 2};
        if (!number || (is_half && is_amount_at(text_, skip_spaces(text_, number->end)))) {
            return false;
        }
        quantity_.low = number->low;
        quantity_.high = number->high;
        at_ = number->end;
        return true;
    }

    /// "Two 400 g tins" are two of what is so large: no figure can belong to a number in words.
    Result<Quantity, TextFault> after_words() {
        const auto next = skip_spaces(text_, at_);
        if (is_amount_at(text_, next)) {
            at_ = next;
            return finish();
        }
        return after_number();
    }

    Result<Quantity, TextFault> after_number() {
        const auto number_end = at_;
        at_ = skip_spaces(text_, at_);
        if (times()) {
            return finish();
        }
        qualifier();
        const bool has_unit = unit();
        if (auto doubt = in_doubt(text_.substr(number_begin_, number_end - number_begin_))) {
            return fault_at(number_begin_ + doubt->offset, std::move(doubt->message));
        }
        const bool apart = number_end == text_.size() || space_at(text_, number_end) > 0;
        if (!has_unit && !apart) {
            return fault_at(number_end, "expected a space or a unit after the number");
        }
        if (is_amount_at(text_, at_) || is_negative_at(text_, at_)) {
            return fault_at(at_, "expected one amount, such as \"500-1000 g\" or \"2 x 400 g\"");
        }
        return finish();
    }

    Result<Quantity, TextFault> finish() {
        auto rest = text_.substr(at_);
        if (lower(rest.substr(0, 3)) == "of ") {
            rest.remove_prefix(3);
        }
        quantity_.item = without_end(rest, " ");
        return std::move(quantity_);
    }

    /// What is counted in hundreds is never written to a thousandth: "2.500 g" may be meant as
    /// 2500 g, while "2.500 kg" cannot.
    std::optional<TextFault> in_doubt(std::string_view number) const {
        const bool is_small = quantity_.unit == Unit::Gram || quantity_.unit == Unit::Millilitre ||
                              quantity_.unit == Unit::Count;
        return is_small ? thousands_in_doubt(number) : std::nullopt;
    }

    /// "2 x 400 g tins": steps over the sign, so that the packs are what is counted.
    bool times() {
        for (const std::string_view sign : {"x", "X", "×"}) {
            if (!text_.substr(at_).starts_with(sign)) {
                continue;
            }
            const auto next = skip_spaces(text_, at_ + sign.size());
            if (is_amount_at(text_, next)) {
                at_ = next;
                return true;
            }
        }
        return false;
    }

    bool qualifier() {
        const auto word = lower(word_at(text_, at_));
        if (!contains(qualifier_words, word)) {
            return false;
        }
        quantity_.qualifier += (quantity_.qualifier.empty() ? "" : " ") + word;
        at_ = past_word(text_, at_);
        return true;
    }

    /// Fluid ounces are two words; every other unit is one.
    bool unit() {
        const auto word = word_at(text_, at_);
        const auto small = lower(word);
        const auto next = past_word(text_, at_);
        if ((small == "fl" || small == "fluid") &&
            unit_named(word_at(text_, next)) == Unit::Ounce) {
            quantity_.unit = Unit::FluidOunce;
            at_ = past_word(text_, next);
            return true;
        }
        const auto named = unit_named(word);
        if (!named) {
            return false;
        }
        quantity_.unit = *named;
        at_ = next;
        if (*named == Unit::Pound) {
            add_ounces();
        }
        return true;
    }

    /// "4 lb 14 oz" is one amount: 1 lb is 16 oz (NIST Handbook 44, appendix C).
    void add_ounces() {
        const auto ounces = read_amount(text_, at_);
        if (!ounces || quantity_.low != quantity_.high) {
            return;
        }
        const auto unit_at = skip_spaces(text_, ounces.value().end);
        if (unit_named(word_at(text_, unit_at)) != Unit::Ounce) {
            return;
        }
        constexpr std::int64_t ounces_in_pound = 16;
        const auto& part = ounces.value().amount;
        const auto pounds = *quantity_.low;
        const auto denominator = part.denominator * ounces_in_pound;
        quantity_.low =
            in_lowest_terms({pounds.numerator * denominator + part.numerator * pounds.denominator,
                             pounds.denominator * denominator});
        quantity_.high = quantity_.low;
        at_ = past_word(text_, unit_at);
    }

    std::string_view text_;
    std::size_t at_;
    std::size_t number_begin_ = 0;
    Quantity quantity_;
};

} // namespace

Result<Quantity, TextFault> parse_quantity(std::string_view text) {
    if (skip_spaces(text, 0) == text.size()) {
        return fault_at(0, "expected an amount such as \"200 g baby spinach\"");
    }
    return Reading{text}.read();
}

std::string text_of(const Quantity& quantity) {
    return quantity.as_written.empty() ? quantity.item : quantity.as_written;
}

} // namespace thawslip::kitchen
