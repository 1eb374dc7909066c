// What must hold whatever happens while the archive is written: it holds what it held before, or
// what it holds after, and what was acknowledged is there.

#include "archive/tables/database.h"
#include "samples.h"
#include "support/as_nobody.h"
#include "support/command.h"
#include "support/skip.h"

#include <cstdlib>
#include <doctest/doctest.h>
#include <fmt/format.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

std::string shell(const std::string& path, const std::string& sql) {
    return run("sqlite3 " + shell_word(path) + " " + shell_word(sql)).out;
}

/// SQLite's own shell finds nothing wrong (SQLite, "PRAGMA Statements", integrity_check and
/// foreign_key_check).
void check_sound(const std::string& path) {
    CHECK(shell(path, "PRAGMA integrity_check; PRAGMA foreign_key_check;") == "ok\n");
}

PackageRecord numbered_stew(int number) {
    return package(fmt::format("Squash stew of pot {}", number), 3);
}

PrintRecord numbered_print(int number) {
    return print({day({numbered_stew(number)}, fmt::format("/orchard/{}.toml", number))});
}

/// Runs `work` in a process of its own; what it returns is the exit status, 99 for an exception.
template <class Work>
pid_t start(Work work) {
    const pid_t child = ::fork();
    if (child == 0) {
        int status = 99;
        try {
            status = work();
        } catch (const std::exception& failure) {
            std::fprintf(stderr, "%s\n", failure.what());
        }
        ::_exit(status);
    }
    return child;
}

int wait_for(pid_t child) {
    int state = 0;
    ::waitpid(child, &state, 0);
    return WIFEXITED(state) ? WEXITSTATUS(state) : 128 + WTERMSIG(state);
}

/// Records print after print and writes a byte to `acknowledge` after each, until killed.
int record_for_ever(const std::string& path, int acknowledge) {
    auto archive = Archive::open(path, Mode::Write);
    if (!archive) {
        return 1;
    }
    auto open = std::move(archive).value();
    for (int number = static_cast<int>(open.contents().days.size());; ++number) {
        open.record(numbered_print(number));
        if (::write(acknowledge, "x", 1) != 1) {
            return 2;
        }
    }
}

/// From when a kill's time counts: on a machine that has much to do, nothing may be recorded soon.
enum class Since { Start, FirstPrint };

/// \returns how many prints were acknowledged before the kill
std::size_t record_and_kill(const std::string& path, Since since, useconds_t after) {
    int ends[2] = {};
    REQUIRE(::pipe(ends) == 0);
    const auto child = start([&] { return record_for_ever(path, ends[1]); });
    ::close(ends[1]);
    char byte = 0;
    std::size_t acknowledged = 0;
    if (since == Since::FirstPrint && ::read(ends[0], &byte, 1) == 1) {
        ++acknowledged;
    }
    ::usleep(after);
    ::kill(child, SIGKILL);
    CHECK(wait_for(child) == 128 + SIGKILL);
    while (::read(ends[0], &byte, 1) == 1) {
        ++acknowledged;
    }
    ::close(ends[0]);
    return acknowledged;
}

int kills_asked_for() {
    const char* asked = std::getenv("THAWSLIP_KILLS");
    return asked != nullptr ? std::max(1, std::atoi(asked)) : 60;
}

} // namespace

TEST_CASE("killed at any moment, the archive is sound and has all that was acknowledged") {
    const ScratchFolder folder;
    const auto path = folder / "archive.db";
    std::size_t at_least = 0;
    std::uint32_t random = 1;
    const int kills = kills_asked_for();
    for (int kill = 0; kill < kills; ++kill) {
        random = random * 1664525U + 1013904223U; // from memory: Numerical Recipes' generator
        const auto since = kill % 2 == 0 ? Since::Start : Since::FirstPrint;
        at_least += record_and_kill(path, since, (random >> 16U) % 20'000U);
        auto opened_again = Archive::open(path, Mode::Write);
        REQUIRE(opened_again.ok());
        auto archive = std::move(opened_again).value();
        const auto contents = archive.contents();
        REQUIRE(contents.days.size() >= at_least);
        REQUIRE(contents.days.size() <= at_least + 1); // done, and killed before it could say so
        at_least = contents.days.size();
        REQUIRE(contents.bags.size() == 3 * contents.days.size());
        REQUIRE(contents.prints.size() == contents.days.size());
        REQUIRE(archive.check().empty());
    }
    CHECK(at_least > 0);
    check_sound(path);
}

TEST_CASE("two and eight programs print at once, and nothing is lost") {
    for (const int programs : {2, 8}) {
        CAPTURE(programs);
        const ScratchFolder folder;
        const auto path = folder / "archive.db";
        constexpr int prints = 5;
        std::vector<pid_t> children;
        for (int program = 0; program < programs; ++program) {
            children.push_back(start([&path, program] {
                auto archive = Archive::open(path, Mode::Write, std::chrono::seconds{60});
                if (!archive) {
                    std::fprintf(stderr, "%s\n", archive.fault().message.c_str());
                    return 1;
                }
                auto open = std::move(archive).value();
                for (int i = 0; i < prints; ++i) {
                    open.record(numbered_print(program * prints + i));
                }
                return 0;
            }));
        }
        for (const auto child : children) {
            CHECK(wait_for(child) == 0);
        }
        const auto contents = opened(path).contents();
        CHECK(contents.days.size() == static_cast<std::size_t>(programs * prints));
        CHECK(contents.bags.size() == 3 * contents.days.size());
        check_sound(path);
    }
}

TEST_CASE("where another program holds the archive, the wait ends and the words say so") {
    const ScratchFolder folder;
    const auto path = folder / "archive.db";
    opened(path).record(numbered_print(1));
    auto waiting = Archive::open(path, Mode::Write, std::chrono::milliseconds{50});
    REQUIRE(waiting.ok());
    auto archive = std::move(waiting).value();
    int ends[2] = {};
    REQUIRE(::pipe(ends) == 0);
    std::FILE* holder = ::popen(("sqlite3 " + shell_word(path)).c_str(), "w");
    REQUIRE(holder != nullptr);
    std::fprintf(holder, "BEGIN IMMEDIATE;\n.shell touch %s\n", (folder / "held").c_str());
    std::fflush(holder);
    while (!std::filesystem::exists(folder / "held")) {
        ::usleep(2000);
    }
    try {
        archive.record(numbered_print(2));
        FAIL("recorded although the archive was held");
    } catch (const ArchiveFailure& failure) {
        CHECK(failure.fault().kind == ArchiveFault::Kind::Busy);
        CHECK(failure.fault().message.find("another program") != std::string::npos);
    }
    CHECK(archive.bags(Which::All).size() == 3); // reading goes on
    ::pclose(holder);
    archive.record(numbered_print(2));
    CHECK(archive.bags(Which::All).size() == 6);
    check_sound(path);
}

TEST_CASE("each answer of SQLite is told for what it is, and what helps then") {
    // SQLite, "Result and Error Codes" (sqlite.org/rescode.html): codes and extended codes, of
    // which the last eight bits are the primary one.
    using Kind = ArchiveFault::Kind;
    const struct {
        int code;
        Kind kind;
        const char* said;
    } rows[] = {
        {5, Kind::Busy, "another program is writing the archive archive.db; nothing was changed"},
        {5 | 2 << 8, Kind::Busy, "another program is writing the archive archive.db;"},
        {6, Kind::Busy, "another program is writing the archive archive.db;"},
        {15, Kind::Busy, "another program is writing the archive archive.db;"},
        {8, Kind::ReadOnly, "the archive archive.db may not be written: why"},
        {8 | 3 << 8, Kind::ReadOnly, "the archive archive.db may not be written: why"},
        {14, Kind::CannotOpen, "cannot open the archive archive.db: why"},
        {3, Kind::CannotOpen, "cannot open the archive archive.db: why"},
        {23, Kind::CannotOpen, "cannot open the archive archive.db: why"},
        {11, Kind::Damaged, "the archive archive.db is damaged (why); put a backup in its place"},
        {11 | 3 << 8, Kind::Damaged, "the archive archive.db is damaged (why);"},
        {26, Kind::NotOurs, "archive.db is no archive of thawslip"},
        {13, Kind::DiskFull, "no room left on the disk of the archive archive.db;"},
        {4874, Kind::DiskFull, "no room left on the disk of the archive archive.db;"}, // SHMSIZE
        {10, Kind::DiskFailed, "the disk of the archive archive.db could not be read or written"},
        {1034, Kind::DiskFailed, "the disk of the archive archive.db could not be"}, // FSYNC
        {9, Kind::Damaged, "the archive archive.db asks for more work than its size explains"},
        {1, Kind::Failed, "the archive archive.db failed: why"},
        {19, Kind::Failed, "the archive archive.db failed: why"},
    };
    for (const auto& row : rows) {
        CAPTURE(row.code);
        const auto fault = fault_of(row.code, "archive.db", "why");
        CHECK(fault.kind == row.kind);
        CAPTURE(fault.message);
        CHECK(fault.message.starts_with(row.said));
    }
}

TEST_CASE("on a full disk nothing changes") {
    const ScratchFolder folder;
    const auto path = folder / "archive.db";
    opened(path).record(numbered_print(1));
    // A limit on the size of files stands for the disk: writing past it fails.
    const auto child = start([&path] {
        ::signal(SIGXFSZ, SIG_IGN);
        auto archive = opened(path);
        const rlimit limit{64 * 1024, 64 * 1024};
        ::setrlimit(RLIMIT_FSIZE, &limit);
        auto large = numbered_print(2);
        large.days[0].description.assign(400'000, 'x');
        try {
            archive.record(large);
        } catch (const ArchiveFailure&) {
            return 7;
        }
        return 0;
    });
    CHECK(wait_for(child) == 7);
    CHECK(opened(path).contents().days.size() == 1);
    check_sound(path);
}

TEST_CASE("a damaged archive is refused or told of, never taken for sound") {
    const ScratchFolder folder;
    const auto path = folder / "archive.db";
    {
        auto archive = opened(path);
        for (int i = 0; i < 30; ++i) {
            archive.record(numbered_print(i));
        }
    }
    auto bytes = read_file(path);
    REQUIRE(bytes.size() > 20'000);
    std::fill(bytes.begin() + 4096, bytes.begin() + 20'000, '\x55');
    write_file(path, bytes);
    bool noticed = false;
    auto result = Archive::open(path, Mode::Read);
    if (result) {
        auto archive = std::move(result).value();
        try {
            noticed = !archive.check().empty();
        } catch (const ArchiveFailure& failure) {
            noticed = failure.fault().kind == ArchiveFault::Kind::Damaged;
        }
    } else {
        noticed = result.fault().kind == ArchiveFault::Kind::Damaged;
    }
    CHECK(noticed);
    CHECK(read_file(path) == bytes);
}

TEST_CASE("a folder that cannot be made is told") {
    const ScratchFolder folder;
    write_file(folder / "file", "x");
    const auto refused = Archive::open(folder / "file/archive.db", Mode::Write);
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.fault().kind == ArchiveFault::Kind::CannotOpen);
}

TEST_CASE("in a folder that cannot be written, a readable archive is still read") {
    const ScratchFolder folder;
    const bool given =
        ::geteuid() != 0 || ::chown(folder.path().c_str(), AsNobody::id, AsNobody::id) == 0;
    const AsNobody nobody;
    if (!given || !nobody.worked() || ::access(folder.path().c_str(), W_OK) != 0) {
        return skip("root cannot become nobody here, and nothing is forbidden to root");
    }
    const auto path = folder / "archive.db";
    opened(path).record(numbered_print(1));
    std::filesystem::permissions(folder.path(), std::filesystem::perms::owner_read |
                                                    std::filesystem::perms::owner_exec);
    CHECK(opened(path, Mode::Read).bags(Which::All).size() == 3);
    CHECK_THROWS_AS(opened(path, Mode::Read).record(numbered_print(2)), ArchiveFailure);
}
