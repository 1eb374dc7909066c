// Which bags a print is of: DEVELOPERS.md, "The same bags", by the program itself.

#include "kitchen.h"

#include <algorithm>
#include <cctype>
#include <doctest/doctest.h>
#include <filesystem>
#include <fmt/format.h>
#include <regex>
#include <set>
#include <sstream>
#include <vector>

using namespace thawslip::test_support;
namespace fs = std::filesystem;

namespace {

std::string pot(const std::string& dish, int bags, int servings, const std::string& more = {},
                const std::string& kitchen = {}) {
    return "[day]\nmade = 2026-10-17\n" +
           (kitchen.empty() ? "" : "kitchen = \"" + kitchen + "\"\n") +
           fmt::format("[[package]]\ndish = \"{}\"\nservings = {}\nbags = {}\n"
                       "use_by = 2026-12-01\n{}",
                       dish, servings, bags, more);
}

std::set<std::string> ids_in(const Kitchen& kitchen, const std::string& pdf) {
    std::istringstream lines{
        run("pdftotext " + shell_word(kitchen.folder / pdf) +
            " - | grep -oE '\\b([0-9A-Z]{3}-)?[0-9A-Z]{3}-[0-9A-Z]{3}-[0-9A-Z]{3}\\b'")
            .out};
    std::set<std::string> ids;
    for (std::string id; std::getline(lines, id);) {
        ids.insert(id);
    }
    return ids;
}

struct TwoFiles : Kitchen {
    TwoFiles() {
        write_file(folder / "a.toml", pot("Barley pot", 3, 6));
        write_file(folder / "b.toml", pot("Barley pot", 2, 4, "contains = [\"milk\"]\n"));
    }
};

} // namespace

TEST_CASE_FIXTURE(TwoFiles, "a second file with that dish and day: asked, not swallowed") {
    REQUIRE((*this)("labels a.toml -o a.pdf").status == 0);
    const auto before = sql(".dump");
    for (const std::string command : {"labels", "cards", "lists"}) {
        CAPTURE(command);
        const auto asked = (*this)(command + " b.toml -o b.pdf");
        CHECK(asked.status == 1);
        CHECK(says(asked.err, "b.toml:4:8: error: bags of \"Barley pot\", made 2026-10-17"));
        CHECK(says(asked.err, "--new-batch"));
        CHECK(says(asked.err, "--same-batch " + first_id("barley")));
        static const std::regex known{"label: 3 bags that serve 6, printed 20\\d\\d-\\d\\d-\\d\\d "
                                      "from .*/a\\.toml\n"};
        CHECK(std::regex_search(asked.err, known));
        CHECK_FALSE(says(asked.err, "take its old label off"));
        CHECK_FALSE(fs::exists(folder / "b.pdf"));
        CHECK(sql(".dump") == before);
    }
}

TEST_CASE_FIXTURE(TwoFiles, "told that they are others, each batch keeps what is its own") {
    REQUIRE((*this)("labels a.toml -o a.pdf").status == 0);
    const auto second = (*this)("labels b.toml --new-batch -o b.pdf");
    CHECK(second.status == 0);
    CHECK_FALSE(says(second.err, "bag "));
    const auto a = ids_in(*this, "a.pdf");
    const auto b = ids_in(*this, "b.pdf");
    CHECK(a.size() == 3);
    CHECK(b.size() == 2);
    auto both = a;
    both.insert(b.begin(), b.end());
    CHECK(both.size() == 5);
    REQUIRE((*this)("labels b.toml -o again.pdf").status == 0); // known by now
    CHECK(file("again.pdf") == file("b.pdf"));
    REQUIRE((*this)("cards b.toml -o cards.pdf").status == 0);
    CHECK(b.contains(*ids_in(*this, "cards.pdf").begin()));
    REQUIRE((*this)("lists --door -o door.pdf").status == 0); // told apart by what each serves
    CHECK(ids_in(*this, "door.pdf").empty());
    CHECK(says((*this)("freezer list").out, "Barley pot: 5 bags, 26 servings"));
    REQUIRE((*this)("freezer eaten " + *b.begin()).status == 0);
    CHECK(says((*this)("freezer list").out, "Barley pot: 4 bags, 22 servings"));
    // Both files at once: told apart by what the archive knows.
    REQUIRE((*this)("labels a.toml b.toml -o both.pdf").status == 0);
    CHECK(ids_in(*this, "both.pdf") == both);
    // An edited file keeps its bags.
    write_file(folder / "b.toml", file("b.toml") + "# edited\n");
    REQUIRE((*this)("labels b.toml -o edited.pdf").status == 0);
    CHECK(ids_in(*this, "edited.pdf") == b);
    const auto one = (*this)("reprint " + *b.begin() + " -o one.pdf");
    CHECK(one.status == 0);
    CHECK(ids_in(*this, "one.pdf") == std::set{*b.begin()});
    CHECK(says((*this)("read " + *b.begin() + " --json").out, "\"servings\":4"));
}

TEST_CASE_FIXTURE(TwoFiles, "told that they are the bags of a label, it is an edited description") {
    REQUIRE((*this)("labels a.toml -o a.pdf").status == 0);
    const auto id = first_id("barley");
    const auto wrong = (*this)("labels b.toml --same-batch 000-000-011 -o b.pdf");
    CHECK(wrong.status == 1);
    CHECK(says(wrong.err, "hint: thawslip freezer list names all bags by their ids"));
    CHECK_FALSE(fs::exists(folder / "b.pdf"));
    const auto told = (*this)("labels b.toml --same-batch " + id + " -o b.pdf");
    CAPTURE(told.err);
    CHECK(told.status == 0);
    CHECK(says(told.err, "take its old label off")); // now it is right to say so
    CHECK(ids_in(*this, "b.pdf").contains(id));
    CHECK(sql("SELECT count(*) FROM bag") == "3\n");
}

TEST_CASE_FIXTURE(Kitchen,
                  "a file of two dishes that was moved and edited is told by a bag of each") {
    const auto two = pot("Barley pot", 3, 6) +
                     "[[package]]\ndish = \"Plum compote\"\nservings = 2\nuse_by = 2026-12-01\n";
    write_file(folder / "two.toml", two);
    REQUIRE((*this)("labels two.toml -o two.pdf").status == 0);
    write_file(folder / "moved.toml", two + "# moved\n");
    const auto barley = first_id("barley");
    const auto plum = first_id("plum");
    const auto half = (*this)("labels moved.toml --same-batch " + barley + " -o half.pdf");
    CHECK(half.status == 1);
    CHECK(says(half.err, "bags of \"Plum compote\""));
    CHECK_FALSE(says(half.err, "bags of \"Barley pot\""));
    // An id as people type it is known when the print is recorded too.
    std::string typed = barley;
    std::erase(typed, '-');
    std::ranges::transform(typed, typed.begin(),
                           [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    const auto both = (*this)("labels moved.toml --same-batch " + typed + "," + plum + " -o b.pdf");
    CAPTURE(both.err);
    CHECK(both.status == 0);
    CHECK(ids_in(*this, "b.pdf") == ids_in(*this, "two.pdf"));
    CHECK(sql("SELECT count(*) FROM bag") == "4\n");
    CHECK(
        (*this)("labels moved.toml --same-batch " + barley + " --same-batch " + plum + " -o c.pdf")
            .status == 0);
}

TEST_CASE_FIXTURE(TwoFiles, "two kitchens never cross, and the other's file stays as it was") {
    Kitchen other;
    std::string theirs = "labels b.toml";
    std::string ours = "labels a.toml";
    bool clashes = false;
    write_file(other.folder / "b.toml", file("b.toml"));
    SUBCASE("of two names") {
        write_file(folder / "a.toml", pot("Barley pot", 3, 6, {}, "Orchard house"));
        write_file(other.folder / "b.toml", pot("Barley pot", 2, 4, {}, "Barn"));
    }
    SUBCASE("of two numbers") {
        write_file(folder / "s.toml", "kitchen_number = 3\n");
        write_file(other.folder / "s.toml", "kitchen_number = 32767\n");
        ours = "--settings s.toml " + ours;
        theirs = "--settings s.toml " + theirs;
    }
    SUBCASE("one of which has a number") {
        write_file(other.folder / "s.toml", "kitchen_number = 9\n");
        theirs = "--settings s.toml " + theirs;
    }
    SUBCASE("of neither name nor number") {
        clashes = true;
    }
    SUBCASE("of neither, and of one description") {
        write_file(other.folder / "b.toml", file("a.toml"));
        clashes = true;
    }
    REQUIRE((*this)(ours + " -o a.pdf").status == 0);
    REQUIRE(other(theirs + " -o b.pdf").status == 0);
    const auto gone = ids_in(other, "b.pdf");
    for (const auto& id : gone) {
        REQUIRE(other("freezer eaten " + id).status == 0);
    }
    const auto before = read_file(other.archive);
    const auto merged = (*this)("archive merge " + other.archive);
    CAPTURE(merged.out);
    CAPTURE(merged.err);
    CHECK(merged.status == 0);
    CHECK(read_file(other.archive) == before);
    CHECK(says(merged.err, "was left out") == clashes);
    CHECK(says(merged.err, "--same-kitchen") == clashes);
    const auto list = (*this)("freezer list").out;
    CHECK(says(list, "Barley pot: 3 bags, 18 servings"));
    for (const auto& id : ids_in(*this, "a.pdf")) {
        CHECK(says(list, id));
        CHECK((gone.contains(id) == clashes || clashes));
    }
    CHECK(sql("SELECT count(*) FROM bag") ==
          (clashes ? "3\n" : fmt::format("{}\n", 3 + gone.size())));
    // Merged again nothing is added; and what was printed here is printed on as it was.
    CHECK(says((*this)("archive merge " + other.archive).out, "added 0 descriptions, 0 bags, 0"));
    CHECK((*this)("archive merge gone.db").err ==
          "error: there is no file gone.db; nothing was merged\n");
    REQUIRE((*this)(ours + " -o again.pdf").status == 0);
    CHECK(file("again.pdf") == file("a.pdf"));
}

TEST_CASE_FIXTURE(TwoFiles, "a kitchen's number stands in its ids, on labels, in codes, as typed") {
    write_file(folder / "s.toml", "kitchen_number = 17\n");
    REQUIRE((*this)("--settings s.toml labels a.toml -o a.pdf").status == 0);
    const auto ids = ids_in(*this, "a.pdf");
    REQUIRE(ids.size() == 3);
    const auto id = *ids.begin();
    CHECK(id.starts_with("00H-"));
    CHECK(says((*this)("--settings s.toml text a.toml").out, "BAG " + id));
    CHECK((*this)("read " + id).status == 0);
    std::string typed = "oo" + id.substr(2);
    std::erase(typed, '-');
    CHECK((*this)("freezer out " + typed).status == 0);
    const auto short_one = (*this)("freezer out " + id.substr(4));
    CHECK(short_one.status == 1);
    CHECK(says(short_one.err, "there is " + id));
    CHECK((*this)("reprint " + id + " -o one.pdf").status == 0);
    write_file(folder / "s.toml", "kitchen_number = 32768\n");
    CHECK((*this)("--settings s.toml labels a.toml -o a.pdf").status == 1);
}

TEST_CASE_FIXTURE(TwoFiles, "without the archive the same input gives the same ids and bytes") {
    REQUIRE((*this)("labels b.toml --no-archive -o first.pdf").status == 0);
    REQUIRE((*this)("labels b.toml --no-archive -o second.pdf").status == 0);
    CHECK(file("first.pdf") == file("second.pdf"));
    CHECK((*this)("check b.toml").status == 0);
}

TEST_CASE_FIXTURE(Kitchen,
                  "of four first prints of one dish at once, one is, and nothing of the others") {
    std::vector<std::string> commands;
    for (int i = 0; i < 4; ++i) {
        write_file(folder / fmt::format("{}.toml", i), pot("Barley pot", 2, i + 1));
        commands.push_back(fmt::format("labels {0}.toml -o {0}.pdf", i));
    }
    const auto outcomes = at_once(commands);
    int printed = 0;
    for (std::size_t i = 0; i < outcomes.size(); ++i) {
        CAPTURE(outcomes[i].err);
        printed += outcomes[i].status == 0 ? 1 : 0;
        CHECK(fs::exists(folder / fmt::format("{}.pdf", i)) == (outcomes[i].status == 0));
    }
    CHECK(printed == 1);
    CHECK(sql("SELECT count(*) FROM bag") == "2\n");
}

TEST_CASE_FIXTURE(Kitchen, "six programs print six pots of one name and day at once") {
    write_file(folder / "first.toml", pot("Plum jam", 1, 1));
    REQUIRE((*this)("labels first.toml -o first.pdf").status == 0);
    std::vector<std::string> commands;
    for (int i = 0; i < 6; ++i) {
        write_file(folder / fmt::format("{}.toml", i), pot("Barley pot", 3, i + 1));
        commands.push_back(fmt::format("labels {0}.toml --new-batch -o {0}.pdf", i));
    }
    const auto outcomes = at_once(commands);
    std::set<std::string> ids;
    for (std::size_t i = 0; i < outcomes.size(); ++i) {
        CAPTURE(outcomes[i].err);
        CHECK(outcomes[i].status == 0);
        ids.merge(ids_in(*this, fmt::format("{}.pdf", i)));
    }
    CHECK(ids.size() == 18);
    CHECK(sql("SELECT count(*) FROM bag") == "19\n");
    CHECK(says((*this)("freezer list").out, "Barley pot: 18 bags, 63 servings"));
}

TEST_CASE_FIXTURE(TwoFiles, "a bag that a merge left out stays left out of every later print") {
    Kitchen other;
    write_file(other.folder / "b.toml",
               file("b.toml") + "[[package]]\ndish = \"Leek soup\"\nservings = 2\nuse_by = "
                                "2026-12-01\n");
    REQUIRE((*this)("labels a.toml -o a.pdf").status == 0);
    REQUIRE(other("labels b.toml -o b.pdf").status == 0);
    REQUIRE(says((*this)("archive merge " + other.archive).out, "added 1 description, 1 bag"));
    const auto again = (*this)("reprint --printed 2026-10-17 -o again.pdf");
    CAPTURE(again.err);
    CHECK(again.status == 0);
    CHECK(says(again.out, "4 labels"));
    CHECK(says(again.err, "of \"Barley pot\" is not printed again: it was left out"));
    const auto words = run("pdftotext " + shell_word(folder / "again.pdf") + " -").out;
    CHECK(says(words, "Leek soup"));
    CHECK_FALSE(says(words, "ilk"));
    // Both archives are of one machine: printed into this one, that file is asked about.
    const auto asked = (*this)("labels " + (other.folder / "b.toml") + " -o b.pdf");
    CHECK(asked.status == 1);
    CHECK(says(asked.err, "bags of \"Barley pot\", made 2026-10-17, were printed before"));
    CHECK_FALSE(says(asked.err, "bags of \"Leek soup\""));
    CHECK_FALSE(fs::exists(folder / "b.pdf"));
}

TEST_CASE_FIXTURE(TwoFiles, "ids of another pot are asked about also where nothing is remembered") {
    REQUIRE((*this)("labels a.toml -o a.pdf").status == 0);
    const auto before = read_file(archive);
    const auto a = ids_in(*this, "a.pdf");
    for (const std::string how :
         {"labels b.toml --no-archive", "--settings s.toml labels b.toml"}) {
        CAPTURE(how);
        write_file(folder / "s.toml", "record_prints = false\n");
        const auto asked = (*this)(how + " -o b.pdf");
        CHECK(asked.status == 1);
        CHECK(says(asked.err, "--new-batch"));
        CHECK_FALSE(fs::exists(folder / "b.pdf"));
        REQUIRE((*this)(how + " --new-batch -o b.pdf").status == 0);
        for (const auto& id : ids_in(*this, "b.pdf")) {
            CHECK_FALSE(a.contains(id));
        }
        REQUIRE((*this)(how + " --same-batch " + *a.begin() + " -o b.pdf").status == 0);
        CHECK(a.contains(*ids_in(*this, "b.pdf").begin()));
        fs::remove(folder / "b.pdf");
    }
    for (const std::string looks : {"check", "text"}) {
        const auto told = (*this)(looks + " b.toml");
        CAPTURE(told.err);
        CHECK(told.status == 0);
        CHECK(says(told.err, "b.toml:4:8: caution: bags of \"Barley pot\""));
        CHECK(says(told.err, "thawslip labels --new-batch"));
        for (const auto& id : a) {
            CHECK_FALSE(says(told.out, id));
            CHECK(says((*this)(looks + " a.toml").out, id));
        }
        CHECK((*this)(looks + " a.toml").err.find("caution") == std::string::npos);
    }
    CHECK(read_file(archive) == before);
}

TEST_CASE_FIXTURE(TwoFiles, "a trial is asked nothing, and every hint can be followed") {
    REQUIRE((*this)("labels a.toml -o a.pdf").status == 0);
    CHECK((*this)("labels b.toml --trial -o trial.pdf").status == 0);
    const auto lists = (*this)("lists b.toml -o lists.pdf");
    CHECK(lists.status == 1);
    CHECK(says(lists.err, "thawslip labels --new-batch"));
    CHECK((*this)("lists b.toml --trial -o lists.pdf").status == 0);
    const auto nowhere = [this](const std::string& command) {
        return run("env -u XDG_DATA_HOME -u HOME SOURCE_DATE_EPOCH=" + now +
                   " XDG_CONFIG_HOME=/nonexistent " THAWSLIP_PROGRAM " " + command + " " +
                   shell_word(folder / "a.toml") + " -o " + shell_word(folder / "c.pdf"));
    };
    CHECK(nowhere("lists").status == 0);
    CHECK(nowhere("labels --trial").status == 0);
    CHECK(nowhere("labels --no-archive").status == 0);
    const auto labels = nowhere("labels");
    CHECK(labels.status == 3);
    CHECK(says(labels.err, "print with --no-archive"));
    fs::remove(archive);
    fs::create_directory(archive); // none that can be read
    CHECK((*this)("labels b.toml --trial -o trial.pdf").status == 0);
    const auto blind = (*this)("labels b.toml --no-archive -o b.pdf");
    CHECK(blind.status == 0);
    CHECK(says(blind.err, "caution: these ids may be on other bags already"));
    const auto refused = (*this)("lists b.toml -o lists.pdf");
    CHECK(refused.status == 3);
    CHECK_FALSE(says(refused.err, "--no-archive"));
    fs::remove(archive);
}

TEST_CASE_FIXTURE(Kitchen, "a third pot of one file has nothing said against the second") {
    write_file(folder / "pot.toml", pot("Barley pot", 2, 4));
    for (int i = 0; i < 4; ++i) {
        const auto printed = (*this)("labels pot.toml --new-batch -o pot.pdf");
        CHECK(printed.status == 0);
        CHECK_FALSE(says(printed.err, "no longer described"));
    }
    CHECK(says((*this)("freezer list").out, "Barley pot: 8 bags"));
}
