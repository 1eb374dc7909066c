#include "pages.h"
#include "support/variable.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <fmt/format.h>
#include <regex>

namespace lists_test {

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
                            static_cast<char>('A' + i), bags, 1 + (i * 7) % 28);
    }
    const auto file = folder / "long.toml";
    write_file(file, toml);
    return shell_word(file);
}

bool is_number(const std::string& text) {
    return std::ranges::all_of(text, [](char c) { return c >= '0' && c <= '9'; });
}

} // namespace

TEST_CASE("the lists of the sample day are printed on whole sheets of either paper") {
    for (const char* paper : {"letter", "a4"}) {
        CAPTURE(paper);
        const Lists lists{day + " --paper " + paper};
        const auto text = words_in(lists.pdf);
        for (const char* words :
             {"Packing day", "Into the bags", "3 kg (6 lb 10 oz) squash", "Left out",
              "1 l (4¼ cups) vegetable stock", "Cooling and freezing", "Shopping",
              "For packing day", "For cook day", "In the freezer", "November 2026",
              "Local food-safety rules come first."}) {
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

TEST_CASE("every bag has its box on the door list, in order of its date, on however many pages") {
    const ScratchFolder folder;
    const Lists lists{long_day(folder, 12, 9) + " --door --stock a5-full"};
    const auto pages = read_pages(lists.pdf);
    REQUIRE(pages.size() >= 2);
    int boxes = 0;
    std::vector<int> days;
    for (std::size_t i = 0; i < pages.size(); ++i) {
        const auto& words = pages[i].words;
        std::string text;
        for (std::size_t w = 0; w < words.size(); ++w) {
            text += words[w].text + " ";
            const auto& word = words[w];
            boxes += word.top > 60 && word.left > pages[i].width * 0.5 && is_number(word.text);
            if (w > 0 && words[w].text == "Jan") {
                days.push_back(std::stoi(words[w - 1].text));
            }
        }
        CHECK(has(text, fmt::format("Page {} of {}", i + 1, pages.size())));
        CHECK(has(text, "January 2027")); // the month stands on every page
        CHECK(has(text, "Printed"));
        CHECK(has(text, "Local food-safety rules come first."));
    }
    CHECK(boxes == 12 * 9);
    CHECK(days.size() >= 4); // each date at least once
    CHECK(std::ranges::is_sorted(days));
}

TEST_CASE("a hundred and twenty bags of nine dishes stand on two sheets of door list at most") {
    const ScratchFolder folder;
    std::string toml = "[day]\nmade = 2026-10-17\n";
    const char* dishes[] = {"Windfall apple chutney with walnuts",
                            "Beetroot and horseradish soup",
                            "Mutton and quince pot",
                            "Leek, potato and smoked trout chowder",
                            "Pumpkin dumplings in sage broth",
                            "Plum crumble filling",
                            "Red cabbage with cloves and pears",
                            "Split pea and ham hock stew",
                            "Mushroom and barley bake"};
    for (int i = 0; i < 9; ++i) {
        toml += fmt::format("[[package]]\ndish = \"{}\"\nservings = 6\nbags = {}\n"
                            "use_by = 2027-{:02}-11\ncontains = [\"celery\", \"milk\", \"wheat\"]\n"
                            "[package.thaw]\nmethod = \"refrigerator\"\n",
                            dishes[i], i < 3 ? 14 : 13, 1 + i / 2);
    }
    write_file(folder / "winter.toml", toml);
    for (const char* paper : {"letter", "a4"}) {
        CAPTURE(paper);
        const Lists lists{shell_word(folder / "winter.toml") + " --door --paper " + paper};
        CHECK(has(words_in(lists.pdf), "Bags: 120"));
        CHECK(read_pages(lists.pdf).size() <= 2);
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

TEST_CASE("lists are drawn as SVG too, one file per page") {
    const ScratchFolder folder;
    const auto outcome =
        run_thawslip("lists --door " + day + " -o " + shell_word(folder / "door.svg"));
    CHECK(outcome.status == 0);
    CHECK(has(read_file(folder / "door.svg"), "<svg"));
}

TEST_CASE("the lists speak the language that is set") {
    const auto german = words_in(Lists{day + " --language de"}.pdf);
    for (const char* words : {"Packtag", "In die Beutel", "Am Anfang 1 l (4 Tassen)", "Einkauf",
                              "Im Tiefkühler", "17. Dez. 2026"}) {
        CAPTURE(words);
        CHECK(has(german, words));
    }
}

TEST_CASE("the same lists are the same bytes, on the day that the clock shows") {
    const Variable october{"SOURCE_DATE_EPOCH", "1792238400"};
    const Lists lists{day};
    CHECK(read_file(lists.pdf) == read_file(Lists{day}.pdf));
    CHECK(has(words_in(lists.pdf), "Printed 17 Oct 2026"));
    const Variable november{"SOURCE_DATE_EPOCH", "1795478400"};
    CHECK(has(words_in(Lists{day}.pdf), "Printed 24 Nov 2026"));
}

} // namespace lists_test
