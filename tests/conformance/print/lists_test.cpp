#include "pages.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <fmt/format.h>
#include <regex>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

const std::string day = shell_word(std::string{THAWSLIP_SOURCE_DIR} + "/samples/orchard-day.toml");

struct Lists {
    ScratchFolder folder;
    std::string pdf = folder / "lists.pdf";
    Outcome outcome;

    explicit Lists(const std::string& arguments)
        : outcome{run_thawslip("lists " + arguments + " -o " + shell_word(pdf))} {
        INFO(outcome.err);
        REQUIRE(outcome.status == 0);
    }
};

/// A day of many bags, so that the lists run on.
std::string long_day(const ScratchFolder& folder, int dishes, int bags) {
    std::string toml = "[day]\nmade = 2026-10-17\n";
    for (int i = 1; i <= dishes; ++i) {
        toml += fmt::format("[[package]]\ndish = \"Bean and barley pot {}\"\nservings = 4\n"
                            "bags = {}\nuse_by = 2027-01-{:02}\n",
                            i, bags, 1 + (i * 7) % 28);
    }
    const auto file = folder / "long.toml";
    write_file(file, toml);
    return shell_word(file);
}

} // namespace

TEST_CASE("the lists of the sample day are printed on whole sheets of either paper") {
    for (const char* paper : {"letter", "a4"}) {
        CAPTURE(paper);
        const Lists lists{day + " --paper " + paper};
        const auto text = words_in(lists.pdf);
        for (const char* words :
             {"Packing day", "Into the bags", "3 kg (6 lb 10 oz) squash", "Stays out",
              "1 l (4¼ cups) vegetable stock", "Cooling and freezing", "Shopping", "For the day",
              "For cook day", "In the freezer", "Local food-safety rules come first."}) {
            CAPTURE(words);
            CHECK(has(text, words));
        }
    }
}

TEST_CASE("--day and --door print the one without the other") {
    const auto only_day = words_in(Lists{day + " --day"}.pdf);
    CHECK(has(only_day, "Packing day"));
    CHECK_FALSE(has(only_day, "In the freezer"));
    const auto only_door = words_in(Lists{day + " --door"}.pdf);
    CHECK(has(only_door, "In the freezer"));
    CHECK_FALSE(has(only_door, "Packing day"));
}

TEST_CASE("every bag stands on the door list once, in order of its date, on however many pages") {
    const ScratchFolder folder;
    const Lists lists{long_day(folder, 12, 9) + " --door"};
    const auto pages = read_pages(lists.pdf);
    REQUIRE(pages.size() >= 3);
    std::vector<std::string> ids;
    std::vector<int> days;
    const std::regex id{"[0-9A-Z]{3}-[0-9A-Z]{3}-[0-9A-Z]{3}"};
    for (const auto& page : pages) {
        for (std::size_t i = 0; i + 1 < page.words.size(); ++i) {
            std::string plain;
            for (std::size_t at = 0; at < page.words[i].text.size(); ++at) {
                plain += page.words[i].text[at];
            }
            if (std::regex_match(plain, id)) {
                ids.push_back(plain);
            }
            if (page.words[i + 1].text == "Jan") {
                days.push_back(std::stoi(page.words[i].text));
            }
        }
    }
    CHECK(ids.size() == 12 * 9);
    std::ranges::sort(ids);
    CHECK(std::ranges::adjacent_find(ids) == ids.end());
    CHECK(days.size() == 12 * 9);
    CHECK(std::ranges::is_sorted(days));
    for (std::size_t i = 0; i < pages.size(); ++i) {
        std::string text;
        for (const auto& word : pages[i].words) {
            text += word.text + " ";
        }
        CHECK(has(text, fmt::format("Page {} of {}", i + 1, pages.size())));
        CHECK(has(text, "Serves")); // the heads of the columns stand on every page
        CHECK(has(text, "Local food-safety rules come first."));
    }
}

TEST_CASE("no word of a list stands outside the sheet's safe margin") {
    for (const char* stock : {"letter-full", "a4-full", "a5-full"}) {
        CAPTURE(stock);
        const Lists lists{day + " --stock " + stock};
        for (const auto& page : read_pages(lists.pdf)) {
            CHECK_FALSE(page.words.empty());
            for (const auto& word : page.words) {
                CAPTURE(word.text);
                CHECK(word.left >= 28);
                CHECK(word.right <= page.width - 28);
            }
        }
    }
}

TEST_CASE("lists are drawn as SVG too, one file a page") {
    const ScratchFolder folder;
    const auto outcome =
        run_thawslip("lists --door " + day + " -o " + shell_word(folder / "door.svg"));
    CHECK(outcome.status == 0);
    CHECK(has(read_file(folder / "door.svg"), "<svg"));
}

TEST_CASE("the lists speak the language that is set") {
    const auto german = words_in(Lists{day + " --language de"}.pdf);
    for (const char* words : {"Vorkochtag", "In die Beutel", "Am Anfang 1 l (4¼ Tassen)", "Einkauf",
                              "Im Gefrierschrank", "17. Dez. 2026"}) {
        CAPTURE(words);
        CHECK(has(german, words));
    }
}

TEST_CASE("the same lists are the same bytes") {
    CHECK(read_file(Lists{day}.pdf) == read_file(Lists{day}.pdf));
}
