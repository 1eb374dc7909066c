// Prints made with a stock and a layout of the cook's own.

#include "kitchen.h"

#include <doctest/doctest.h>
#include <filesystem>

using namespace thawslip::test_support;
namespace fs = std::filesystem;

namespace {

struct OwnKitchen : Kitchen {
    OwnKitchen() {
        const std::string layouts = THAWSLIP_SOURCE_DIR "/layouts/";
        write_file(folder / "shelf.toml", read_file(layouts + "stock/letter-2x5-4x2in.toml"));
        write_file(folder / "mine.toml", read_file(layouts + "label/wide.toml"));
    }
};

} // namespace

TEST_CASE_FIXTURE(OwnKitchen, "a print is made again with the cook's own files as they were then") {
    REQUIRE(
        (*this)("labels day.toml --stock shelf.toml --layout ./mine.toml -o first.pdf").status ==
        0);
    const auto first = file("first.pdf");
    std::string told;
    SUBCASE("when nothing changed") {}
    SUBCASE("when they are gone") {
        fs::remove(folder / "shelf.toml");
        fs::remove(folder / "mine.toml");
        told = " is gone since 2026-10-17: printed as it was then";
    }
    SUBCASE("when they were changed") {
        write_file(folder / "shelf.toml", "paper = \"a4\"\ncell = [\"60 mm\", \"60 mm\"]\n");
        write_file(folder / "mine.toml", "nonsense");
        told = " has changed since 2026-10-17: printed as it was then";
    }
    const auto again = (*this)("reprint --printed 2026-10-17 -o again.pdf");
    CAPTURE(again.err);
    REQUIRE(again.status == 0);
    CHECK(file("again.pdf") == first);
    CHECK(says(again.err, "shelf.toml" + told) == !told.empty());
    CHECK(says(again.err, "mine.toml" + told) == !told.empty());
    CHECK(again.err.empty() == told.empty());
}

TEST_CASE_FIXTURE(OwnKitchen, "the stock that the settings name may be a file of the cook's own") {
    write_file(folder / "settings.toml", "[labels]\nstock = \"./shelf.toml\"\n");
    REQUIRE((*this)("labels day.toml --settings settings.toml -o first.pdf").status == 0);
    fs::remove(folder / "shelf.toml");
    CHECK((*this)("reprint --printed 2026-10-17 -o again.pdf").status == 0);
    CHECK(file("again.pdf") == file("first.pdf"));
}

TEST_CASE_FIXTURE(OwnKitchen, "a stock named at the reprint is the one that lies on the disk now") {
    REQUIRE((*this)("labels day.toml --stock shelf.toml -o first.pdf").status == 0);
    fs::remove(folder / "shelf.toml");
    CHECK((*this)("reprint --printed 2026-10-17 --stock shelf.toml -o again.pdf").status == 1);
    CHECK((*this)("reprint --printed 2026-10-17 --stock a4-2x4-99x68mm -o again.pdf").status == 0);
}

TEST_CASE_FIXTURE(OwnKitchen, "two versions of one stock file are two prints, and do not mix") {
    REQUIRE((*this)("labels day.toml --stock shelf.toml -o first.pdf").status == 0);
    write_file(folder / "shelf.toml",
               read_file(THAWSLIP_SOURCE_DIR "/layouts/stock/a4-2x4-99x68mm.toml"));
    REQUIRE((*this)("labels day.toml --stock shelf.toml -o second.pdf").status == 0);
    CHECK(sql("SELECT count(*) FROM print") == "2\n");
    CHECK(sql("SELECT count(*) FROM print_file") == "2\n");
    const auto both = (*this)("reprint --printed 2026-10-17 -o again.pdf");
    CHECK(both.status == 0); // the later one, which has all bags of the first
    CHECK(says(both.err, "was printed again on"));
    CHECK(file("again.pdf") == file("second.pdf"));
}

TEST_CASE_FIXTURE(OwnKitchen, "the cook's own files travel with an exported archive") {
    REQUIRE((*this)("labels day.toml --stock shelf.toml -o first.pdf").status == 0);
    const auto shelf = file("shelf.toml");
    REQUIRE((*this)("archive export out").status == 0);
    CHECK(file("out/prints/0001/file-1.toml") == shelf);
    fs::remove(folder / "shelf.toml");
    fs::remove(archive);
    REQUIRE((*this)("archive import out").status == 0);
    REQUIRE((*this)("reprint --printed 2026-10-17 -o again.pdf").status == 0);
    CHECK(file("again.pdf") == file("first.pdf"));
}

TEST_CASE_FIXTURE(OwnKitchen, "a file of the cook's own is taken up to 256 KiB, to the byte") {
    const auto labels = [&](std::size_t bytes) {
        auto layout = read_file(THAWSLIP_SOURCE_DIR "/layouts/label/wide.toml") + "# ";
        layout.resize(bytes, 'x');
        write_file(folder / "mine.toml", layout);
        return (*this)("labels day.toml --layout ./mine.toml -o labels.pdf");
    };
    CHECK(labels(256 * 1024).status == 0);
    const auto refused = labels(256 * 1024 + 1);
    CHECK(refused.status == 1);
    CHECK(says(refused.err, "the file is too large"));
}
