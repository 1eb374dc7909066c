#include "kitchen/measures/temperature.h"

#include "kitchen/measures/number_text.h"
#include "kitchen/texts/text.h"

#include <optional>

namespace thawslip::kitchen {
namespace {

struct ScaleSign {
    std::string_view text;
    TemperatureScale scale;
};

/// The degree sign is often typed as the ordinal "º" or the ring "˚", spelt out, or left out.
constexpr std::string_view degree_signs[] = {"°", "º", "˚", "degrees", "degree", "deg"};
/// In small letters.
constexpr ScaleSign scale_signs[] = {{"c", TemperatureScale::Celsius},
                                     {"celsius", TemperatureScale::Celsius},
                                     {"℃", TemperatureScale::Celsius},
                                     {"f", TemperatureScale::Fahrenheit},
                                     {"fahrenheit", TemperatureScale::Fahrenheit},
                                     {"℉", TemperatureScale::Fahrenheit}};

/// The scale that ends the text at `at`; nothing where there is none, or where more follows.
std::optional<TemperatureScale> scale_at(std::string_view text, std::size_t at) {
    for (const auto degree : degree_signs) {
        if (text.substr(at).starts_with(degree)) {
            at = skip_spaces(text, at + degree.size());
            break;
        }
    }
    for (const auto& sign : scale_signs) {
        if (text.substr(at).starts_with(sign.text) &&
            skip_spaces(text, at + sign.text.size()) == text.size()) {
            return sign.scale;
        }
    }
    return std::nullopt;
}

} // namespace

Result<Temperature, TextFault> parse_temperature(std::string_view text) {
    const auto start = skip_spaces(text, 0);
    const auto number = read_amount(text, start);
    if (!number) {
        const auto& why = number.fault();
        return Failure{is_absent(why) ? TextFault{start, "expected a temperature such as \"74 °C\""}
                                      : why};
    }
    const auto scale_start = skip_spaces(text, number.value().end);
    const auto scale = scale_at(lower(text), scale_start);
    if (!scale) {
        return Failure{TextFault{scale_start, "expected °C or °F after the number"}};
    }
    const auto degrees = number.value().amount.value();
    const Temperature temperature{
        *scale == TemperatureScale::Celsius ? degrees : to_celsius(degrees), *scale};
    if (temperature.celsius < 0.0 || temperature.celsius > 300.0) {
        return Failure{TextFault{start, "expected a temperature from 0 to 300 °C"}};
    }
    return temperature;
}

} // namespace thawslip::kitchen
