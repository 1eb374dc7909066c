// The program killed at every step it takes on the disk (480 of them), and at any moment (150).
// After each kill the archive and the sheet are as they were, or as they were to become.

#include "archive/archive.h"
#include "kitchen.h"
#include "support/random.h"
#include "support/skip.h"
#include "traced.h"

#include <algorithm>
#include <chrono>
#include <csignal>
#include <doctest/doctest.h>
#include <fcntl.h>
#include <fmt/format.h>
#include <sys/wait.h>
#include <unistd.h>

using namespace thawslip;
using namespace thawslip::test_support;
namespace fs = std::filesystem;

namespace {

const std::string one_bag = "[day]\nmade = 2026-10-17\n[[package]]\ndish = \"Squash stew\"\n"
                            "servings = 2\nuse_by = 2026-12-01\n";
const std::string two_bags = one_bag + "bags = 2\n";

/// A folder in memory where there is one to write in: a killed program loses nothing that the disk
/// still has to write, so a disk would only make this slow.
struct Workbench {
    fs::path folder;
    std::string archive;
    std::string sheet;
    bool keeps_nameless = false; ///< whether its file system has files without a name

    Workbench() {
        std::string name = "/dev/shm/thawslip-test-XXXXXX";
        if (::mkdtemp(name.data()) == nullptr) {
            name = (fs::temp_directory_path() / "thawslip-test-XXXXXX").string();
            REQUIRE(::mkdtemp(name.data()) != nullptr);
        }
        folder = name;
        archive = folder / "data/archive.db";
        sheet = folder / "labels.pdf";
        const int nameless = ::open(name.c_str(), O_TMPFILE | O_WRONLY, 0600);
        keeps_nameless = nameless >= 0;
        ::close(nameless);
        write_file(folder / "day.toml", one_bag);
    }
    Workbench(const Workbench&) = delete;
    Workbench& operator=(const Workbench&) = delete;
    ~Workbench() { fs::remove_all(folder); }

    std::vector<std::string> command(const std::vector<std::string>& words) const {
        std::vector<std::string> all = {"/usr/bin/env",
                                        "TZ=UTC",
                                        "SOURCE_DATE_EPOCH=1792245900",
                                        "XDG_CONFIG_HOME=/nonexistent",
                                        THAWSLIP_PROGRAM,
                                        "--archive",
                                        archive};
        all.insert(all.end(), words.begin(), words.end());
        return all;
    }
    std::vector<std::string> print() const {
        return command({"labels", "day.toml", "-o", "labels.pdf"});
    }
    /// The files that lie about under a hidden name.
    std::vector<fs::path> hidden() const {
        std::vector<fs::path> found;
        for (const auto& entry : fs::directory_iterator{folder}) {
            if (entry.path().filename().string().starts_with(".")) {
                found.push_back(entry.path());
            }
        }
        return found;
    }
};

/// All that a print leaves behind.
struct State {
    std::string sheet;          ///< empty: none
    archive::Contents contents; ///< empty also where there is no archive yet
    friend bool operator==(const State&, const State&) = default;
};

State state_of(const Workbench& bench) {
    State state{fs::exists(bench.sheet) ? read_file(bench.sheet) : std::string{}, {}};
    auto archive = archive::Archive::open(bench.archive, archive::Mode::Read);
    if (archive) {
        state.contents = std::move(archive).value().contents();
    } else {
        REQUIRE(archive.fault().kind == archive::ArchiveFault::Kind::Missing);
    }
    return state;
}

/// SQLite's own shell finds nothing wrong (SQLite, "PRAGMA Statements", integrity_check and
/// foreign_key_check).
void require_sound(const Workbench& bench) {
    if (fs::exists(bench.archive)) {
        const auto shell = run("sqlite3 " + shell_word(bench.archive) +
                               " 'PRAGMA integrity_check; PRAGMA foreign_key_check;'");
        REQUIRE(shell.out == "ok\n");
        REQUIRE(shell.err.empty());
    }
}

/// One thing that is printed, from one state to the next.
class Scenario {
public:
    Scenario(Workbench& bench, const std::string& day) : bench_{bench} {
        write_file(bench.folder / "day.toml", day);
        before_ = state_of(bench);
        fs::create_directories(saved());
        put(bench.folder, saved());
        whole_run_ = run_traced(bench.print(), bench.folder);
        REQUIRE(whole_run_.status == 0);
        after_ = state_of(bench);
        REQUIRE(after_.contents.prints.size() > 0);
    }
    ~Scenario() {
        start_again();
        run_traced(bench_.print(), bench_.folder); // where the next one begins
        fs::remove_all(saved());
    }
    Scenario(const Scenario&) = delete;
    Scenario& operator=(const Scenario&) = delete;

    const std::vector<Step>& steps() const { return whole_run_.steps; }

    void start_again() const {
        fs::remove_all(bench_.folder / "data");
        fs::remove(bench_.sheet);
        for (const auto& file : bench_.hidden()) {
            fs::remove(file);
        }
        put(saved(), bench_.folder);
    }

    /// \returns whether the print is in the archive
    bool judge() const {
        require_sound(bench_);
        const auto now = state_of(bench_);
        REQUIRE((now.sheet == before_.sheet || now.sheet == after_.sheet));
        REQUIRE((now.contents == before_.contents || now.contents == after_.contents));
        const bool recorded = now.contents == after_.contents;
        if (recorded && before_.contents != after_.contents) {
            REQUIRE(now.sheet == after_.sheet); // on the disk before the archive says so
        }
        return recorded;
    }

    /// What was killed can be done once more, and then all is as if nothing had happened.
    void finish() const {
        REQUIRE(run_traced(bench_.print(), bench_.folder).status == 0);
        REQUIRE(state_of(bench_) == after_);
    }

private:
    fs::path saved() const { return bench_.folder / "saved"; }

    static void put(const fs::path& from, const fs::path& to) {
        for (const char* name : {"data", "labels.pdf"}) {
            if (fs::exists(from / name)) {
                fs::copy(from / name, to / name, fs::copy_options::recursive);
            }
        }
    }

    Workbench& bench_;
    State before_;
    State after_;
    TracedRun whole_run_;
};

/// Kills before every step. \returns how many
std::size_t kill_at_every_step(const Workbench& bench, const Scenario& scenario) {
    std::size_t kills = 0;
    bool was_recorded = false;
    for (std::size_t step = 0; step < scenario.steps().size(); ++step) {
        CAPTURE(scenario.steps()[step].call);
        CAPTURE(scenario.steps()[step].path);
        scenario.start_again();
        REQUIRE(run_traced(bench.print(), bench.folder, step).was_killed);
        const auto& [call, path] = scenario.steps()[step];
        const bool replacing = call == "rename" && path.ends_with("labels.pdf");
        if (bench.keeps_nameless) { // else the sheet has a hidden name from the start
            REQUIRE(bench.hidden().size() == (replacing ? 1 : 0));
        }
        const bool recorded = scenario.judge();
        REQUIRE((recorded || !was_recorded)); // once done, it is done
        was_recorded = recorded;
        if (step % 16 == 0) {
            scenario.finish();
        }
        ++kills;
    }
    return kills;
}

/// Runs a program and kills it after a while, wherever it is then.
void run_and_kill(const std::vector<std::string>& command, const fs::path& folder,
                  std::chrono::microseconds after) {
    const pid_t child = ::fork();
    if (child == 0) {
        become(command, folder);
    }
    ::usleep(static_cast<useconds_t>(after.count()));
    ::kill(child, SIGKILL);
    ::waitpid(child, nullptr, 0);
}

/// The step that puts the sheet into its place.
std::size_t placed(const std::vector<Step>& steps) {
    const auto found = std::ranges::find_if(steps, [](const Step& step) {
        return (step.call == "link" || step.call == "rename") && step.path.ends_with("labels.pdf");
    });
    REQUIRE(found != steps.end());
    return static_cast<std::size_t>(found - steps.begin());
}

std::size_t index_of(const std::vector<Step>& steps, const std::string& call,
                     const std::string& end_of_path) {
    const auto found = std::ranges::find_if(steps, [&](const Step& step) {
        return step.call == call && step.path.ends_with(end_of_path);
    });
    REQUIRE_MESSAGE(found != steps.end(), call, " of ", end_of_path);
    return static_cast<std::size_t>(found - steps.begin());
}

} // namespace

TEST_CASE("the sheet, and its name in its folder, are on the disk before the archive is touched") {
    if (!can_trace()) {
        return skip("this system lets no program be traced");
    }
    const Workbench bench;
    for (const std::string before : {"first", "second"}) {
        CAPTURE(before);
        write_file(bench.folder / "day.toml", before == "first" ? one_bag : two_bags);
        const auto run = run_traced(bench.print(), bench.folder);
        REQUIRE(run.status == 0);
        const auto in_place = placed(run.steps);
        auto before_it = in_place;
        do {
            REQUIRE(before_it-- > 0);
        } while (run.steps[before_it].call == "link"); // its hidden name, from which it is renamed
        CHECK(run.steps[before_it].call == "sync");
        CHECK(says(run.steps[before_it].path, bench.folder.string()));
        const auto folder_synced = index_of(run.steps, "sync", bench.folder.string());
        const auto archive_written = index_of(run.steps, "write", "archive.db-wal");
        CHECK(in_place < folder_synced);
        CHECK(folder_synced < archive_written);
        if (before == "first") {
            const auto created = index_of(run.steps, "create", "archive.db");
            CHECK(folder_synced < created);
            CHECK(created < index_of(run.steps, "sync", "/data"));
        }
        const bool committed = std::ranges::any_of(
            run.steps.begin() + static_cast<std::ptrdiff_t>(archive_written), run.steps.end(),
            [](const Step& step) {
                return step.call == "sync" && step.path.ends_with("archive.db-wal");
            });
        CHECK(committed); // FULL: the log is synced at every commit
    }
}

TEST_CASE("killed before every step of its first print, the program leaves one of two states") {
    if (!can_trace()) {
        return skip("this system lets no program be traced");
    }
    Workbench bench;
    const Scenario first{bench, one_bag};
    const auto kills = kill_at_every_step(bench, first);
    MESSAGE(kills, " kills");
    CHECK(kills > 100);
}

TEST_CASE("killed before every step of later prints, the program leaves one of two states") {
    if (!can_trace()) {
        return skip("this system lets no program be traced");
    }
    Workbench bench;
    REQUIRE(run_traced(bench.print(), bench.folder).status == 0);
    std::size_t kills = 0;
    {
        INFO("an edited description");
        const Scenario edited{bench, two_bags};
        kills += kill_at_every_step(bench, edited);
    }
    {
        INFO("another day");
        const Scenario other{bench, one_bag + "note = \"the second pot\"\n"};
        kills += kill_at_every_step(bench, other);
    }
    {
        INFO("the same again");
        const Scenario again{bench, one_bag + "note = \"the second pot\"\n"};
        kills += kill_at_every_step(bench, again);
    }
    MESSAGE(kills, " kills");
    CHECK(kills > 30);
}

TEST_CASE("a backup or an exported folder that was killed on the way is not there") {
    if (!can_trace()) {
        return skip("this system lets no program be traced");
    }
    const Workbench bench;
    REQUIRE(run_traced(bench.print(), bench.folder).status == 0);
    const auto contents = state_of(bench).contents;
    for (const std::string what : {"backup", "export"}) {
        CAPTURE(what);
        const std::string name = what == "backup" ? "copy.db" : "copy";
        const auto command = bench.command({"archive", what, name});
        const auto steps = run_traced(command, bench.folder).steps.size();
        REQUIRE(steps > 5);
        for (std::size_t step = 0; step < steps; step += 3) {
            CAPTURE(step);
            fs::remove_all(bench.folder / name);
            REQUIRE(run_traced(command, bench.folder, step).was_killed);
            if (fs::exists(bench.folder / name)) { // then it is whole
                fs::remove_all(bench.folder / "again.db");
                const std::string how = what == "backup" ? "merge" : "import";
                REQUIRE(
                    run_traced({THAWSLIP_PROGRAM, "--archive", "again.db", "archive", how, name},
                               bench.folder)
                        .status == 0);
                auto again = archive::Archive::open(bench.folder / "again.db", archive::Mode::Read);
                REQUIRE(again.ok());
                REQUIRE(std::move(again).value().contents() == contents);
            }
        }
    }
}

TEST_CASE("killed at any moment, the program leaves one of two states") {
    if (!can_trace()) {
        return skip("this system lets no program be traced");
    }
    Workbench bench;
    test_support::Random random{1};
    for (const std::string_view printed : {"for the first time", "once more"}) {
        CAPTURE(printed);
        const Scenario scenario{bench, printed == "once more" ? two_bags : one_bag};
        scenario.start_again();
        const auto begin = std::chrono::steady_clock::now();
        run_and_kill(bench.print(), bench.folder, std::chrono::seconds{0});
        REQUIRE(run_traced(bench.print(), bench.folder).status == 0);
        const std::chrono::duration<double, std::micro> whole =
            std::chrono::steady_clock::now() - begin;
        for (int kill = 0; kill < 75; ++kill) {
            const std::chrono::microseconds after{static_cast<long>(whole.count() * random.unit())};
            CAPTURE(after.count());
            scenario.start_again();
            run_and_kill(bench.print(), bench.folder, after);
            scenario.judge();
        }
    }
}
