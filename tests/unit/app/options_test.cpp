// What each option of a printing command comes to, by what the archive keeps of the print.

#include "app/archive_place.h"
#include "app/command_line/command_line.h"
#include "support/command.h"
#include "support/variable.h"

#include <doctest/doctest.h>
#include <filesystem>
#include <sstream>

namespace options_test {

using namespace thawslip;
using namespace thawslip::test_support;
using app::ExitStatus;

namespace {

struct Kitchen {
    ScratchFolder folder;
    Variable shipped{"THAWSLIP_DATA", THAWSLIP_SOURCE_DIR};
    Variable clock{"SOURCE_DATE_EPOCH", "1792245906"}; // 2026-10-17
    Variable home{"HOME", folder.path().string()};
    Variable config{"XDG_CONFIG_HOME", std::nullopt};
    Variable data{"XDG_DATA_HOME", std::nullopt};
    Variable locale{"LC_ALL", "C"};
    app::Settings settings;
    std::ostringstream out = {};
    std::ostringstream err = {};

    Kitchen() {
        settings.archive = folder / "archive.db";
        write_file(folder / "day.toml",
                   "[day]\nmade = 2026-10-17\n[[package]]\ndish = \"Plum compote\"\nservings = 2\n"
                   "bags = 3\ncontains = []\nfood = \"fruit\"\nuse_by = 2027-03-17\nthaw.method = "
                   "\"refrigerator\"\n");
    }
    ExitStatus run(const std::vector<std::string>& words) {
        std::vector<const char*> arguments{"thawslip"};
        for (const auto& word : words) {
            arguments.push_back(word.c_str());
        }
        out.str("");
        err.str("");
        return app::run(static_cast<int>(arguments.size()), arguments.data(), {out, err});
    }
    /// `thawslip labels day.toml -o labels.pdf` with more words.
    ExitStatus labels(const std::vector<std::string>& more) {
        std::vector<std::string> words{"--archive", settings.archive,
                                       "labels",    folder / "day.toml",
                                       "-o",        folder / "labels.pdf"};
        words.insert(words.end(), more.begin(), more.end());
        return run(words);
    }
    /// What the archive keeps of the last of so many prints; nothing: there are none.
    std::optional<archive::PrintSetup> kept() {
        auto archive = app::existing_archive(settings, archive::Mode::Read);
        const auto prints = archive ? archive->prints_on(std::chrono::year{2026} / 10 / 17)
                                    : std::vector<archive::StoredPrint>{};
        return prints.empty() ? std::nullopt : std::optional{prints.back().setup};
    }
};

bool says(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

} // namespace

TEST_CASE_FIXTURE(Kitchen, "without options a print is as usual") {
    REQUIRE(labels({}) == ExitStatus::Done);
    const auto setup = kept();
    REQUIRE(setup);
    CHECK(setup->what == "labels");
    CHECK(setup->stock == "letter-2x5-4x2in");
    CHECK(setup->layout == "");
    for (const std::string usual :
         {"paper = \"letter\"\n", "storage_list = \"us\"\n", "language = \"en\"\n",
          "units = \"both\"\n", "first_cell = 1\n", "spoiled = []\n", "dpi = 300\n",
          "small_modules = false\n", "large_print = false\n", "bags = []\n", "copies = 1\n"}) {
        CAPTURE(usual);
        CAPTURE(setup->settings);
        CHECK(says(setup->settings, usual));
    }
}

TEST_CASE_FIXTURE(Kitchen, "each option is kept with the print that it made") {
    struct Case {
        std::vector<std::string> words;
        std::string kept;
    };
    for (const auto& [words, kept_as] :
         {Case{{"--paper", "a4"}, "paper = \"a4\"\n"},
          Case{{"--storage-list", "uk"}, "storage_list = \"uk\"\n"},
          Case{{"--language", "de"}, "language = \"de\"\n"},
          Case{{"--units", "us"}, "units = \"us\"\n"},
          Case{{"--first-cell", "3"}, "first_cell = 3\n"},
          Case{{"--skip", "2,4-5"}, "spoiled = [2.0, 4.0, 5.0]\n"},
          Case{{"--dpi", "203.2"}, "dpi = 203.2\n"},
          Case{{"--small-modules"}, "small_modules = true\n"},
          Case{{"--large-print", "--stock", "letter-2x2-4x5in"}, "large_print = true\n"},
          Case{{"--copies", "2"}, "copies = 2\n"}}) {
        CAPTURE(words.front());
        Kitchen kitchen;
        const auto status = kitchen.labels(words);
        CAPTURE(kitchen.err.str());
        REQUIRE(status == ExitStatus::Done);
        CAPTURE(kitchen.kept()->settings);
        CHECK(says(kitchen.kept()->settings, kept_as));
    }
    REQUIRE(labels({"--stock", "a4-2x4-99x68mm", "--layout", "wide"}) == ExitStatus::Done);
    CHECK(kept()->stock == "a4-2x4-99x68mm");
    CHECK(kept()->layout == "wide");
}

TEST_CASE_FIXTURE(Kitchen, "a part is printed as it is named, by dish, number and from a bag on") {
    const auto printed = [this](const std::vector<std::string>& words) {
        REQUIRE(labels(words) == ExitStatus::Done);
        return out.str().substr(out.str().find(": ") + 2, 8);
    };
    CHECK(printed({"--bag", "1", "3"}) == "2 labels");
    CHECK(printed({"--from", "3"}) == "1 label ");
    CHECK(printed({"--only-new"}) == "1 label "); // the second
    CHECK(printed({"--dish", "plum"}) == "3 labels");
    CHECK(labels({"--dish", "medlar"}) == ExitStatus::Refused);
    CHECK(labels({"--bag", ","}) == ExitStatus::Usage);
}

TEST_CASE_FIXTURE(Kitchen, "a trial, and what is to be in no archive, is remembered nowhere") {
    CHECK(labels({"--trial"}) == ExitStatus::Done);
    CHECK(says(out.str(), " (a trial: nothing was recorded); print at 100 %"));
    CHECK(labels({"--no-archive"}) == ExitStatus::Done);
    CHECK_FALSE(says(out.str(), "a trial"));
    CHECK_FALSE(kept());
    CHECK_FALSE(std::filesystem::exists(settings.archive));
}

TEST_CASE_FIXTURE(Kitchen, "each command that prints prints its own, and the others answer") {
    const auto answer = [this](const std::string& command, std::vector<std::string> more = {}) {
        std::vector<std::string> words{"--archive", settings.archive, command, folder / "day.toml"};
        words.insert(words.end(), more.begin(), more.end());
        const auto status = run(words);
        CAPTURE(err.str());
        CHECK(status == ExitStatus::Done);
        return out.str();
    };
    REQUIRE(labels({}) == ExitStatus::Done);
    CHECK(says(answer("cards", {"-o", folder / "c.pdf"}), "c.pdf: 1 card on 1 sheet of "));
    CHECK(kept()->what == "cards");
    CHECK(says(answer("lists", {"-o", folder / "l.pdf"}), "l.pdf: 2 lists on 2 sheets of "));
    CHECK(
        says(answer("lists", {"--door", "-o", folder / "d.pdf"}), "d.pdf: 1 list on 1 sheet of "));
    CHECK(says(answer("lists", {"--day", "-o", folder / "e.pdf"}), "e.pdf: 1 list on 1 sheet of "));
    CHECK(says(answer("check"), "Plum compote: 3 bags, made 17 Oct 2026, Use by 17 Mar 2027\n"));
    CHECK(answer("check", {"--json"}).starts_with("{"));
    CHECK(says(answer("check", {"--why"}), "    date: set by hand in use_by\n"));
    CHECK_FALSE(says(answer("check", {"--why"}), "x-heights"));
    CHECK(says(answer("check", {"--why=all"}), "    x-heights: "));
    CHECK(says(answer("text"), "PLUM COMPOTE\nSERVES 2"));
    CHECK(run({"--version"}) == ExitStatus::Done);
    CHECK(says(out.str(), THAWSLIP_VERSION));
    CHECK(run({"lables"}) == ExitStatus::Usage);
    CHECK(says(err.str(), "labels"));
}

TEST_CASE_FIXTURE(Kitchen, "settings that are wrong stop a command, but none that needs none") {
    write_file(folder / "settings.toml", "papr = \"a4\"\n");
    CHECK(run({"--settings", folder / "settings.toml", "foods", "quince"}) == ExitStatus::Refused);
    CHECK(says(err.str(), "settings.toml:1:1: error: "));
    CHECK(run({"--settings", folder / "settings.toml", "setup", "--yes"}) == ExitStatus::Refused);
    CHECK(says(err.str(), "already exists; nothing written"));
    CHECK(run({"--settings", folder / "none.toml", "foods", "quince"}) != ExitStatus::Done);
}

} // namespace options_test
