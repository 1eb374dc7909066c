// The archive as a folder of plain TOML, and back.

#include "app/archive_folder.h"
#include "app/exit_status.h"
#include "archive/archive.h"
#include "kitchen.h"
#include "random_archive.h"

#include <doctest/doctest.h>
#include <map>

using namespace thawslip;
using namespace thawslip::test_support;
namespace fs = std::filesystem;

namespace {

archive::Archive opened(const std::string& path) {
    auto result = archive::Archive::open(path, archive::Mode::Write);
    REQUIRE(result.ok());
    return std::move(result).value();
}

/// Every file below a folder by its place in it.
std::map<std::string, std::string> files_in(const fs::path& folder) {
    std::map<std::string, std::string> files;
    for (const auto& entry : fs::recursive_directory_iterator{folder}) {
        if (entry.is_regular_file()) {
            files.emplace(fs::relative(entry.path(), folder).string(), read_file(entry.path()));
        }
    }
    return files;
}

} // namespace

TEST_CASE("random archives come back from their folder, and from another archive, as they were") {
    for (std::uint64_t seed = 1; seed <= 25; ++seed) {
        CAPTURE(seed);
        const ScratchFolder scratch;
        const auto contents = RandomArchive{seed}.make();
        app::write_archive_folder(contents, scratch / "out");
        const auto read = app::read_archive_folder(scratch / "out");
        CAPTURE(to_text(read.messages));
        REQUIRE(read);
        REQUIRE(*read.value == contents);
        auto archive = opened(scratch / "archive.db");
        archive.merge(*read.value);
        REQUIRE(archive.contents() == contents);
        REQUIRE(archive.check().empty());
    }
}

TEST_CASE("every file of the folder but what the cook wrote is TOML to another reader too") {
    // Python 3.11's tomllib (Python Software Foundation), which reads TOML 1.0.
    const ScratchFolder scratch;
    for (std::uint64_t seed = 100; seed < 110; ++seed) {
        app::write_archive_folder(RandomArchive{seed}.make(), scratch / fmt::format("out{}", seed));
    }
    write_file(scratch / "read.py",
               "import pathlib, sys, tomllib\n"
               "count = 0\n"
               "for path in pathlib.Path(sys.argv[1]).rglob('*.toml'):\n"
               "    if path.name in ('record.toml', 'print.toml', 'archive.toml'):\n"
               "        tomllib.loads(path.read_bytes().decode('utf-8'))\n"
               "        count += 1\n"
               "print(count > 20)\n");
    const auto judged = run("python3 " + shell_word(scratch / "read.py") + " " +
                            shell_word(scratch.path().string()));
    CAPTURE(judged.err);
    CHECK(judged.out == "True\n");
}

TEST_CASE_FIXTURE(Kitchen, "an archive moves to another place by its folder with nothing lost") {
    const auto bytes = "\xEF\xBB\xBF" + file("day.toml") + "\r\n# end without a line end";
    write_file(folder / "day.toml", bytes);
    REQUIRE((*this)("labels day.toml -o labels.pdf").status == 0);
    REQUIRE((*this)("cards day.toml -o cards.pdf").status == 0);
    REQUIRE((*this)("freezer eaten " + first_id("squash")).status == 0);
    const auto exported = (*this)("archive export out");
    CAPTURE(exported.err);
    REQUIRE(exported.status == 0);
    CHECK(file("out/days/0001-01/as-written.toml") == bytes);
    CHECK(fs::status(folder / "out").permissions() == fs::perms::owner_all);
    CHECK(fs::status(folder / "out/archive.toml").permissions() ==
          (fs::perms::owner_read | fs::perms::owner_write));
    sql("DELETE FROM sheet"); // where prints stopped is about paper that stays here
    const auto before = sql(".dump");
    fs::rename(archive, folder / "old.db");
    fs::remove(archive + "-wal");
    CHECK((*this)("archive import out").status == 0);
    CHECK(sql(".dump") == before);
    CHECK(says((*this)("archive import out").out, "added 0 descriptions, 0 bags, 0 prints"));
    REQUIRE((*this)("reprint --printed 2026-10-17 -o again.pdf").status == 0);
    CHECK(file("again.pdf") == file("labels.pdf"));
}

TEST_CASE_FIXTURE(Kitchen, "a folder that holds something is not written into") {
    REQUIRE((*this)("labels day.toml -o labels.pdf").status == 0);
    fs::create_directory(folder / "empty");
    CHECK((*this)("archive export empty").status == 0);
    const auto before = files_in(folder.path());
    for (const std::string place : {"empty", "day.toml", "missing/below", "."}) {
        CAPTURE(place);
        const auto refused = (*this)("archive export " + place);
        CHECK(refused.status == (place == "missing/below" ? 3 : 1));
        CHECK(says(refused.err, "error: "));
    }
    auto after = files_in(folder.path());
    after.erase("archive.db-shm"); // SQLite's own memory, shared between programs
    auto expected = before;
    expected.erase("archive.db-shm");
    CHECK(after == expected);
}

TEST_CASE("a folder that was changed by hand is refused with every place that is wrong") {
    const ScratchFolder scratch;
    const auto out = scratch / "out";
    archive::Contents contents;
    for (std::uint64_t seed = 1; contents.bags.empty() || contents.prints.empty(); ++seed) {
        contents = RandomArchive{seed}.make();
    }
    app::write_archive_folder(contents, out);
    const auto record = out + "/days/0001-01/record.toml";
    std::string expected;
    SUBCASE("a file is gone") {
        fs::remove(out + "/days/0001-01/as-written.toml");
        expected = "as-written.toml";
    }
    SUBCASE("the folder is no archive") {
        fs::remove(out + "/archive.toml");
        expected = "archive.toml";
    }
    SUBCASE("a key that nobody knows") {
        write_file(record, "colour = \"red\"\n" + read_file(record));
        expected = "record.toml:1:";
    }
    SUBCASE("a name that leads out of the folder") {
        write_file(out + "/archive.toml", "format = 1\ndays = [\"../../etc\"]\nprints = []\n");
        expected = "cannot be in this folder";
    }
    SUBCASE("a later format") {
        write_file(out + "/archive.toml", "format = 4\ndays = []\nprints = []\n");
        expected = "a later thawslip";
    }
    SUBCASE("cut short") {
        write_file(record, read_file(record).substr(0, 40));
        expected = "record.toml";
    }
    const auto read = app::read_archive_folder(out);
    REQUIRE_FALSE(read);
    const auto told = to_text(read.messages);
    CAPTURE(told);
    CHECK(told.find("error: ") != std::string::npos);
    CHECK(told.find(expected) != std::string::npos);
}

TEST_CASE_FIXTURE(Kitchen, "an exported folder that was edited is not taken for what was printed") {
    write_file(folder / "pot.toml", "[day]\nmade = 2026-10-17\n[[package]]\ndish = \"Squid "
                                    "pot\"\nservings = 2\nuse_by = 2026-12-01\ncontains = "
                                    "[\"molluscs\"]\n");
    REQUIRE((*this)("labels pot.toml -o labels.pdf").status == 0);
    REQUIRE((*this)("archive export out").status == 0);
    const auto record = folder / "out/days/0001-01/record.toml";
    const auto written = folder / "out/days/0001-01/as-written.toml";
    const auto replace = [](const std::string& file, const std::string& from,
                            const std::string& to) {
        auto text = read_file(file);
        REQUIRE(text.find(from) != std::string::npos);
        write_file(file, text.replace(text.find(from), from.size(), to));
    };
    std::string expected;
    SUBCASE("the dish of the record") {
        replace(record, "Squid pot", "Leek pot");
        expected = "is named \"Leek pot\" in the archive";
    }
    SUBCASE("its allergens") {
        replace(record, "molluscs", "celery");
        expected = "contains: celery in the archive";
    }
    SUBCASE("its date") {
        replace(record, "2026-12-01", "2036-12-01");
        expected = "keeps until 2036-12-01 in";
    }
    SUBCASE("the description") {
        replace(written, "molluscs", "celery");
        expected = "as-written.toml is not what was exported";
    }
    SUBCASE("the description, without its hash") {
        replace(written, "molluscs", "celery");
        replace(record, "hash = ", "# ");
        expected = "contains: ";
    }
    SUBCASE("the description is a link") {
        fs::rename(written, folder / "elsewhere.toml");
        fs::create_symlink(folder / "elsewhere.toml", written);
        expected = "as-written.toml is a link";
    }
    SUBCASE("the folder of the day is a link") {
        fs::rename(folder / "out/days", folder / "days");
        fs::create_directory_symlink(folder / "days", folder / "out/days");
        expected = "is a link, and nothing outside";
    }
    SUBCASE("a time beyond all") {
        replace(record, "ordered = 1", "ordered = 9007199254740992 # ");
        expected = "cannot be";
    }
    const auto before = sql(".dump");
    const auto imported = (*this)("archive import out");
    CAPTURE(imported.err);
    CHECK(imported.status == 1);
    CHECK(says(imported.err, expected));
    CHECK(sql(".dump") == before);
}
