// A text is often a part of a longer one: what lies behind its end is not read.

#include "kitchen/date.h"
#include "kitchen/measures/number_text.h"
#include "kitchen/measures/quantity.h"
#include "kitchen/measures/temperature.h"
#include "kitchen/measures/time_range.h"
#include "kitchen/measures/when.h"
#include "kitchen/texts/lexicon.h"

#include <doctest/doctest.h>
#include <string>
#include <string_view>

using namespace thawslip::kitchen;

namespace {

constexpr std::string_view texts[] = {
    "2,5 kg of 00-flour, 3.25 l milk 1½ h, 1/2 tsp and 1 1/2 cups",
    "350 °F for 1 h 30 min, then 180 °C; 74°C until done -18 °C",
    "last 10-15 min before serving, at the start, 1-2 h",
    "2026-10-17 18:30 2027-01-01",
    "4 lb 14 oz beef, 8 fl oz cream, 2 x 400 g tins, 100% rye, 5-spice",
};

/// Calls `check` with every part of every text, once in its place and once alone.
template <class Check>
void for_every_part(Check check) {
    for (const auto text : texts) {
        for (std::size_t begin = 0; begin < text.size(); ++begin) {
            for (std::size_t size = 0; begin + size <= text.size() && size < 24; ++size) {
                const auto part = text.substr(begin, size);
                const std::string alone{part};
                CAPTURE(alone);
                check(part, std::string_view{alone});
            }
        }
    }
}

} // namespace

TEST_CASE("words end where their text ends") {
    for_every_part([](std::string_view part, std::string_view alone) {
        const auto in_place = worded(part);
        const auto by_itself = worded(alone);
        CHECK(in_place.words == by_itself.words);
        CHECK(in_place.clauses == by_itself.clauses);
    });
}

TEST_CASE("numbers and quantities end where their text ends") {
    for_every_part([](std::string_view part, std::string_view alone) {
        const auto in_place = read_range(part, 0);
        const auto by_itself = read_range(alone, 0);
        REQUIRE(in_place.ok() == by_itself.ok());
        if (in_place) {
            CHECK(in_place.value().low == by_itself.value().low);
            CHECK(in_place.value().high == by_itself.value().high);
            CHECK(in_place.value().end == by_itself.value().end);
            CHECK(in_place.value().end <= part.size());
        }
        const auto quantity = parse_quantity(part);
        const auto quantity_alone = parse_quantity(alone);
        REQUIRE(quantity.ok() == quantity_alone.ok());
        CHECK((!quantity || quantity.value() == quantity_alone.value()));
    });
}

TEST_CASE("temperatures, times and moments end where their text ends") {
    for_every_part([](std::string_view part, std::string_view alone) {
        const auto degrees = parse_temperature(part);
        const auto degrees_alone = parse_temperature(alone);
        REQUIRE(degrees.ok() == degrees_alone.ok());
        CHECK((!degrees || degrees.value().celsius == degrees_alone.value().celsius));
        const auto time = parse_time_range(part);
        const auto time_alone = parse_time_range(alone);
        REQUIRE(time.ok() == time_alone.ok());
        CHECK((!time || time.value().high == time_alone.value().high));
        CHECK(parse_when(part).ok() == parse_when(alone).ok());
    });
}
