// A server that does not answer: it stops no print, and nothing of what was printed is lost.

#include "kitchen.h"
#include "support/skip.h"

#include <doctest/doctest.h>

namespace away_test {

using namespace thawslip::test_support;

namespace {

/// A kitchen whose archive is said to be where nobody listens: port 1 (IANA, tcpmux) of this
/// machine.
struct Station {
    ScratchFolder folder;

    Outcome at(const std::string& seconds, const std::string& command) const {
        const auto here = shell_word(folder.path().string());
        return run("cd " + here + "; export TZ=UTC SOURCE_DATE_EPOCH=" + seconds + " HOME=" + here +
                   " XDG_DATA_HOME=" + here +
                   " XDG_CONFIG_HOME=/nonexistent; " THAWSLIP_PROGRAM
                   " --archive \"postgresql://nobody@127.0.0.1:1/cold?kitchen=Orchard\" " +
                   command);
    }
};

const std::string labels = "labels " THAWSLIP_SOURCE_DIR "/samples/orchard-day.toml -o out.pdf";

} // namespace

TEST_CASE_FIXTURE(Station, "a server that is away is said so, and not waited for a moment later") {
    const auto first = at("1792245900", labels);
    if (says(first.err, "libpq") || says(first.err, "built without PostgreSQL")) {
        skip("no server can be spoken to here: " + first.err);
        return;
    }
    CAPTURE(first.err);
    CHECK(first.status == 0);
    CHECK(says(first.err, "cannot be reached"));
    CHECK(says(first.err, "nothing is known here of what others printed or noted; what is printed "
                          "and noted now is kept here and sent later\n"));
    const auto again = at("1792245901", labels);
    CHECK(again.status == 0);
    CHECK(says(again.err, " was away a moment ago; "));
    CHECK_FALSE(says(again.err, "cannot be reached"));
    const auto later = at("1792249500", "freezer list"); // an hour
    CHECK(says(later.err, "cannot be reached"));
    CHECK(says(later.out, "in all: 14 bags, "));
    const auto sent = at("1792249501", "archive send"); // whoever asks for it has it tried
    CHECK(sent.status == 3);
    CHECK(says(sent.err, "cannot be reached"));
    CHECK(says(sent.err, "; nothing is lost: it is kept here\n"));
}

} // namespace away_test
