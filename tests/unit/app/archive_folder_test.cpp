// An archive as a folder of text, and back.

#include "app/archive_folder.h"
#include "app/exit_status.h"
#include "service/archive/archive_days.h"
#include "service/archive/exchange.h"
#include "service/record/day_record.h"
#include "support/command.h"

#include <doctest/doctest.h>
#include <filesystem>
#include <mutex>

namespace archive_folder_test {

using namespace thawslip;
using namespace thawslip::test_support;
namespace fs = std::filesystem;

namespace {

struct Kept {
    ScratchFolder scratch;
    archive::Archive archive =
        std::move(archive::Archive::open(scratch / "archive.db", archive::Mode::Write)).value();
    std::string folder = scratch / "export";

    Kept() {
        for (const std::string made : {"2026-10-17", "2026-10-18"}) {
            const auto days = service::plan_days(
                std::vector<service::DayText>{{"day.toml",
                                               "[day]\nmade = " + made +
                                                   "\n[[package]]\ndish = \"Barley stew\"\n"
                                                   "servings = 4\nuse_by = 2026-12-17\n",
                                               {},
                                               "/" + made + ".toml"}},
                {});
            REQUIRE(days.plans.size() == 1);
            archive.record({made + "T14:05:00",
                            {"labels", "roll", "", "", ""},
                            {service::record_of(days, 0)}});
        }
    }
    archive::Contents contents() { return *service::contents_to_export(archive).value; }
};

} // namespace

TEST_CASE_FIXTURE(Kept, "what is written is read back, and each file is counted on the way") {
    std::vector<std::size_t> counted;
    std::size_t all = 0;
    app::write_archive_folder(contents(), folder, [&](std::size_t done, std::size_t of) {
        counted.push_back(done);
        all = of;
    });
    REQUIRE(all == 7); // two of each day, one of each print, and the archive's own
    CHECK(counted == std::vector<std::size_t>{1, 2, 3, 4, 5, 6, 7});
    for (const std::string file :
         {"archive.toml", "days/0001-01/as-written.toml", "days/0002-01/record.toml",
          "prints/0001/print.toml", "prints/0002/print.toml"}) {
        CAPTURE(file);
        CHECK(fs::is_regular_file(folder + "/" + file));
    }
    const auto back = app::read_archive_folder(folder);
    REQUIRE_MESSAGE(back, to_text(back.messages));
    CHECK(*back.value == contents());
    CHECK_THROWS_AS(app::write_archive_folder(contents(), folder, {}), SystemFailure);
}

TEST_CASE_FIXTURE(Kept, "nothing outside of the folder is read, by whatever link") {
    app::write_archive_folder(contents(), folder, {});
    fs::rename(folder + "/days", scratch / "days");
    fs::create_directory_symlink(scratch / "days", folder + "/days");
    const auto linked = app::read_archive_folder(folder);
    CHECK_FALSE(linked);
    CHECK(to_text(linked.messages)
              .find("days/0001-01/as-written.toml is a link, and nothing outside of the folder is "
                    "read") != std::string::npos);
    fs::remove(folder + "/days");
    fs::rename(scratch / "days", folder + "/days");
    fs::rename(folder + "/archive.toml", scratch / "archive.toml");
    fs::create_symlink(scratch / "archive.toml", folder + "/archive.toml");
    CHECK_FALSE(app::read_archive_folder(folder));
    fs::remove(folder + "/archive.toml");
    CHECK_FALSE(app::read_archive_folder(folder));
    fs::rename(scratch / "archive.toml", folder + "/archive.toml");
    CHECK(app::read_archive_folder(folder));
    // A folder may itself be led to.
    fs::create_directory_symlink(folder, scratch / "link");
    CHECK(app::read_archive_folder(scratch / "link"));
}

TEST_CASE_FIXTURE(Kept, "each day that is held against its description is counted") {
    std::mutex mutex; // days are read side by side
    std::set<std::size_t> counted;
    CHECK(service::held_against_days(archive, [&](std::size_t done, std::size_t of) {
              const std::lock_guard lock{mutex};
              CHECK(of == 2);
              counted.insert(done);
          }).empty());
    CHECK(counted == std::set<std::size_t>{1, 2});
}

} // namespace archive_folder_test
