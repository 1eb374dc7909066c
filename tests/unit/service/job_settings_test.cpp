#include "service/print/job.h"
#include "service/settings.h"
#include "service/setup/settings_edits.h"
#include "service/setup/settings_text.h"
#include "toml/edit.h"

#include <doctest/doctest.h>

using namespace thawslip;
using service::JobSettings;
using service::Settings;
using service::What;

namespace {

Settings settings_of_text(const std::string& text) {
    auto settings = service::settings_from(text, "settings.toml");
    CAPTURE(to_text(settings.messages));
    REQUIRE(settings.value);
    return *settings.value;
}

std::string told(const std::string& text) {
    const auto settings = service::settings_from(text, "settings.toml");
    CHECK(!settings.value);
    return to_text(settings.messages);
}

} // namespace

TEST_CASE("each job has its printer, stock, dots and copies") {
    const auto settings = settings_of_text("[labels]\nprinter = \"roll\"\nstock = "
                                           "\"roll-100x150mm\"\ndpi = 203.2\ncopies = 2\n"
                                           "[finishing_cards]\ncopies = 3\n"
                                           "[cook_day_cards]\nstock = \"card-a6\"\n"
                                           "[lists]\nprinter = \"office\"\n");
    CHECK(settings_of(What::Labels, settings) == JobSettings{"roll", "roll-100x150mm", 203.2, 2});
    CHECK(settings_of(What::FinishingCards, settings) == JobSettings{"", "", {}, 3});
    for (const auto what : {What::Cards, What::CookDayCards}) {
        CHECK(settings_of(what, settings) == JobSettings{"", "card-a6", {}, {}});
    }
    for (const auto what : {What::Lists, What::DaySheets, What::DoorList, What::PlanSheet}) {
        CHECK(settings_of(what, settings) == JobSettings{"office", "", {}, {}});
    }
    CHECK(are_cards_apart(settings));
    CHECK(usual_stock(What::Labels, settings) == "roll-100x150mm");
    CHECK(usual_stock(What::FinishingCards, settings) == "letter-cards-4.25x5.5in-cut");
    CHECK(usual_stock(What::CookDayCards, settings) == "card-a6");
}

TEST_CASE("a key that was moved names its place now") {
    CHECK(told("label_stock = \"roll-100x150mm\"\n") ==
          "settings.toml:1:15: error: label_stock is written otherwise now\n"
          "    label_stock = \"roll-100x150mm\"\n"
          "                  ^~~~~~~~~~~~~~~~\n"
          "    hint: write it as stock, below [labels]\n");
    CHECK(told("card_stock = \"card-a6\"\n").find("[finishing_cards] and below [cook_day_cards]") !=
          std::string::npos);
    CHECK(told("dpi = 203.2\n").find("dpi, below [labels]") != std::string::npos);
    // Each is told once, and not as unknown too.
    const auto both = told("dpi = \"many\"\nlabel_stock = 7\n");
    CHECK(both.find("unknown") == std::string::npos);
}

TEST_CASE("what a job's table may not say is told with its place") {
    CHECK(told("[labels]\ndpi = 12\n").starts_with("settings.toml:2:7: error: dpi must be from"));
    CHECK(told("[lists]\ncopies = 100\n").starts_with("settings.toml:2:10: error: copies must be"));
    CHECK(told("[lists]\nprinters = \"x\"\n").find("did you mean \"printer\"") !=
          std::string::npos);
    CHECK(told("[label]\n").find("\"labels\"") != std::string::npos);
}

TEST_CASE("settings that are written out are read as the same") {
    Settings settings;
    settings.paper = "a4";
    settings.language = "de";
    settings.second_language = "es";
    settings.storage_list = "uk";
    settings.kitchen.units = kitchen::Units::Us;
    settings.labels = {"a \"roll\" \\ printer", "roll-100x150mm", 203.2, 2};
    settings.cook_day_cards = {"office", "", {}, {}};
    const auto again = settings_of_text(service::settings_text(settings));
    CHECK(again.paper == "a4");
    CHECK(again.paper_from == service::PaperFrom::Settings);
    CHECK(again.language == "de");
    CHECK(again.second_language == "es");
    CHECK(again.storage_list == "uk");
    CHECK(again.kitchen.units == kitchen::Units::Us);
    CHECK(again.labels == settings.labels);
    CHECK(again.finishing_cards == settings.finishing_cards);
    CHECK(again.cook_day_cards == settings.cook_day_cards);
    CHECK(again.lists == settings.lists);
}

TEST_CASE("answers change a settings file where they differ from it, and nowhere else") {
    const std::string text = "paper = \"a4\"\nkitchen_number = 7 # the shed's\n"
                             "[labels]\nstock = \"a4-2x4-99x68mm\" # named, though the usual one\n"
                             "dpi = 300\n";
    const auto before = settings_of_text(text);
    auto answered = before;
    answered.labels.stock.clear();
    answered.labels.dots_per_inch.reset();
    CHECK(service::settings_edits(before, answered).empty());
    answered.language = "de";
    answered.second_language = "en";
    answered.labels.dots_per_inch = 203.2;
    answered.lists.printer = "office";
    const auto edited = toml::edit(text, service::settings_edits(before, answered));
    REQUIRE(edited);
    CHECK(edited.value().text.find("kitchen_number = 7 # the shed's\n") != std::string::npos);
    const auto again = settings_of_text(edited.value().text);
    CHECK(again.kitchen.number == 7);
    CHECK(again.language == "de");
    CHECK(again.second_language == "en");
    CHECK(again.labels == JobSettings{"", "a4-2x4-99x68mm", 203.2, {}});
    CHECK(again.lists.printer == "office");
}

TEST_CASE("what stands in a remark is right as soon as it stands there no longer") {
    for (const std::string paper : {"a4", "letter"}) {
        Settings settings;
        settings.paper = paper;
        auto text = service::settings_text(settings);
        for (auto at = text.find("\n# "); at != std::string::npos; at = text.find("\n# ", at + 1)) {
            const bool is_key = text.find('=', at) < text.find('\n', at + 1);
            if (is_key) {
                text.erase(at + 1, 2);
            }
        }
        const auto read = settings_of_text(text);
        CHECK(read.labels.printer == "kitchen");
        CHECK(!read.lists.stock.empty());
        CHECK(read.cook_day_cards.copies == 1);
    }
}
