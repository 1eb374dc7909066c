#pragma once

#include "archive/values.h"

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace thawslip::archive {

/// What a description may hold at most (README, "A day"), so that whatever comes in by merge,
/// import or a changed file is held to it too. A day is read by a layer that this one does not
/// know.
struct Most {
    static constexpr int packages = 100;
    static constexpr int servings = 100;
    static constexpr int bags = 200;
    static constexpr int size = 20'000; ///< kitchen::DishSize::name
    static constexpr double grams = 20'000.0;
    static constexpr int first_year = 1990;
    static constexpr int last_year = 2300; ///< a day of 2200 keeps for some years
    static constexpr int thaw_days = 60;
    static constexpr std::size_t dish_letters = 80;       ///< code points
    static constexpr std::size_t letters = 200;           ///< of a name or an entry, in code points
    static constexpr std::size_t description = 1U << 20U; ///< bytes
    static constexpr std::size_t file = 1U << 26U;        ///< bytes of a stock, layout or settings
    // More than anybody does to a bag, and few enough to be gone through.
    static constexpr std::size_t events = 1'000; ///< changes of a bag's state
    static constexpr std::size_t ids = 100;      ///< of one bag, whose dish was renamed
    static constexpr std::size_t keys = 10'000;  ///< how often one print was made
    /// Seconds since 1970: the end of `last_year`. Nothing is ordered after it, so that there is
    /// always room for what comes next.
    static constexpr std::int64_t clock =
        std::int64_t{std::chrono::sys_days{std::chrono::year{last_year + 1} / 1 / 1}
                         .time_since_epoch()
                         .count()} *
        24 * 60 * 60;
    static constexpr std::int64_t ordered = clock * 1000;       ///< thousandths of a second
    static constexpr std::int64_t seq = std::int64_t{1} << 40U; ///< commands of a station
};

/// Whether a text is the kitchen's date and time as archives have it: "2026-10-17T14:05:00" (ISO
/// 8601), perhaps with a part of a second, of a day and an hour that there are.
bool is_moment(std::string_view text);

/// Whether it is one line that may be shown (base/shown.h) of no more than `letters` code points.
bool is_name(std::string_view text, std::size_t letters = Most::letters);

/// A name as messages show it, cut where no name is so long: a stranger's may be as long as a file.
std::string named(std::string_view text);

/// Whether `number` is from 0 to `most`.
constexpr bool is_within(std::int64_t number, std::int64_t most) {
    return number >= 0 && number <= most;
}

/// Whether a bag's event is of a time and a station's command that can be.
bool can_be(const BagEvent& event);

/// What of a package cannot be, as words that follow its dish's name; nothing where all is well.
std::optional<std::string> fault_in(const PackageRecord& package);

/// The same of a day, without what `fault_in(package)` says of its packages.
std::optional<std::string> fault_in(const DayRecord& day);

} // namespace thawslip::archive
