// What is typed and not saved yet outlasts the page, each day for itself.

#include "app/desk/draft_folder.h"
#include "base/system_failure.h"
#include "support/command.h"

#include <doctest/doctest.h>
#include <filesystem>

using namespace thawslip;
using namespace thawslip::test_support;
namespace fs = std::filesystem;

namespace {

/// A draft of one day, and its file.
struct Draft {
    ScratchFolder scratch;
    desk::Drafts drafts = app::draft_folder(scratch / "drafts", "/orchard");
    fs::path file;

    Draft() {
        drafts.write("october.toml", "[day]\n");
        const auto files = files_in(scratch / "drafts");
        REQUIRE(files.size() == 1);
        file = files.front();
    }
};

} // namespace

TEST_CASE("a draft comes back byte by byte, for its day alone, until an empty one takes it away") {
    const ScratchFolder scratch;
    const auto drafts = app::draft_folder(scratch / "drafts", "/orchard");
    CHECK_FALSE(drafts.read("october.toml").has_value());
    const std::string text = "# a cook's own line\n[day]\r\nmade = 2026-10-";
    drafts.write("october.toml", text);
    CHECK(drafts.read("october.toml") == text);
    CHECK_FALSE(drafts.read("november.toml").has_value());
    CHECK_FALSE(app::draft_folder(scratch / "drafts", "/other").read("october.toml").has_value());
    CHECK(app::draft_folder(scratch / "drafts", "/orchard").read("october.toml") == text);
    drafts.write("october.toml", "");
    CHECK_FALSE(drafts.read("october.toml").has_value());
    CHECK_NOTHROW(drafts.write("october.toml", ""));
}

TEST_CASE("a file that is of another day, though it has this one's name, is no draft") {
    const Draft draft;
    write_file(draft.file, "# 20 /orchard/winter.toml\n[day]\n");
    CHECK_FALSE(draft.drafts.read("october.toml").has_value());
}

TEST_CASE("a draft that cannot be taken away is told") {
    const Draft draft;
    fs::remove(draft.file);
    fs::create_directory(draft.file);
    CHECK_THROWS_AS(draft.drafts.write("october.toml", ""), SystemFailure);
}
