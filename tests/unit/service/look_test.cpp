#include "layout/sheets/stock.h"
#include "service/print/look.h"
#include "service/record/print_setup.h"

#include <doctest/doctest.h>

using namespace thawslip;
using service::Look;
using service::Settings;

namespace {

/// A look in which nothing is as usual.
Look unusual() {
    return {.stock = "/orchard/mine.toml",
            .layout = "/orchard/tall.toml",
            .first_cell = 4,
            .skip = {2, 7},
            .dots_per_inch = 203.2,
            .small_modules = true,
            .large_print = true,
            .is_trial = true,
            .part = {.copies = 3, .ids = {"K7Q-2M4-9XC", "V9A-X28-9XK"}},
            .kept = {{"/orchard/mine.toml", "paper = \"a4\""}}};
}

/// The look that comes back from what the archive keeps of `look`.
service::PrintedWith kept(const Look& look, const Settings& settings = {}) {
    auto with = service::printed_with(
        {.what = "labels",
         .stock = look.stock,
         .layout = look.layout,
         .settings = kept_options(look, settings) + "# settings\n" + settings.text,
         .look = "",
         .files = look.kept});
    REQUIRE(with);
    return std::move(with).value();
}

} // namespace

TEST_CASE("a look without one member the usual one: a new member has to be added here") {
    const auto look = unusual();
    const Look usual;
    const auto& [stock, layout, first_cell, skip, dpi, small_modules, large_print, is_trial, part,
                 files] = look;
    CHECK(stock != usual.stock);
    CHECK(layout != usual.layout);
    CHECK(first_cell != usual.first_cell);
    CHECK(skip != usual.skip);
    CHECK(dpi != usual.dots_per_inch);
    CHECK(small_modules != usual.small_modules);
    CHECK(large_print != usual.large_print);
    CHECK(is_trial != usual.is_trial);
    CHECK(part != usual.part);
    CHECK(files != usual.kept);
}

TEST_CASE("all of a look is kept with a print, and of a trial, which is not kept, nothing") {
    auto look = unusual();
    look.is_trial = false;
    CHECK(kept(look).look == look);
}

TEST_CASE("every setting that a command line may override is kept with a print") {
    Settings settings;
    settings.text = "paper = \"letter\"\n"; // the file says otherwise
    const std::string unusual_texts[] = {"a4", "oregon", "de,es", "us"};
    REQUIRE(service::setting_options().size() == std::size(unusual_texts));
    std::size_t at = 0;
    for (const auto& option : service::setting_options()) {
        CAPTURE(option.key);
        CHECK(option.text(settings) != unusual_texts[at]);
        CHECK(!option.set(settings, unusual_texts[at]));
        CHECK(option.text(settings) == unusual_texts[at]);
        CHECK(option.text(kept({}, settings).settings) == unusual_texts[at]);
        ++at;
    }
}

TEST_CASE("options of older prints, which have fewer, are read as they are") {
    const auto read =
        service::printed_with({.what = "cards",
                               .stock = "letter-cards-6x4in-cut",
                               .layout = "",
                               .settings = "paper = \"a4\"\nstorage_list = \"uk\"\n"
                                           "first_cell = 2\nspoiled = [3.0]\n# settings\n"
                                           "units = \"us\"\n",
                               .look = ""});
    REQUIRE(read);
    const auto& with = read.value();
    CHECK(with.settings.paper == "a4");
    CHECK(with.settings.storage_list == "uk");
    CHECK(with.settings.kitchen.units == kitchen::Units::Us);
    CHECK(with.look.first_cell == 2);
    CHECK(with.look.skip == std::vector{3});
    CHECK(!with.look.small_modules);
}

TEST_CASE("a cell that no sheet can have is not taken from a kept look") {
    const auto with_cell = [](int cell) {
        return service::printed_with(
            {.what = "labels",
             .stock = "",
             .layout = "",
             .settings = "first_cell = " + std::to_string(cell) + "\n# settings\n",
             .look = ""});
    };
    REQUIRE(with_cell(layout::most_cells));
    CHECK(with_cell(layout::most_cells).value().look.first_cell == layout::most_cells);
    CHECK_FALSE(with_cell(layout::most_cells + 1));
}

TEST_CASE("large print is kept with a print, from the settings or from its own option") {
    Settings settings;
    settings.large_print = true;
    CHECK(kept({}, settings).look.large_print == true);
    Look small;
    small.large_print = false;
    CHECK(kept(small, settings).look.large_print == false);
    CHECK(kept({}).look.large_print == false);
}

TEST_CASE("options that a later Thawslip wrote are refused, not left out") {
    CHECK_FALSE(service::printed_with({.what = "labels",
                                       .stock = "",
                                       .layout = "",
                                       .settings = "gilded_edges = true\n# settings\n",
                                       .look = ""}));
}

TEST_CASE("a text that is no language or system of units is no setting") {
    Settings settings;
    for (const auto& option : service::setting_options()) {
        const std::string key = option.key;
        if (key == "language" || key == "units") {
            CHECK(option.set(settings, "quenya"));
        }
    }
    CHECK(settings.language == "en");
}

TEST_CASE("what changed since a print is named, and what did not is not") {
    CHECK(service::changed_look("program 0.1.0\nlayout wide 1f\n",
                                "program 0.1.0\nlayout wide 2e\n") ==
          std::vector<std::string>{"layout wide"});
    CHECK(service::changed_look("program 0.1.0\n", "program 0.1.0\n").empty());
    CHECK(service::changed_look("stock wide 1f\n", "stock other 2e\n").empty()); // as asked for
}

TEST_CASE("each thing that is no longer as it was is named once, and what is new is not") {
    const std::string then = "program 0.1.0\nstock wide 1f\nlayout a 1\nlayout b 2\nface x 3\n";
    CHECK(service::changed_look(then, "program 0.2.0\nstock wide 2f\nlayout a 1\nlayout b 9\n"
                                      "layout c 4\nface x 3\n") ==
          std::vector<std::string>{"program", "stock wide", "layout b"});
    CHECK(service::changed_look(then, then).empty());
    CHECK(service::changed_look("", then).empty());
}

TEST_CASE("settings of a print that nobody can read any longer are the archive's fault") {
    const auto read = [](const std::string& settings) {
        return service::printed_with(
            {.what = "labels", .stock = "", .layout = "", .settings = settings, .look = ""});
    };
    const auto fault_of = [&](const std::string& settings) {
        const auto with = read(settings);
        REQUIRE_FALSE(with);
        return with.fault();
    };
    CHECK(fault_of("first_cell = 1\n# settings\npaper = \"a9\"\n")
              .starts_with("the settings of that print cannot be read:\n"));
    CHECK(fault_of("first_cell = 0\n# settings\npaper = \"a4\"\n")
              .starts_with("the options of that print cannot be read:\n"));
    CHECK_FALSE(read("language = \"quenya\"\n"));
    const auto old = read("first_cell = 3\n"); // of before settings were kept
    REQUIRE(old);
    CHECK(old.value().look.first_cell == 3);
    CHECK(old.value().settings.paper == Settings{}.paper);
}

TEST_CASE("numbers of a kept look are taken at both ends of their ranges, and not beyond") {
    const auto can_be_read = [](const std::string& options) {
        return service::printed_with({.what = "labels",
                                      .stock = "",
                                      .layout = "",
                                      .settings = options + "\n# settings\n",
                                      .look = ""})
            .ok();
    };
    for (const std::string taken : {"dpi = 72.0", "dpi = 4800.0", "copies = 1", "copies = 99",
                                    "spoiled = [1.0, 1000.0]", "first_cell = 1"}) {
        CAPTURE(taken);
        CHECK(can_be_read(taken));
    }
    for (const std::string refused : {"dpi = 71.9", "dpi = 4800.1", "copies = 0", "copies = 100",
                                      "spoiled = [0.0]", "spoiled = [1001.0]", "first_cell = 0"}) {
        CAPTURE(refused);
        CHECK_FALSE(can_be_read(refused));
    }
}

TEST_CASE("what the archive calls a print leads back to it") {
    using service::What;
    for (const auto what : {What::Labels, What::Cards, What::FinishingCards, What::CookDayCards}) {
        CHECK(service::what_kept_as(kept_as(what)) == what);
    }
    for (const auto what : {What::Lists, What::DaySheets, What::DoorList}) {
        CHECK(kept_as(what).empty());
    }
    CHECK(service::what_kept_as("") == What::Cards);
    CHECK(service::what_kept_as("posters") == What::Cards); // of a later Thawslip
}
