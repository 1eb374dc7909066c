// What is said of one bag, how long it thaws, within how many days it is cooked, how hot it must
// get and until when it keeps, is one figure wherever it is said: random packages, every surface.

#include "conformance/archive/kitchen.h"
#include "kitchen/figures.h"
#include "service/days.h"
#include "support/poppler.h"
#include "support/random.h"

#include <array>
#include <cmath>
#include <doctest/doctest.h>
#include <fmt/format.h>
#include <optional>
#include <regex>

using namespace thawslip;
using namespace thawslip::test_support;
using std::chrono::minutes;

namespace {

/// The figures of one bag; nothing: not said.
struct Said {
    std::optional<long> look_from; ///< minutes
    std::optional<long> allow;     ///< minutes
    std::optional<long> within;    ///< days
    std::optional<long> until;     ///< degrees Celsius
    std::string date;              ///< as `17 dec 2026`
};

std::string small(std::string text) {
    for (auto& c : text) {
        c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return text;
}

/// The words with no-break and thin spaces, and line ends, as plain spaces; small letters.
std::string plain_words(std::string text) {
    for (const std::string space : {"\u00a0", "\u202f", "\u2009", "\n"}) {
        for (auto at = text.find(space); at != std::string::npos; at = text.find(space)) {
            text.replace(at, space.size(), " ");
        }
    }
    return small(std::move(text));
}

std::optional<std::smatch> first(const std::string& text, const char* pattern) {
    std::smatch found;
    return std::regex_search(text, found, std::regex{pattern}) ? std::optional{found}
                                                               : std::nullopt;
}

std::optional<long> number(const std::string& text, const char* pattern) {
    const auto found = first(text, pattern);
    return found ? std::optional{std::stol((*found)[1])} : std::nullopt;
}

/// A span such as `46 h`, `2½ h`, `1 h 30 min`, `150 min`, `2 days` after what `before` matches.
std::optional<long> span(const std::string& text, const std::string& before) {
    const auto pattern = before + "(\\d+)((?:½)?) (h|min|days)(?: (\\d+) min)?";
    const auto found = first(text, pattern.c_str());
    if (!found) {
        return std::nullopt;
    }
    const long unit = (*found)[3] == "h" ? 60 : (*found)[3] == "days" ? 1440 : 1;
    const long rest = (*found)[4].length() > 0 ? std::stol((*found)[4]) : 0;
    return std::stol((*found)[1]) * unit + ((*found)[2].length() > 0 ? unit / 2 : 0) + rest;
}

/// What is said in sentences, or in the code's capitals.
Said read_words(const std::string& printed) {
    const auto text = plain_words(printed);
    Said said;
    said.look_from = span(text, "look from ");
    for (const auto* before : {"allow ", "\\(70 °f\\), ", "microwave, about "}) {
        said.allow = said.allow ? said.allow : span(text, before);
    }
    said.within = number(text, "cook within (\\d+) day");
    said.until = number(text, "(?:to|until) (\\d+) (?:°)?c");
    said.until = said.until ? said.until : number(text, "(\\d+) °c[^,;.]* in the middle");
    if (const auto date = first(text, "(?:used by|use by|best by) (\\d+ [a-z]{3} \\d{4})")) {
        said.date = (*date)[1];
    }
    return said;
}

std::string words_of_pages(const std::string& pdf) {
    std::string text;
    for (const auto& page : read_pages(pdf)) {
        for (const auto& word : page.words) {
            text += word.text + " ";
        }
    }
    return text;
}

constexpr std::array months = {"jan", "feb", "mar", "apr", "may", "jun",
                               "jul", "aug", "sep", "oct", "nov", "dec"};

std::string date_words(kitchen::Date date) {
    return fmt::format("{} {} {}", static_cast<unsigned>(date.day()),
                       months.at(static_cast<unsigned>(date.month()) - 1),
                       static_cast<int>(date.year()));
}

/// A date as it stands on a list: the year in the heading above, `2026 17 dec`.
std::string below_its_month(const std::string& date) {
    const auto year = date.rfind(' ');
    return date.substr(year + 1) + " " + date.substr(0, year);
}

/// What has to be said, by the one place that works it out.
Said expected_of(const kitchen::PlannedPackage& planned) {
    Said said;
    if (const auto time = thaw_time(planned)) {
        said.allow = time->high.count();
        if (time->low != time->high) {
            said.look_from = time->low.count();
        }
    }
    if (const auto days = cook_within(planned)) {
        said.within = days->count();
    }
    said.until = std::lround(planned.package.cook->until->celsius);
    said.date = date_words(planned.keep_until.date);
    return said;
}

/// Small and thin enough for every way of thawing, hot enough for every kind of food.
std::string random_day(Random& random) {
    const std::array foods = {"soup or stew",    "casserole",   "raw chops",
                              "raw ground meat", "cooked meat", "soup"};
    const std::array methods = {"refrigerator", "refrigerator", "cold water", "microwave",
                                "from frozen"};
    const auto pick = [&random](const auto& list) { return list.at(random.below(list.size())); };
    std::string day = fmt::format("[day]\nmade = 2026-10-17\n[[package]]\n"
                                  "dish = \"Quince dish {}\"\nservings = {}\nfood = \"{}\"\n",
                                  random.below(1000), 1 + random.below(2), pick(foods));
    if (!random.chance(5)) {
        day += fmt::format("weight = \"{} g\"\n", 300 + random.below(9) * 100);
    }
    if (!random.chance(5)) {
        day += fmt::format("thickness = \"{} mm\"\n", 15 + random.below(16));
    }
    return day + fmt::format("[package.thaw]\nmethod = \"{}\"\n[package.cook]\nin = \"oven\"\n"
                             "time = \"{} min\"\nuntil = \"{} °C\"\n",
                             pick(methods), 40 + random.below(9) * 5, 75 + random.below(9));
}

kitchen::PlannedPackage planned_from(const std::string& day) {
    auto days =
        service::plan_days(std::vector<service::DayText>{{"day.toml", day}}, service::Settings{});
    for (const auto& fault : days.diagnostics) {
        INFO(fault.message);
    }
    REQUIRE(days.plans.size() == 1);
    REQUIRE(days.plans.front().packages.size() == 1);
    return days.plans.front().packages.front();
}

void compare(const char* surface, const std::string& printed, const Said& wanted) {
    CAPTURE(std::string{surface});
    CAPTURE(wanted.look_from.value_or(-1));
    CAPTURE(wanted.allow.value_or(-1));
    CAPTURE(printed);
    const auto said = read_words(printed);
    CHECK(said.look_from == wanted.look_from);
    CHECK(said.allow == wanted.allow);
    CHECK(said.within == wanted.within);
    CHECK(said.until == wanted.until);
    CHECK(said.date == wanted.date);
}

std::string member(std::string_view name, const std::optional<long>& value) {
    return value ? fmt::format("\"{}\":{}", name, *value) : std::string{};
}

} // namespace

TEST_CASE("every print, list, reading and answer gives the same figures of a bag") {
    Random random{26};
    for (int i = 0; i < 8; ++i) {
        const auto day = random_day(random);
        CAPTURE(day);
        const auto planned = planned_from(day);
        const auto wanted = expected_of(planned);
        const Kitchen kitchen;
        write_file(kitchen.folder / "day.toml", day);
        const auto id = planned.bags.front().id;
        REQUIRE(kitchen("labels day.toml --stock roll-100x150mm -o l.pdf").status == 0);
        REQUIRE(kitchen("cards day.toml --stock card-6x4in -o c.pdf").status == 0);
        const auto code = kitchen("text day.toml --stock roll-100x150mm").out;
        write_file(kitchen.folder / "code.txt", code);
        compare("label", words_of_pages(kitchen.folder / "l.pdf"), wanted);
        compare("card", words_of_pages(kitchen.folder / "c.pdf"), wanted);
        compare("code", code, wanted);
        compare("read -", kitchen("read - < code.txt").out, wanted);
        compare("read by id", kitchen("read " + id).out, wanted);
        REQUIRE(run("pdftoppm -png -r 200 -singlefile " + shell_word(kitchen.folder / "l.pdf") +
                    " " + shell_word(kitchen.folder / "photo"))
                    .status == 0);
        compare("read a photo", kitchen("read photo.png").out, wanted);
        for (const auto* command : {"read --json - < code.txt", "check --json day.toml",
                                    "freezer next 9 --json", "freezer list --json"}) {
            CAPTURE(command);
            const auto json = kitchen(command).out;
            CAPTURE(json);
            CHECK(says(json, kitchen::to_iso(planned.keep_until.date)));
            if (!says(command, "list")) {
                CHECK(says(json, member("thaw_minutes", wanted.allow)));
                CHECK(says(json, member("cook_within_days", wanted.within)));
                CHECK(says(json, "cook_within_days") == wanted.within.has_value());
                CHECK(says(json, "thaw_minutes") == wanted.allow.has_value());
            }
        }
        for (const auto* command : {"lists day.toml --door -o d.pdf", "lists --door -o d.pdf"}) {
            CAPTURE(command);
            REQUIRE(kitchen(command).status == 0);
            const auto list = plain_words(words_of_pages(kitchen.folder / "d.pdf"));
            CAPTURE(list);
            CHECK(says(list, below_its_month(wanted.date)));
            CHECK(span(list, "(?:refrigerator|\\(21 °c\\)|microwave), ") == wanted.allow);
        }
    }
}
