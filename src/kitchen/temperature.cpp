#include "kitchen/temperature.h"

#include "kitchen/number_text.h"
#include "kitchen/text.h"

#include <array>
#include <optional>
#include <string>

namespace thawslip::kitchen {
namespace {

struct ScaleWord {
    std::string_view word;
    TemperatureScale scale;
};

/// In small letters, what may follow the number and its degree sign.
constexpr std::array<ScaleWord, 6> scale_words = {{{"c", TemperatureScale::Celsius},
                                                   {"celsius", TemperatureScale::Celsius},
                                                   {"℃", TemperatureScale::Celsius},
                                                   {"f", TemperatureScale::Fahrenheit},
                                                   {"fahrenheit", TemperatureScale::Fahrenheit},
                                                   {"℉", TemperatureScale::Fahrenheit}}};

/// Passes over a degree sign, or U+00BA, which looks like it and stands on some keyboards, or
/// the word.
std::size_t skip_degree(std::string_view text, std::size_t at) {
    for (const std::string_view sign : {"°", "º", "degrees", "degree", "deg"}) {
        if (text.substr(at).starts_with(sign)) {
            return skip_spaces(text, at + sign.size());
        }
    }
    return at;
}

/// The scale at `at`; nothing where there is none, or where more follows.
std::optional<TemperatureScale> scale_at(const std::string& text, std::size_t at) {
    const auto word_at = skip_degree(text, at);
    for (const auto& each : scale_words) {
        const bool here = std::string_view{text}.substr(word_at).starts_with(each.word);
        if (here && skip_spaces(text, word_at + each.word.size()) == text.size()) {
            return each.scale;
        }
    }
    return std::nullopt;
}

} // namespace

Result<Temperature, TextFault> parse_temperature(std::string_view text) {
    const auto start = skip_spaces(text, 0);
    const auto number = read_amount(text, start);
    if (!number) {
        const auto& why = number.fault().message;
        return Failure{TextFault{
            start, why.empty() ? "expected a temperature such as \"74 °C\" or \"165 °F\"" : why}};
    }
    const auto scale_start = skip_spaces(text, number.value().end);
    const auto scale = scale_at(lower(text), scale_start);
    if (!scale) {
        return Failure{TextFault{scale_start, "expected °C or °F after the number"}};
    }
    const double value = number.value().amount.value();
    const double celsius = *scale == TemperatureScale::Celsius ? value : (value - 32.0) * 5.0 / 9.0;
    if (celsius < 0.0 || celsius > 300.0) {
        return Failure{TextFault{start, "a target temperature lies between 0 and 300 °C"}};
    }
    return Temperature{celsius, *scale};
}

} // namespace thawslip::kitchen
