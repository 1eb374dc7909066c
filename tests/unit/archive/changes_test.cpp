// Changes of an archive in a file are noticed, by whichever connection: SQLite, "PRAGMA
// Statements", data_version (sqlite.org/pragma.html).

#include "archive/changes.h"
#include "archive/restore.h"
#include "samples.h"

#include <filesystem>
#include <utility>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

const PackageRecord chestnut = package("Chestnut soup", 2);

/// Looks until it is noticed: now and then the file is let go for one look.
bool notices(FileChanges& changes) {
    return changes.look() || changes.look();
}

} // namespace

TEST_CASE("what others note and print is noticed once, and what they ask is not") {
    const Scratch scratch;
    auto other = opened(scratch.path);
    FileChanges changes{scratch.path};
    CHECK_FALSE(notices(changes)); // the first look only remembers
    other.record(print({day({chestnut})}));
    CHECK(notices(changes));
    CHECK_FALSE(notices(changes));
    other.set_state(std::vector{chestnut.bags[0]}, State::Out, "2026-11-01T18:00:00");
    CHECK(notices(changes));
    other.bags(Which::InFreezer);
    CHECK_FALSE(notices(changes));
    other.undo("2026-11-01T18:01:00");
    CHECK(notices(changes));
    other.record(print({day({chestnut})}, "2026-10-17T15:00:00")); // the same print again
    CHECK(notices(changes));
    other.put_link({"postgresql://store/cold", "2026-11-01T18:02:00", 0});
    CHECK_FALSE(notices(changes));
}

TEST_CASE(
    "an archive that nobody changes is never taken for changed, however often it is looked at") {
    const Scratch scratch;
    opened(scratch.path).record(print({day({chestnut})}));
    FileChanges changes{scratch.path};
    auto moved = std::move(changes);
    for (int looks = 0; looks < 100; ++looks) { // it is let go of in between
        CAPTURE(looks);
        CHECK_FALSE(moved.look());
    }
    opened(scratch.path).set_state(chestnut.bags, State::Out, "2026-11-01T18:00:00");
    CHECK(notices(moved));
}

TEST_CASE("an archive that is made is noticed, and one that was changed while nobody looked") {
    const Scratch scratch;
    FileChanges changes{scratch.path};
    CHECK_FALSE(notices(changes));
    CHECK_FALSE(std::filesystem::exists(scratch.path)); // to look makes no file
    opened(scratch.path).record(print({day({chestnut})}));
    CHECK(notices(changes));
    changes.let_go();
    opened(scratch.path).set_state(chestnut.bags, State::Out, "2026-11-01T18:00:00");
    CHECK(notices(changes));
}

TEST_CASE(
    "who needs the file for itself gets it while it is looked at, and what is put there is seen") {
    const Scratch scratch;
    const auto backup = scratch.folder / "backup.db";
    opened(scratch.path).record(print({day({chestnut})}));
    opened(scratch.path).back_up(backup);
    opened(scratch.path).set_state(chestnut.bags, State::Out, "2026-11-01T18:00:00");
    FileChanges changes{scratch.path};
    CHECK_FALSE(notices(changes));
    CHECK_THROWS_AS(restore(scratch.path, backup, std::chrono::milliseconds{0}), ArchiveFailure);
    bool is_restored = false;
    for (int looks = 0; looks < 100 && !is_restored; ++looks) {
        changes.look();
        try {
            restore(scratch.path, backup, std::chrono::milliseconds{0});
            is_restored = true;
        } catch (const ArchiveFailure&) {
            CAPTURE(looks); // held, as yet
        }
    }
    CHECK(is_restored);
    CHECK(notices(changes));
}
