#include "kitchen/measures/hold_time.h"

#include "base/list.h"
#include "kitchen/measures/number_text.h"
#include "kitchen/measures/time_range.h"
#include "kitchen/texts/text.h"

#include <algorithm>
#include <fmt/format.h>
#include <optional>

namespace thawslip::kitchen {
namespace {

using std::chrono::seconds;

/// The number of seconds, where that is the unit.
std::optional<seconds> read_seconds(std::string_view text) {
    const auto number = read_range(text, skip_spaces(text, 0));
    if (!number) {
        return std::nullopt;
    }
    const auto unit = lower(text.substr(skip_spaces(text, number.value().end)));
    const auto& amount = number.value().low;
    if (!is_one_of(unit, {"s", "sec", "secs", "second", "seconds"}) ||
        amount.numerator % amount.denominator != 0 || amount.numerator <= 0) {
        return std::nullopt;
    }
    return seconds{amount.numerator / amount.denominator};
}

} // namespace

Result<seconds, TextFault> parse_hold(std::string_view text) {
    if (const auto time = read_seconds(text)) {
        return *time;
    }
    const auto minutes = parse_time_range(text);
    if (!minutes) {
        return Failure{minutes.fault()};
    }
    return seconds{minutes.value().low};
}

std::string hold_text(seconds time) {
    const auto whole = std::chrono::duration_cast<std::chrono::minutes>(time);
    const auto rest = (time - whole).count();
    if (whole.count() == 0) {
        return fmt::format("{} s", rest);
    }
    return rest == 0 ? fmt::format("{} min", whole.count())
                     : fmt::format("{} min {} s", whole.count(), rest);
}

} // namespace thawslip::kitchen
