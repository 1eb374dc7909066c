// Printing, and printing again from the archive.

#include "kitchen.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <filesystem>

using namespace thawslip::test_support;
namespace fs = std::filesystem;

TEST_CASE_FIXTURE(Kitchen, "what is printed again from the archive is the same, byte for byte") {
    for (const std::string what : {"labels", "cards"}) {
        CAPTURE(what);
        REQUIRE((*this)(what + " day.toml --first-cell 2 -o first.pdf").status == 0);
        fs::rename(folder / "day.toml", folder / "gone.toml");
        const auto again = (*this)("reprint --printed 2026-10-17 -o again.pdf" +
                                   std::string{what == "cards" ? " --card" : ""});
        CHECK(again.status == 0);
        CHECK(again.err.empty());
        CHECK(file("again.pdf") == file("first.pdf"));
        fs::rename(folder / "gone.toml", folder / "day.toml");
    }
}

TEST_CASE_FIXTURE(Kitchen,
                  "bags of a date that was put right are told of, those of another day not") {
    const auto made_on = [this](const std::string& date) {
        auto text = file("day.toml");
        text.replace(text.find("made    = ") + 10, 10, date);
        write_file(folder / "day.toml", text);
        return (*this)("labels day.toml -o labels.pdf");
    };
    CHECK_FALSE(says(made_on("2026-10-17").err, "never-filled T"));
    const auto id = first_id("compote");
    const auto corrected = made_on("2026-10-16");
    CHECK(corrected.status == 0);
    CHECK(says(corrected.err, "day.toml was printed with made = 2026-10-17 before"));
    CHECK(says(corrected.err, id));
    CHECK_FALSE(says(made_on("2026-10-16").err, "with made =")); // said once
    REQUIRE((*this)("freezer never-filled " + id).status == 0);
    const auto once_more = made_on("2026-10-15");
    CHECK(says(once_more.err, "made = 2026-10-17 before"));
    CHECK(says(once_more.err, "made = 2026-10-16 before"));
    CHECK_FALSE(says(once_more.err, id));
    CHECK_FALSE(says(made_on("2026-10-25").err, "with made =")); // the next packing day
}

TEST_CASE_FIXTURE(Kitchen, "cards whose kinds were printed apart are printed again together") {
    REQUIRE((*this)("cards day.toml --finishing -o finishing.pdf").status == 0);
    REQUIRE((*this)("cards day.toml --cook-day -o cook-day.pdf").status == 0);
    const auto of_day = (*this)("reprint --printed 2026-10-17 --card -o day.pdf");
    CHECK(says(of_day.out, "day.pdf: 17 cards on "));
    CHECK_FALSE(says(of_day.err, "was printed again"));
    const auto of_dish = (*this)("reprint squash --card -o dish.pdf");
    CHECK(says(of_dish.out, "dish.pdf: 4 cards on ")); // beside the stove, and on each of 3 bags
    CHECK(says((*this)("reprint squash --finishing -o again.pdf").out, "again.pdf: 3 cards on "));
    CHECK(says((*this)("reprint --printed 2026-10-17 --cook-day -o again-5.pdf").out,
               "again-5.pdf: 5 cards on "));
    // Where both are on one print, each is had once, or alone.
    REQUIRE((*this)("cards day.toml -o both.pdf").status == 0);
    CHECK(says((*this)("reprint squash --card -o dish-2.pdf").out, "dish-2.pdf: 4 cards on "));
    CHECK(says((*this)("reprint squash --cook-day -o dish-3.pdf").out, "dish-3.pdf: 1 card on "));
}

TEST_CASE_FIXTURE(Kitchen, "cards on different stocks are printed again kind by kind") {
    REQUIRE((*this)("cards day.toml --finishing -o f.pdf").status == 0);
    REQUIRE((*this)("cards day.toml --cook-day --stock card-a6 -o c.pdf").status == 0);
    const auto both = (*this)("reprint squash --card -o both.pdf");
    CHECK(both.status == 1);
    CHECK(says(both.err, "with --finishing and with --cook-day\n"));
    CHECK(says((*this)("reprint squash --cook-day -o c-2.pdf").out, "card-a6"));
    CHECK((*this)("reprint squash --finishing -o f-2.pdf").status == 0);
}

TEST_CASE_FIXTURE(Kitchen, "a print in two languages and other units comes again as it was") {
    REQUIRE((*this)("cards day.toml --language de,en --units metric -o first.pdf").status == 0);
    const auto again = (*this)("reprint --card --printed 2026-10-17 -o again.pdf");
    CHECK(again.err.empty());
    CHECK(file("again.pdf") == file("first.pdf"));
}

TEST_CASE_FIXTURE(Kitchen, "one label is found by its id as people type it, or by words") {
    REQUIRE((*this)("labels day.toml -o first.pdf").status == 0);
    const auto id = first_id("compote");
    std::string typed = id;
    std::erase(typed, '-');
    std::ranges::transform(typed, typed.begin(),
                           [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    std::ranges::replace(typed, '0', 'o');
    CHECK((*this)("reprint " + typed + " --first-cell 4 -o one.pdf").status == 0);
    const auto text = run("pdftotext " + shell_word(folder / "one.pdf") + " -").out;
    CHECK(says(text, id));
    CHECK(says(text, "Plum and ginger compote"));
    CHECK_FALSE(says(text, "Squash"));
    CHECK(says((*this)("reprint plum gin -o two.pdf").out, "2 labels"));
    CHECK((*this)("reprint gravel -o none.pdf").status == 1);
    CHECK_FALSE(fs::exists(folder / "none.pdf"));
}

TEST_CASE_FIXTURE(Kitchen, "a wrong check character is named, and the id that exists offered") {
    REQUIRE((*this)("labels day.toml -o first.pdf").status == 0);
    const auto id = first_id("compote");
    auto wrong = id;
    wrong.back() = wrong.back() == 'Z' ? 'Y' : 'Z';
    const auto refused = (*this)("reprint " + wrong + " -o none.pdf");
    CHECK(refused.status == 1);
    CHECK(says(refused.err, "does not match"));
    CHECK(says(refused.err, "there is " + id));
}

TEST_CASE_FIXTURE(Kitchen, "bags go out, come back and are eaten, and the list follows") {
    REQUIRE((*this)("labels day.toml -o first.pdf").status == 0);
    const auto id = first_id("squash");
    CHECK((*this)("freezer out " + id).status == 0);
    CHECK_FALSE(says((*this)("freezer list").out, id));
    CHECK((*this)("freezer back " + id).status == 0);
    CHECK(says((*this)("freezer list").out, id));
    CHECK(says((*this)("freezer list").out, "61 days left"));
    CHECK((*this)("freezer eaten " + id).status == 0);
    const auto json = (*this)("freezer list --all --json | python3 -m json.tool").out;
    CHECK(says(json, "\"state\": \"eaten\""));
    CHECK(says((*this)("freezer next 3").out, "18 Oct 2026"));
}

TEST_CASE_FIXTURE(Kitchen, "what reads only, or is told to, leaves no archive behind") {
    CHECK((*this)("check day.toml").status == 0);
    CHECK((*this)("text day.toml").status == 0);
    CHECK((*this)("stock list").status == 0);
    CHECK((*this)("freezer list").status == 0);
    CHECK((*this)("labels day.toml --no-archive -o first.pdf").status == 0);
    CHECK((*this)("cards day.toml --stock letter-3x10-2.625x1in -o second.pdf").status == 1);
    CHECK_FALSE(fs::exists(archive));
    REQUIRE((*this)("labels day.toml -o first.pdf").status == 0);
    CHECK(fs::exists(archive));
}

TEST_CASE_FIXTURE(Kitchen, "an archive that cannot be asked for ids lets nothing be printed") {
    fs::create_directory(archive);
    const auto failed = (*this)("labels day.toml -o first.pdf");
    CHECK(failed.status == 3);
    CHECK(says(failed.err, "nothing was printed"));
    CHECK(says(failed.err, "print with --no-archive"));
    CHECK_FALSE(fs::exists(folder / "first.pdf"));
    CHECK((*this)("labels day.toml --no-archive -o first.pdf").status == 0);
    fs::remove(archive);
    REQUIRE((*this)("labels day.toml -o first.pdf").status == 0);
}
