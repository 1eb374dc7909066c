#include "kitchen/texts/said_degrees.h"

#include "base/list.h"
#include "kitchen/measures/temperature.h"
#include "kitchen/texts/sentences.h"

#include <algorithm>
#include <optional>
#include <span>
#include <string_view>

namespace thawslip::kitchen {
namespace {

constexpr std::string_view celsius_words[] = {"c", "celsius", "centigrade", "centigrados"};
constexpr std::string_view fahrenheit_words[] = {"f", "fahrenheit"};
constexpr std::string_view degree_words[] = {"degree", "degrees", "deg",   "grad",
                                             "grado",  "grados",  "graden"};
constexpr std::string_view other_units[] = {
    "h",       "hr",      "hrs",     "hour",   "hours", "min",   "mins",   "minute",
    "minutes", "minuto",  "minutos", "hora",   "horas", "std",   "stunde", "stunden",
    "minuten", "g",       "kg",      "gr",     "ml",    "l",     "cl",     "cm",
    "mm",      "in",      "inch",    "inches", "x",     "lb",    "oz",     "w",
    "watt",    "percent", "quart",   "qt",     "litre", "liter", "pint",   "servings"};

bool is_one_of(std::span<const std::string_view> list, const WordedText& text, std::size_t word) {
    return word < text.words.size() && contains(list, text.words[word]);
}

/// No kitchen oven goes to 255 °C or more but in steps that Fahrenheit has too.
double as_dial(double number) {
    constexpr double least_fahrenheit = 255;
    return number >= least_fahrenheit ? to_celsius(number) : number;
}

std::optional<SaidDegrees> degrees_at(const WordedText& text, std::size_t word) {
    const auto number = number_at(text, word);
    if (!number) {
        return std::nullopt;
    }
    auto unit = word + 1;
    if (number_at(text, unit)) {
        ++unit; // the other end of "80-90 °C"
    }
    const bool degrees = is_one_of(degree_words, text, unit);
    if (degrees) {
        ++unit;
    }
    if (is_one_of(celsius_words, text, unit)) {
        return SaidDegrees{*number, word, true};
    }
    if (is_one_of(fahrenheit_words, text, unit)) {
        return SaidDegrees{to_celsius(*number), word, true};
    }
    constexpr double least_bare = 50;
    if (!degrees && (*number < least_bare || is_one_of(other_units, text, unit))) {
        return std::nullopt;
    }
    return SaidDegrees{as_dial(*number), word, degrees};
}

} // namespace

std::vector<SaidDegrees> said_degrees(const WordedText& text) {
    std::vector<SaidDegrees> all;
    for (std::size_t word = 0; word < text.words.size(); ++word) {
        if (const auto degrees = degrees_at(text, word)) {
            all.push_back(*degrees);
            if (number_at(text, word + 1)) {
                ++word;
            }
        }
    }
    return all;
}

} // namespace thawslip::kitchen
