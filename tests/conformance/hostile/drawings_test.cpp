// Stock and layout files that ask for what no paper has: refused at their place, before any
// memory or time is spent on them.

#include "attempt.h"

#include <doctest/doctest.h>
#include <vector>

using namespace thawslip::test_support;

namespace {

struct Case {
    std::string about;
    std::string text;
    std::string told; ///< "line:column: error: …", how it begins after the file's name
};

std::string repeated(std::size_t count, const std::string& part) {
    std::string text;
    for (std::size_t i = 0; i < count; ++i) {
        text += part;
    }
    return text;
}

std::string stock(const std::string& lines) {
    return "paper = \"letter\"\n" + lines + "\n";
}

/// The shipped layout for wide labels with one of its lines replaced.
std::string layout(const std::string& from, const std::string& to) {
    auto text = read_file(THAWSLIP_SOURCE_DIR "/layouts/label/wide.toml");
    const auto begin = text.find("\n" + from) + 1;
    REQUIRE(begin != 0);
    const bool list = text.compare(begin + from.size(), 4, " = [") == 0 && from == "picture";
    const auto end = list ? text.find("\n]", begin) + 2 : text.find('\n', begin);
    return text.replace(begin, end - begin, to);
}

void refuse_all(const std::vector<Case>& cases, const std::string& option) {
    Attempts attempts;
    write_file(attempts / "given.toml", "");
    attempts.settle();
    for (const auto& c : cases) {
        CAPTURE(c.about);
        write_file(attempts / "given.toml", c.text);
        const auto outcome =
            attempts.run("labels day.toml " + option + " ./given.toml -o labels.pdf");
        CAPTURE(outcome.err);
        CHECK(outcome.status == 1);
        CHECK(says(outcome.err, "./given.toml:" + c.told));
        CHECK(outcome.err.size() < 20'000);
        CHECK(attempts.left_behind() == "");
    }
}

} // namespace

TEST_CASE("a stock that no sheet can be is refused at its place") {
    refuse_all(
        {
            {"a million cells", stock("cell = [\"4 in\", \"2 in\"]\ncolumns = 1000\nrows = 1000"),
             "3:11: error: 1000 columns x 1000 rows = 1000000 cells"},
            {"a million columns", stock("cell = [\"4 in\", \"2 in\"]\ncolumns = 1000000"),
             "3:11: error: columns must be from 1 to 1000"},
            {"columns beyond 64 bits",
             stock("cell = [\"4 in\", \"2 in\"]\ncolumns = 99999999999999999999"), "3:11: error: "},
            {"a label of a micrometre", stock("cell = [\"0.001 mm\", \"0.001 mm\"]"),
             "2:8: error: a cell is "},
            {"no label", stock("cell = [\"0 mm\", \"0 mm\"]"), "2:8: error: a cell is "},
            {"negative lengths", stock("cell = [\"-4 in\", \"-2 in\"]"), "2:8: error: a cell is "},
            {"negative columns", stock("cell = [\"4 in\", \"2 in\"]\ncolumns = -3"),
             "3:11: error: columns must be from 1 to 1000"},
            {"a NaN for a length", stock("cell = [\"nan mm\", \"2 in\"]"),
             "2:10: error: \"nan mm\" is not a length"},
            {"an infinite length", stock("cell = [\"inf mm\", \"2 in\"]"),
             "2:10: error: \"inf mm\" is not a length"},
            {"a length with an exponent", stock("cell = [\"1e308 mm\", \"2 in\"]"),
             "2:11: error: "},
            {"a length of four hundred digits",
             stock("cell = [\"" + std::string(400, '9') + " mm\", \"2 in\"]"),
             "2:10: error: \"9999"},
            {"bare numbers", stock("cell = [nan, -inf]"), "2:9: error: cell[1] must be text"},
            {"a pitch of nothing",
             stock("cell = [\"2 in\", \"2 in\"]\ncolumns = 3\npitch = [\"0 in\", \"0 in\"]"),
             "4:9: error: "},
            {"cells far off the sheet",
             stock("cell = [\"2 in\", \"2 in\"]\nfirst = [\"900 in\", \"-900 in\"]"),
             "3:11: error: \"900 in\" is over 10 m"},
            {"a sheet of a hundred metres", "sheet = [\"100000 mm\", \"100000 mm\"]\n",
             "1:11: error: \"100000 mm\" is over 10 m"},
            {"a margin wider than the cell",
             stock("cell = [\"1 in\", \"1 in\"]\nsafe_margin = \"3 in\""), "3:15: error: "},
            {"a name that climbs", "paper = \"../../../../etc/passwd\"\n",
             "1:9: error: \"../../../../etc/passwd\" is no paper"},
            {"brackets without end", "cell = " + repeated(20'000, "["),
             "1:40: error: nested too deep"},
            {"nothing at all", "", "1:1: error: "},
            {"zeros", std::string(64, '\0'), "1:1: error: the byte 0x00"},
        },
        "--stock");
}

TEST_CASE("a layout that no label can follow is refused at its place") {
    refuse_all(
        {
            {"letters of a micrometre",
             layout("x_height", "x_height = [\"0.001 mm\", \"0.001 mm\", \"0.001 mm\"]"),
             "42:13: error: an x-height of "},
            {"letters as high as a house",
             layout("x_height", "x_height = [\"1.8 mm\", \"900 mm\", \"9000 mm\"]"),
             "42:23: error: an x-height of "},
            {"a gap of ten metres", layout("column_gap", "column_gap = \"10000 mm\""),
             "29:14: error: column_gap must be "},
            {"a gap that is no number", layout("column_gap", "column_gap = \"nan mm\""),
             "29:15: error: "},
            {"a negative gap", layout("row_gap", "row_gap = \"-5 mm\""),
             "30:11: error: row_gap must be "},
            {"infinite leading", layout("leading", "leading = inf"),
             "43:11: error: leading must be from 1 to 2.5"},
            {"leading that is no number", layout("leading", "leading = nan"), "43:11: error: "},
            {"leading of 1e308", layout("leading", "leading = 1e308"),
             "43:11: error: leading must be from 1 to 2.5"},
            {"a share of 1e308", layout("columns", "columns = [\"share\", \"share\", \"1e308 %\"]"),
             "26:30: error: "},
            {"a picture of three thousand rows",
             layout("picture", "picture = [" + repeated(3000, "\"dish\", ") + "]"),
             "13:11: error: picture has 3000 entries"},
            {"a picture of two thousand columns",
             layout("picture", "picture = [\"" + repeated(2000, "dish ") + "\"]"), ""},
            {"a picture in a picture in a picture…",
             layout("picture", "picture = " + repeated(31, "[") + "\"dish\"" + repeated(31, "]")),
             "13:12: error: picture[1] must be text"},
            {"a picture nested ten thousand deep",
             layout("picture", "picture = " + repeated(10'000, "[") + repeated(10'000, "]")),
             "13:43: error: nested too deep"},
            {"an area that climbs", layout("picture", "picture = [\"../../etc/passwd dish code\"]"),
             ""},
            {"words that are a path", layout("words", "words = [\"../../../etc/passwd\"]"), ""},
            {"an order of dropping beyond reason",
             layout("leading", "leading = 1.1\ndrop = 9223372036854775807"),
             "44:8: error: drop must be from 0 to 99"},
        },
        "--layout");
}

TEST_CASE("columns that leave no room give a refusal of the day, with what is too much") {
    Attempts attempts;
    write_file(attempts / "given.toml", layout("column_gap", "column_gap = \"50 mm\""));
    attempts.settle();
    const auto outcome = attempts.run("labels day.toml --layout ./given.toml -o labels.pdf");
    CHECK(outcome.status == 1);
    CHECK(says(outcome.err, " mm too much at the smallest type allowed"));
    CHECK(attempts.left_behind() == "");
}
