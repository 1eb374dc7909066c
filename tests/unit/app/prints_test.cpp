// What the desk prints: a PDF that is handed over, and the words of the command.

#include "app/desk/prints.h"
#include "support/command.h"
#include "support/variable.h"

#include <doctest/doctest.h>
#include <filesystem>

namespace prints_test {

using namespace thawslip;
using namespace thawslip::test_support;
using service::What;
namespace fs = std::filesystem;

namespace {

struct Desk {
    ScratchFolder folder;
    Variable shipped{"THAWSLIP_DATA", THAWSLIP_SOURCE_DIR};
    Variable clock{"SOURCE_DATE_EPOCH", "1792245906"}; // 2026-10-17
    app::Settings settings;
    std::string day = folder / "orchard.toml";

    Desk() {
        settings.archive = folder / "archive.db";
        settings.paper = "a4";
        write_file(day, "[day]\nmade = 2026-10-17\n[[package]]\ndish = \"Quince and barley stew\"\n"
                        "servings = 4\nbags = 2\nfood = \"soup or stew\"\ncontains = []\n"
                        "thaw.method = \"refrigerator\"\n"
                        "cook = {in = \"pot\", time = \"20 min\", until = \"74 °C\"}\n"
                        "[[package.finish]]\nadd = \"200 g spinach\"\nwhen = \"at the start\"\n"
                        "[[package.ingredient]]\nadd = \"6 onions\"\n");
    }
    desk::Delivered print(What what) const {
        desk::PrintWish wish;
        wish.what = what;
        return app::print_for_desk(wish, day, settings);
    }
};

} // namespace

TEST_CASE_FIXTURE(Desk, "each kind of print is a PDF of its own name") {
    for (const auto& [what, name] : {std::pair{What::Labels, "labels.pdf"},
                                     {What::Cards, "cards.pdf"},
                                     {What::FinishingCards, "finishing-cards.pdf"},
                                     {What::CookDayCards, "cook-day-cards.pdf"},
                                     {What::Shopping, "shopping-list.pdf"},
                                     {What::DoorList, "door-list.pdf"},
                                     {What::Lists, "day-sheets.pdf"},
                                     {What::DaySheets, "day-sheets.pdf"},
                                     {What::StationSheets, "day-sheets.pdf"}}) {
        CAPTURE(std::string{name});
        const auto delivered = print(what);
        CAPTURE(delivered.said);
        CHECK(delivered.done);
        CHECK(delivered.pdf.starts_with("%PDF-"));
        CHECK(delivered.said.find(std::string{name} + ":") != std::string::npos);
    }
}

TEST_CASE_FIXTURE(Desk, "a day with a fault is no print, and the words say why") {
    write_file(day, "[day]\nmade = 2026-10-17\n[[package]]\ndish = \"Stew\"\nservngs = 4\n");
    const auto delivered = print(What::Labels);
    CHECK_FALSE(delivered.done);
    CHECK(delivered.pdf == "");
    CHECK(delivered.said.find("servngs") != std::string::npos);
}

TEST_CASE_FIXTURE(Desk, "what was printed is printed again, and what is frozen is listed") {
    REQUIRE(print(What::Labels).done);
    desk::ReprintWish again;
    again.question.printed = "2026-10-17";
    const auto labels = app::reprint_for_desk(again, settings);
    CAPTURE(labels.said);
    CHECK(labels.done);
    CHECK(labels.pdf.starts_with("%PDF-"));
    CHECK(labels.said.find("labels.pdf:") != std::string::npos);
    service::Look look;
    look.part.bags = "7"; // of something else that was asked before: the list is of all
    const auto list = app::door_list_for_desk(look, {}, settings);
    CAPTURE(list.said);
    CHECK(list.done);
    CHECK(list.pdf.starts_with("%PDF-"));
    CHECK(list.said.find("door-list.pdf:") != std::string::npos);
}

TEST_CASE_FIXTURE(Desk,
                  "copies of the archive are named by their day, and a number behind the first") {
    REQUIRE(print(What::Labels).done);
    const auto copies = folder / "copies";
    for (const std::string name :
         {"archive-2026-10-17.db", "archive-2026-10-17-2.db", "archive-2026-10-17-3.db"}) {
        const auto copy = app::back_up_for_desk(copies, settings);
        CAPTURE(copy.said);
        CHECK(copy.done);
        CHECK(fs::is_regular_file(copies + "/" + name));
    }
    for (const std::string name : {"archive-2026-10-17", "archive-2026-10-17-2"}) {
        const auto exported = app::export_for_desk(copies, settings);
        CAPTURE(exported.said);
        CHECK(exported.done);
        CHECK(fs::is_regular_file(copies + "/" + name + "/archive.toml"));
    }
}

} // namespace prints_test
