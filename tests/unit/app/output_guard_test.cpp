// What no command writes onto, and why.

#include "app/files/output_guard.h"
#include "support/command.h"
#include "support/variable.h"

#include <doctest/doctest.h>
#include <filesystem>
#include <sstream>

namespace output_guard_test {

using namespace thawslip;
using namespace thawslip::test_support;
using app::ExitStatus;
using app::Output;
using app::Overwrite;

namespace {

struct Kitchen {
    ScratchFolder folder;
    Variable config{"XDG_CONFIG_HOME", folder / "config"};
    Variable data{"XDG_DATA_HOME", folder / "data"};
    app::Settings settings;
    std::ostringstream said = {};

    Kitchen() {
        settings.file = folder / "mine.toml";
        settings.archive = folder / "barn.db";
        settings.goods_file = folder / "goods.toml";
        settings.labels.stock = folder / "labels.toml";
        settings.finishing_cards.stock = folder / "finishing.toml";
        settings.cook_day_cards.stock = folder / "cook-day.toml";
        settings.lists.stock = folder / "lists.toml";
    }

    std::string why(const std::string& name, const Output& output = {}) const {
        return why_kept(name.front() == '/' ? name : folder / name, output, settings);
    }
    std::optional<ExitStatus> refuse(const Output& output) {
        return refuse_output(output, settings, {said, said});
    }
    std::optional<ExitStatus> refuse_sheets(int sheets, Overwrite overwrite,
                                            const std::string& name = "s.svg") {
        said.str("");
        return app::refuse_sheets({folder / name, app::drawing_endings}, sheets, overwrite,
                                  settings, {said, said});
    }
};

const std::string own_sheet = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"x\" "
                              "role=\"img\">\n<title>Bag labels</title>";

} // namespace

TEST_CASE_FIXTURE(Kitchen, "what the kitchen needs is kept, though it is not there yet") {
    CHECK(why("mine.toml") == "the settings' file");
    CHECK(why("config/thawslip/settings.toml") == "the settings' file");
    for (const std::string named :
         {"goods.toml", "labels.toml", "finishing.toml", "cook-day.toml", "lists.toml"}) {
        CAPTURE(named);
        CHECK(why(named) == "a file that the settings name");
    }
    for (const std::string archive : {"barn.db", "data/thawslip/archive.db"}) {
        for (const std::string beside : {"", "-wal", "-shm", "-journal"}) {
            CAPTURE(archive + beside);
            CHECK(why(archive + beside) == "the archive's file, in which prints are recorded");
        }
    }
    CHECK(why("barn.db-other") == "");
    CHECK(why("day.pdf") == "");
    CHECK(why("day.pdf", {"", {}, {folder / "day.toml", folder / "day.pdf"}}) ==
          "a file that this is made from");
}

TEST_CASE_FIXTURE(Kitchen,
                  "what is a database, or a calendar of others, is kept wherever it lies") {
    write_file(folder / "copy", "SQLite format 3 and more"); // "Database File Format", 1.3
    CHECK(why("copy") == "a database, an archive it may be");
    write_file(folder / "old", "SQLite format 2 and more");
    CHECK(why("old") == "");
    write_file(folder / "theirs.ics", "BEGIN:VCALENDAR\r\nPRODID:-//Barn//EN\r\n");
    CHECK(why("theirs.ics") == "a calendar that thawslip did not write");
    write_file(folder / "ours.ics", "BEGIN:VCALENDAR\r\nPRODID:-//Thawslip//EN\r\n");
    CHECK(why("ours.ics") == "");
    write_file(folder / "plan.ics", "PRODID:-//Barn//EN\r\n");
    CHECK(why("plan.ics") == "");
}

TEST_CASE_FIXTURE(Kitchen, "what comes with the program is kept, where it is known what that is") {
    const std::string source = THAWSLIP_SOURCE_DIR;
    {
        const Variable shipped{"THAWSLIP_DATA", source};
        CHECK(why(source + "/layouts/stock/a4-full.toml") == "a file that comes with thawslip");
        CHECK(why(source + "/fonts/new.ttf") == "a file that comes with thawslip");
        CHECK(why(source + "/out.pdf") == "");
    }
    const Variable wrong{"THAWSLIP_DATA", folder.path().string()};
    CHECK(why(source + "/layouts/stock/a4-full.toml") == "");
}

TEST_CASE_FIXTURE(Kitchen, "an output is refused for what it is, or for its ending") {
    CHECK_FALSE(refuse({folder / "day.pdf", app::print_endings}));
    CHECK_FALSE(refuse({folder / "day.txt", app::print_endings}));
    CHECK_FALSE(refuse({"", app::print_endings}));  // none
    CHECK_FALSE(refuse({"-", app::print_endings})); // standard output
    CHECK_FALSE(refuse({folder / "any", {}}));
    CHECK(said.str() == "");
    CHECK(refuse({folder / "day.doc", app::drawing_endings}) == ExitStatus::Usage);
    CHECK(said.str() == "error: " + (folder / "day.doc") + " must end in \".pdf\" or \".svg\"\n");
    said.str("");
    CHECK(refuse({folder / "barn.db", {".db"}}) == ExitStatus::Refused);
    CHECK(said.str() == "error: " + (folder / "barn.db") +
                            " is the archive's file, in which prints are recorded; nothing "
                            "written\n    hint: name another file\n");
}

TEST_CASE_FIXTURE(Kitchen, "further sheets have numbers from 2, beside the first") {
    CHECK(app::sheet_file("out/s.svg", 0) == "out/s.svg");
    CHECK(app::sheet_file("out/s.svg", 1) == "out/s-2.svg");
    CHECK(app::sheet_file("s.a.svg", 9) == "s.a-10.svg");
}

TEST_CASE_FIXTURE(Kitchen,
                  "a further sheet takes no place of another's file, unless that is said") {
    write_file(folder / "s-3.svg", "a drawing of the barn");
    CHECK_FALSE(refuse_sheets(2, Overwrite::No));
    CHECK(refuse_sheets(3, Overwrite::No) == ExitStatus::Refused);
    CHECK(said.str().starts_with("error: sheet 3 would go to " + (folder / "s-3.svg") +
                                 ", which is another's file; nothing written\n"));
    CHECK_FALSE(refuse_sheets(3, Overwrite::Yes));
    CHECK_FALSE(refuse_sheets(3, Overwrite::No, "s.pdf")); // all sheets are in one file
    write_file(folder / "s-3.svg", own_sheet);
    CHECK_FALSE(refuse_sheets(3, Overwrite::No)); // an earlier print
    CHECK(said.str() == "");
    settings.goods_file = folder / "s-2.svg";
    CHECK(refuse_sheets(2, Overwrite::Yes) == ExitStatus::Refused);
    CHECK_FALSE(refuse_sheets(1, Overwrite::No));
}

TEST_CASE_FIXTURE(Kitchen,
                  "sheets of an earlier, larger print are named, as far as there are any") {
    for (const std::string name : {"s-2.svg", "s-3.svg", "s-4.svg", "s-6.svg"}) {
        write_file(folder / name, own_sheet);
    }
    CHECK_FALSE(refuse_sheets(2, Overwrite::No));
    CHECK(said.str().find("s-2.svg") == std::string::npos);
    CHECK(said.str().find("caution: " + (folder / "s-3.svg") + " is of an earlier print") == 0);
    CHECK(said.str().find("s-4.svg") != std::string::npos);
    CHECK(said.str().find("s-6.svg") == std::string::npos);
    CHECK_FALSE(refuse_sheets(4, Overwrite::No));
    CHECK(said.str() == "");
}

TEST_CASE_FIXTURE(Kitchen, "a print is made from its days, its stock and its layout") {
    app::PrintOptions options;
    options.days = {"a.toml", "b.toml"};
    options.output = "out.pdf";
    options.look.stock = "s.toml";
    options.look.layout = "l.toml";
    const auto output = app::output_of(options);
    CHECK(output.file == "out.pdf");
    CHECK(output.endings == app::print_endings);
    CHECK(output.made_from == std::vector<std::string>{"a.toml", "b.toml", "s.toml", "l.toml"});
}

} // namespace output_guard_test
