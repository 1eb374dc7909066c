#include "kitchen/temperature.h"

#include "kitchen/number_text.h"

namespace thawslip::kitchen {
namespace {

constexpr std::string_view degree = "°";

/// The letter of the scale at `at`, after an optional degree sign; '\0' where there is none, or
/// where more follows.
char scale_at(std::string_view text, std::size_t at) {
    if (text.substr(at).starts_with(degree)) {
        at = skip_spaces(text, at + degree.size());
    }
    const bool last = at < text.size() && skip_spaces(text, at + 1) == text.size();
    const char letter = last ? text[at] : '\0';
    return letter == 'c' ? 'C' : letter == 'f' ? 'F' : letter;
}

} // namespace

Result<Temperature, TextFault> parse_temperature(std::string_view text) {
    const auto start = skip_spaces(text, 0);
    const auto number = read_amount(text, start);
    if (!number) {
        return Failure{TextFault{start, "expected a temperature such as \"74 °C\" or \"165 °F\""}};
    }
    const auto scale_start = skip_spaces(text, number->end);
    const char scale = scale_at(text, scale_start);
    if (scale != 'C' && scale != 'F') {
        return Failure{TextFault{scale_start, "expected °C or °F after the number"}};
    }
    const double value = number->amount.value();
    const auto temperature =
        scale == 'C' ? Temperature{value, TemperatureScale::Celsius}
                     : Temperature{(value - 32.0) * 5.0 / 9.0, TemperatureScale::Fahrenheit};
    if (temperature.celsius < 0.0 || temperature.celsius > 300.0) {
        return Failure{TextFault{start, "a target temperature lies between 0 and 300 °C"}};
    }
    return temperature;
}

} // namespace thawslip::kitchen
