// Programs that get in each other's way, at the very moment: one is held still before the step,
// and another does all of its work in between.

#include "archive/archive.h"
#include "kitchen.h"
#include "support/skip.h"
#include "traced.h"

#include <doctest/doctest.h>
#include <vector>

namespace race_test {

using namespace thawslip;
using namespace thawslip::test_support;
namespace fs = std::filesystem;

namespace {

std::string pot(const std::string& dish) {
    return "[day]\nmade = 2026-10-17\n[[package]]\ndish = \"" + dish +
           "\"\nservings = 2\nuse_by = 2026-12-01\n";
}

struct TwoPrograms : Kitchen {
    TwoPrograms() {
        write_file(folder / "one.toml", pot("Leek soup"));
        write_file(folder / "other.toml", pot("Plum roast"));
    }
    std::vector<std::string> one() const {
        return {"/usr/bin/env",
                "TZ=UTC",
                "SOURCE_DATE_EPOCH=" + now,
                "XDG_CONFIG_HOME=/nonexistent",
                THAWSLIP_PROGRAM,
                "--archive",
                archive,
                "labels",
                "one.toml",
                "-o",
                "one.pdf"};
    }
    /// Prints the one day, and the whole of the other just before the step at which `call` is about
    /// to touch a path with this end.
    std::optional<int> one_with_other_before(const std::string& call, const std::string& end) {
        return run_interrupted(
            one(), folder.path(),
            [&](const Step& step) { return step.call == call && step.path.ends_with(end); },
            [&] { CHECK((*this)("labels other.toml -o other.pdf").status == 0); });
    }
    void check_both_are_there() const {
        CHECK(fs::exists(folder / "one.pdf"));
        CHECK(fs::exists(folder / "other.pdf"));
        CHECK(sql("SELECT dish FROM package ORDER BY dish") == "Leek soup\nPlum roast\n");
        CHECK(sql("SELECT count(*) FROM print") == "2\n");
        CHECK(sql("SELECT count(*) FROM bag") == "2\n");
    }
};

} // namespace

TEST_CASE_FIXTURE(TwoPrograms,
                  "two first prints: both are kept, whoever makes the archive's file") {
    if (!can_trace()) {
        return skip("this system lets no program be traced");
    }
    // The second program makes the file when the first has seen that there is none.
    const auto status = one_with_other_before("create", "archive.db");
    REQUIRE(status.has_value());
    CHECK(*status == 0);
    check_both_are_there();
}

TEST_CASE_FIXTURE(TwoPrograms,
                  "a first print that comes between a sheet and its record takes nothing away") {
    if (!can_trace()) {
        return skip("this system lets no program be traced");
    }
    const auto status = one_with_other_before("sync", folder.path().filename().string());
    REQUIRE(status.has_value());
    CHECK(*status == 0);
    check_both_are_there();
}

} // namespace race_test
