// Reading a bag back: from its code, by a scanner that types, by its id and the archive.

#include "code/seal.h"
#include "kitchen.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <fstream>
#include <regex>

using namespace thawslip::test_support;

namespace {

/// What Python's own reader of JSON (Python Software Foundation, "json", 3.11) finds when `text`
/// is taken line by line as `bag` and `expression` is printed.
std::string judged(const std::string& text, const std::string& expression) {
    const ScratchFolder scratch;
    write_file(scratch / "answer.json", text);
    write_file(scratch / "judge.py", "import json, sys\nfor line in open(sys.argv[1]):\n"
                                     "    bag = json.loads(line)\n    print(" +
                                         expression + ")\n");
    return run("python3 " + shell_word(scratch / "judge.py") + " " +
               shell_word(scratch / "answer.json"))
        .out;
}

/// The words of a code that a program after this one makes.
const std::string later_words = [] {
    const std::string words = "BARLEY STEW\nSTIR TWICE\nEND 4";
    return words + thawslip::code::check_characters(words);
}();

struct Printed : Kitchen {
    Printed() { REQUIRE((*this)("labels day.toml -o labels.pdf").status == 0); }

    /// The code's text of the first bag of a dish, as `text` shows it.
    std::string code_text(const std::string& dish) const {
        const auto all = (*this)("text day.toml").out;
        const auto start = all.find(dish);
        REQUIRE(start != std::string::npos);
        return all.substr(start, all.find("\n\n", start) - start);
    }
};

} // namespace

TEST_CASE_FIXTURE(Printed, "a typed id gives the cook's own words back") {
    const auto outcome = (*this)("read " + first_id("squash"));
    CHECK(outcome.status == 0);
    CHECK(outcome.err.starts_with("next: thawslip plan ")); // and no more than what to do next
    for (const auto* words : {"Squash and red lentil stew  (", "Serves 6\n", "Made 17 Oct 2026\n",
                              "Add at the start: 1 l (4¼ cups) vegetable stock\n",
                              "Contains celery\n", "Local food-safety rules come first.\n"}) {
        CAPTURE(words);
        CAPTURE(outcome.out);
        CHECK(says(outcome.out, words));
    }
}

TEST_CASE_FIXTURE(Kitchen, "more than any code holds is not read, and nothing is no text") {
    write_file(folder / "long.txt", std::string(std::size_t{64} * 1024 + 1, 'A'));
    const auto much = (*this)("read - < long.txt");
    CHECK(much.status == 1);
    CHECK(says(much.err, "standard input: error: this is more than any code holds\n"));
    CHECK(says((*this)("read - < /dev/null").err, "standard input: error: there is no text\n"));
}

TEST_CASE_FIXTURE(Kitchen, "of a label of a later program the words are given, in words and JSON") {
    write_file(folder / "later.txt", "]Q1" + later_words + "\n");
    const auto words = (*this)("read - < later.txt");
    CHECK(words.status == 0);
    CHECK(words.out == later_words + "\nLocal food-safety rules come first.\n");
    CHECK(says(words.err, "written in version 4 of the grammar"));
    const auto json = (*this)("read - --json < later.txt");
    CHECK(judged(json.out, "bag['text'].replace('\\n', '/')") ==
          std::regex_replace(later_words, std::regex{"\n"}, "/") + "\n");
}

TEST_CASE_FIXTURE(Printed, "an id may be typed on standard input, with the usual slips") {
    auto id = first_id("squash");
    std::ranges::transform(id, id.begin(), [](unsigned char c) { return std::tolower(c); });
    write_file(folder / "typed.txt", id + "\n");
    const auto outcome = (*this)("read - < typed.txt");
    CHECK(outcome.status == 0);
    CHECK(says(outcome.out, "Squash and red lentil stew"));
}

TEST_CASE_FIXTURE(Printed, "a date that is past is pointed out, and by how much") {
    const auto id = first_id("compote");
    CHECK_FALSE(says((*this)("read " + id).out, "past"));
    now = "1830297600"; // 2028-01-01
    const auto outcome = (*this)("read " + id);
    CHECK(outcome.status == 0);
    CHECK(says(outcome.out, "past its"));
    CHECK(says(outcome.out, " days\n"));
    const auto left = judged((*this)("read --json " + id).out, "bag['days_left'] < 0");
    CHECK(left == "True\n");
}

TEST_CASE_FIXTURE(Printed, "the answer in JSON holds what the description said") {
    const auto outcome = (*this)("read --json " + first_id("squash"));
    REQUIRE(outcome.status == 0);
    CHECK(judged(outcome.out, "bag['dish'], bag['servings'], bag['made'], bag['thaw']") ==
          "Squash and red lentil stew 6 2026-10-17 refrigerator\n");
    CHECK(judged(outcome.out, "[each['when'] for each in bag['finish']]") ==
          "['at the start', 'last 10 min']\n");
    CHECK(judged(outcome.out, "bag['finish'][0]['add'], bag['contains']") ==
          "1 l vegetable stock ['celery']\n");
}

TEST_CASE_FIXTURE(Printed, "what a scanner types gives the same bag as the archive") {
    write_file(folder / "typed.txt", code_text("SQUASH"));
    const auto scanned = (*this)("read --json - < typed.txt");
    REQUIRE(scanned.status == 0);
    const auto id = judged(scanned.out, "bag['id']");
    const auto known = (*this)("read --json " + id.substr(0, 11));
    // Servings and the day it was made stand on the label: they leave its code first.
    const std::string same = "bag['id'], bag['use_by'], bag['date'], bag['thaw'], "
                             "[each['when'] for each in bag['finish']]";
    CHECK(judged(scanned.out, same) == judged(known.out, same));
}

TEST_CASE_FIXTURE(Printed, "a bag that left the freezer is told, with a caution") {
    const auto id = first_id("squash");
    REQUIRE((*this)("freezer eaten " + id).status == 0);
    const auto outcome = (*this)("read " + id);
    CHECK(outcome.status == 0);
    CHECK(says(outcome.err, "known as eaten"));
}

TEST_CASE_FIXTURE(Printed, "what is neither photograph nor id is told as both") {
    const auto outcome = (*this)("read sunday");
    CHECK(outcome.status == 1);
    CHECK(says(outcome.err, "no bag is called \"sunday\""));
    CHECK(says(outcome.err, "no photograph of that name"));
}

TEST_CASE_FIXTURE(Printed, "cook steps are told in the language that is set") {
    const auto outcome = (*this)("--language es read " + first_id("squash"));
    CHECK(says(outcome.out, "Raciones: 6"));
    CHECK(says(outcome.out, "Las normas locales"));
}

namespace {

/// A day of one dish in two bags. \param more what its table says besides
std::string ladder_day(const std::string& use_by, const std::string& more) {
    return "[day]\nmade = 2026-10-17\n[[package]]\ndish = \"Ladder ragout\"\nservings = 4\n"
           "food = \"soup or stew\"\nbags = 2\nuse_by = " +
           use_by + "\n" + more;
}

struct Corrected : Kitchen {
    std::string id;

    /// The old label's code is in old.txt; the day was corrected and printed again since.
    void correct(const std::string& before, const std::string& now) {
        write_file(folder / "day.toml", before);
        REQUIRE((*this)("labels day.toml -o old.pdf").status == 0);
        REQUIRE((*this)("text day.toml | sed '/^$/,$d' > old.txt").status == 0);
        write_file(folder / "day.toml", now);
        REQUIRE((*this)("labels day.toml -o new.pdf").status == 0);
        REQUIRE((*this)("text day.toml | sed '/^$/,$d' > new.txt").status == 0);
        id = first_id("ladder");
    }
};

} // namespace

TEST_CASE_FIXTURE(Corrected, "of an old label it is said what the archive has otherwise, and where "
                             "the bag is") {
    correct(ladder_day("2026-12-10", "contains = [\"celery\"]\n"),
            ladder_day("2026-11-10", "contains = [\"celery\", \"walnuts\"]\n"));
    REQUIRE((*this)("freezer discarded " + id).status == 0);
    const auto old = (*this)("read - < old.txt");
    CAPTURE(old.err);
    CHECK(old.status == 0);
    CHECK(says(old.err, "caution: " + id + ": this bag is known as discarded (2026-10-17)\n"));
    CHECK(says(old.err, "caution: this is an old label of bag " + id +
                            ": it says use by 2026-12-10, and the archive use by 2026-11-10; its "
                            "allergens are celery, and those in the archive celery, tree nuts "
                            "(walnut); the archive is the one to go by\n"));
    CHECK_FALSE(says(old.err, "next: "));
    CHECK_FALSE(says((*this)("read - < new.txt").err, "old label"));
    CHECK_FALSE(says((*this)("read " + id).err, "next: "));
}

TEST_CASE_FIXTURE(Corrected, "an old label that does not say what is added now, or that it is raw, "
                             "is told") {
    const std::string added = "[[package.finish]]\nwhen = \"at serving\"\nadd = ";
    correct(ladder_day("2026-12-10", "contains = [\"celery\"]\n" + added + "\"150 ml water\"\n"),
            ladder_day("2026-12-10", "contains = [\"celery\"]\n" + added + "\"60 g walnuts\"\n"));
    CHECK(says((*this)("read - < old.txt").err,
               "its allergens are celery, and those in the archive added tree nuts (walnut), "
               "celery;"));
    correct(ladder_day("2026-12-10", ""),
            std::regex_replace(ladder_day("2026-12-10", ""), std::regex{"soup or stew"},
                               "minced meat"));
    CHECK(says((*this)("read - < old.txt").err,
               "it says that the food is not raw, and the archive that it is raw;"));
}

TEST_CASE_FIXTURE(Corrected, "a code is read where the archive cannot be, and that is said") {
    const auto day = ladder_day("2026-12-10", "");
    correct(day, day);
    write_file(archive, "no archive");
    const auto outcome = (*this)("read - < old.txt");
    std::filesystem::remove(archive);
    CHECK(outcome.status == 0);
    CHECK(says(outcome.out, "Use by 10 Dec 2026\n"));
    CHECK(says(outcome.err, "caution: whether a label is the newest of its bag is not known: "));
}
