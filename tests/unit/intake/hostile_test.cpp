// Whatever a file holds, reading it ends in a day or in placed mistakes: never in a crash, and in
// memory and time that its size bounds.

#include "support/command.h"
#include "support/random.h"
#include "unit/intake/told.h"

#include <doctest/doctest.h>
#include <string>
#include <vector>

using namespace thawslip;
using intake_test::outcome_of;

namespace {

std::string sample() {
    return test_support::read_file(THAWSLIP_SOURCE_DIR "/samples/orchard-day.toml");
}

/// Whether a description gives a day that may be printed, or else a mistake with its place.
bool is_day_or_placed_mistake(const std::string& text) {
    const auto outcome = outcome_of(text);
    if (!has_errors(outcome.faults)) {
        return outcome.day.has_value();
    }
    for (const auto& fault : outcome.faults) {
        const bool placed = fault.where.line >= 1 && fault.where.column >= 1;
        const bool told =
            !fault.message.empty() && !to_text(fault, outcome.document.text()).empty();
        if (!told || (fault.severity == Severity::Error && !placed)) {
            return false;
        }
    }
    return true;
}

std::string repeated(std::size_t count, const std::string& part) {
    std::string text;
    text.reserve(count * part.size());
    for (std::size_t i = 0; i < count; ++i) {
        text += part;
    }
    return text;
}

} // namespace

TEST_CASE("the sample day has no mistakes") {
    const auto outcome = outcome_of(sample());
    CHECK(outcome.faults.empty());
    REQUIRE(outcome.day.has_value());
    CHECK(outcome.day->packages.size() == 5);
}

TEST_CASE("prefixes of the sample day give a day or a placed mistake") {
    const auto text = sample();
    constexpr std::size_t step = 3; // of every word some letters are cut off
    for (std::size_t length = 0; length <= text.size(); length += step) {
        if (!is_day_or_placed_mistake(text.substr(0, length))) {
            FAIL_CHECK("at byte " << length);
        }
    }
}

TEST_CASE("two thousand seeded changes of bytes give a day or a placed mistake") {
    const auto good = sample();
    test_support::Random random{20261017};
    constexpr std::string_view telling = "[]{}=\"'.\n#,-\\0\r\t";
    for (int round = 0; round < 2000; ++round) {
        auto text = good;
        for (auto edits = 1 + random.below(4); edits > 0; --edits) {
            const auto at = random.below(text.size());
            switch (random.below(4)) {
            case 0: text[at] = static_cast<char>(random.below(256)); break;
            case 1: text.erase(at, 1 + random.below(8)); break;
            case 2:
                text.insert(at, good.substr(random.below(good.size()), random.below(40)));
                break;
            default: text.insert(at, 1, telling[random.below(telling.size())]); break;
            }
        }
        if (!is_day_or_placed_mistake(text)) {
            FAIL_CHECK("round " << round << ":\n" << text);
        }
    }
}

TEST_CASE("five hundred seeded changes of whole lines give a day or a placed mistake") {
    std::vector<std::string> lines;
    const auto good = sample();
    for (std::size_t at = 0; at < good.size();) {
        const auto end = good.find('\n', at) + 1;
        lines.push_back(good.substr(at, end - at));
        at = end;
    }
    test_support::Random random{7};
    for (int round = 0; round < 500; ++round) {
        std::string text;
        for (const auto& line : lines) {
            const auto fate = random.below(24);
            text += fate == 0   ? ""
                    : fate == 1 ? line + line
                    : fate == 2 ? lines[random.below(lines.size())]
                                : line;
        }
        if (!is_day_or_placed_mistake(text)) {
            FAIL_CHECK("round " << round << ":\n" << text);
        }
    }
}

TEST_CASE("a megabyte of one thing is told in at most a hundred messages") {
    struct Case {
        const char* about;
        std::string text;
    };
    const Case cases[] = {
        {"packages", repeated(80'000, "[[package]]\n")},
        {"packages in one line", "package=[" + repeated(300'000, "{},") + "]"},
        {"numbers for steps",
         "[[package]]\n[package.cook]\nsteps=[" + repeated(400'000, "3,") + "]"},
        {"lines that are no value", repeated(200'000, "a=x\n")},
        {"impossible dates", repeated(40'000, "a=2026-02-30\n")},
        {"one key", std::string(1'000'000, 'a') + "=1\n"},
        {"one text", "a=\"" + std::string(1'000'000, 'x') + "\"\n"},
        {"escapes", "a=\"" + repeated(160'000, "\\u0041")},
        {"backslashes", "a=\"" + std::string(1'000'000, '\\')},
        {"quotes", std::string(1'000'000, '"')},
    };
    for (const auto& c : cases) {
        CAPTURE(c.about);
        const auto outcome = outcome_of(c.text);
        CHECK(has_errors(outcome.faults));
        CHECK(outcome.faults.size() <= 2 * toml::Reader::most_errors + 1);
        std::size_t letters = 0;
        for (const auto& fault : outcome.faults) {
            letters += to_text(fault, outcome.document.text()).size();
        }
        CHECK(letters < 100'000);
    }
}

TEST_CASE("after a hundred mistakes the rest is counted") {
    std::string text = "[day]\nmade = 2026-10-17\n";
    for (int i = 0; i < 150; ++i) {
        text += "wrong" + std::to_string(i) + " = 1\n";
    }
    text += "[[package]]\ndish = \"Plum and ginger compote\"\nservings = 4\nfood = \"fruit\"\n";
    const auto outcome = outcome_of(text);
    REQUIRE(outcome.faults.size() == 101);
    CHECK(outcome.faults.front().severity == Severity::Note);
    CHECK(to_text(outcome.faults.front()) == "day.toml: note: 50 more mistakes are not shown\n");
}
