// Elements of lists: those in brackets, with the remarks and commas around them, and tables with
// headers, with the remarks that belong to them.

#include "unit/toml/edited.h"

#include <cstdint>
#include <string>
#include <vector>

namespace edit_elements_test {

using namespace thawslip;
using namespace thawslip::toml_test;
using test_support::list_of_values;
using test_support::table_of;
using test_support::text_value;

namespace {

/// `a = …` after its list was set to these numbers.
std::string list_set(const std::string& list, const std::vector<std::int64_t>& wanted) {
    const auto text = set("a = " + list + "\nb = 0\n", "a", numbers(wanted));
    CHECK(text.ends_with("\nb = 0\n"));
    return text.substr(4, text.size() - 4 - 7);
}

} // namespace

TEST_CASE("a list in one line stays in one line, whichever of its elements change") {
    CHECK(list_set("[1, 2, 3]", {1, 2, 3}) == "[1, 2, 3]");
    CHECK(list_set("[ 1,2 , 3 ]", {9, 2, 3}) == "[ 9,2 , 3 ]");
    CHECK(list_set("[ 1,2 , 3 ]", {1, 9, 3}) == "[ 1,9 , 3 ]");
    CHECK(list_set("[ 1,2 , 3 ]", {1, 2, 9}) == "[ 1,2 , 9 ]");
    CHECK(list_set("[1, 2, 3]", {7, 8, 9}) == "[7, 8, 9]");
    CHECK(list_set("[1, 2]", {0, 1, 2}) == "[0, 1, 2]");
    CHECK(list_set("[1, 2]", {1, 0, 2}) == "[1, 0, 2]");
    CHECK(list_set("[1, 2]", {1, 2, 0}) == "[1, 2, 0]");
    CHECK(list_set("[1, 2]", {8, 9, 1, 2}) == "[8, 9, 1, 2]");
    CHECK(list_set("[1, 2]", {1, 2, 8, 9}) == "[1, 2, 8, 9]");
    CHECK(list_set("[1, 2]", {7, 8, 9}) == "[7, 8, 9]");
    CHECK(list_set("[1, 2,]", {1, 2, 3}) == "[1, 2, 3,]");
    CHECK(list_set("[1, 1]", {1, 1, 1}) == "[1, 1, 1]");
    CHECK(list_set("[1, 2, 3]", {2, 3}) == "[2, 3]");
    CHECK(list_set("[1, 2, 3]", {1, 3}) == "[1, 3]");
    CHECK(list_set("[1, 2, 3]", {1, 2}) == "[1, 2]");
    CHECK(list_set("[1, 2, 3,]", {1, 2}) == "[1, 2,]");
    CHECK(list_set("[1, 2, 3, 4]", {1, 4}) == "[1, 4]");
    CHECK(list_set("[1, 2, 3, 4]", {4}) == "[4]");
    CHECK(list_set("[1, 2, 3, 4]", {1}) == "[1]");
    CHECK(list_set("[1, 2, 3, 4]", {1, 9}) == "[1, 9]");
    CHECK(list_set("[1, 1, 1]", {1, 1}) == "[1, 1]");
    CHECK(list_set("[1, 2]", {}) == "[]");
    CHECK(list_set("[ ]", {1, 2}) == "[1, 2]");
}

TEST_CASE("elements in lines of their own come and go with their lines, and the rest stays") {
    const std::string list = "[\n    1, # one\n    # then\n    2,\n\n    3 # three\n]";
    CHECK(list_set(list, {9, 2, 3}) == "[\n    9, # one\n    # then\n    2,\n\n    3 # three\n]");
    CHECK(list_set(list, {2, 3}) == "[\n    # then\n    2,\n\n    3 # three\n]");
    CHECK(list_set(list, {1, 3}) == "[\n    1, # one\n    # then\n\n    3 # three\n]");
    CHECK(list_set(list, {1, 2}) == "[\n    1, # one\n    # then\n    2,\n\n]");
    CHECK(list_set(list, {3}) == "[\n    # then\n\n    3 # three\n]");
    CHECK(list_set(list, {0, 1, 2, 3}) ==
          "[\n    0,\n    1, # one\n    # then\n    2,\n\n    3 # three\n]");
    CHECK(list_set(list, {1, 8, 9, 2, 3}) ==
          "[\n    1, # one\n    # then\n    8,\n    9,\n    2,\n\n    3 # three\n]");
    CHECK(list_set(list, {1, 2, 3, 8, 9}) ==
          "[\n    1, # one\n    # then\n    2,\n\n    3, # three\n    8,\n    9\n]");
    CHECK(list_set("[\n  1,\n]", {1, 2}) == "[\n  1,\n  2,\n]");
    CHECK(list_set("[\n  1\n]", {1, 2}) == "[\n  1,\n  2\n]");
    CHECK(list_set("[\n\t1, # , one\n]", {1, 2}) == "[\n\t1, # , one\n\t2,\n]");
    // The comma may stand behind a remark, in a line of its own.
    CHECK(list_set("[\n  1 # one\n  ,\n]", {1, 2}) == "[\n  1 # one\n  ,\n  2,\n]");
    CHECK(list_set("[\n  1\n  # , none\n]", {1, 2}) == "[\n  1,\n  2\n  # , none\n]");
}

TEST_CASE("elements that share a line with others take no line away") {
    CHECK(list_set("[1,\n  2, 3]", {1, 3}) == "[1,\n  3]");
    CHECK(list_set("[1,\n  2, 3]", {1, 2}) == "[1,\n  2]");
    CHECK(list_set("[1,\n  2, 3]", {2, 3}) == "[2, 3]");
    CHECK(list_set("[\n  1, 2,\n  3\n]", {3}) == "[\n  3\n]");
    CHECK(list_set("[\n  1,\n  2]", {1}) == "[\n  1]");
    CHECK(list_set("[\n  1,\n  2]", {1, 2, 3}) == "[\n  1,\n  2,\n  3]");
    CHECK(list_set("[1,\n  2]", {1, 0, 2}) == "[1,\n  0,\n  2]");
    CHECK(list_set("[1,\n  2]", {0, 1, 2}) == "[0, 1,\n  2]");
    CHECK(list_set("[\n  1, 2,\n]", {1, 2, 3}) == "[\n  1, 2, 3,\n]");
    CHECK(list_set("[\n  1\n  , 2\n]", {2}) == "[\n  2\n]");
}

TEST_CASE("lists with the line ends of Windows keep them") {
    CHECK(list_set("[\r\n  1,\r\n]", {1, 2}) == "[\r\n  1,\r\n  2,\r\n]");
    CHECK(list_set("[\r\n  1,\r\n  2,\r\n]", {2}) == "[\r\n  2,\r\n]");
    CHECK(list_set("[\r\n  1\r\n]", {0, 1}) == "[\r\n  0,\r\n  1\r\n]");
}

TEST_CASE("an element of brackets is removed, copied and moved by as many places as is asked") {
    const std::string list = "a = [1, 2, 3, 4]\n";
    CHECK(remove(list, "a[1]") == "a = [2, 3, 4]\n");
    CHECK(remove(list, "a[2]") == "a = [1, 3, 4]\n");
    CHECK(remove(list, "a[4]") == "a = [1, 2, 3]\n");
    CHECK(remove("a = [[1, 2], 3]\n", "a[1][2]") == "a = [[1], 3]\n");
    CHECK(copy(list, "a[1]") == "a = [1, 1, 2, 3, 4]\n");
    CHECK(copy(list, "a[4]") == "a = [1, 2, 3, 4, 4]\n");
    CHECK(copy("a = [{b = 1}, 2]\n", "a[1]") == "a = [{b = 1}, {b = 1}, 2]\n");
    CHECK(move(list, "a[1]", 1) == "a = [2, 1, 3, 4]\n");
    CHECK(move(list, "a[4]", -1) == "a = [1, 2, 4, 3]\n");
    CHECK(move(list, "a[2]", 0) == list);
    const std::string too_far = "refused: there is no place so far up or down";
    CHECK(move(list, "a[1]", -1) == too_far);
    CHECK(move(list, "a[4]", 1) == too_far);
    CHECK(move(list, "a[2]", 3) == too_far);
    const auto moved = [&list](const char* path, int by) {
        return toml::edit(list, {{What::Move, KeyPath{path}, {}, by}}).value().text;
    };
    CHECK(moved("a[1]", 2) == "a = [2, 3, 1, 4]\n");
    CHECK(moved("a[1]", 3) == "a = [2, 3, 4, 1]\n");
    CHECK(moved("a[4]", -3) == "a = [4, 1, 2, 3]\n");
    CHECK(moved("a[3]", -2) == "a = [3, 1, 2, 4]\n");
    CHECK(moved("a[2]", 2) == "a = [1, 3, 4, 2]\n");
}

TEST_CASE("an element is added to a list wherever it stands, and makes one where there is none") {
    CHECK(add("a = [1]\n", "a", number(2)) == "a = [1, 2]\n");
    CHECK(add("a = []\n", "a", number(2)) == "a = [2]\n");
    CHECK(add("t = {a = [1]}\n", "t.a", number(2)) == "t = {a = [1, 2]}\n");
    CHECK(add("t = {b = 1}\n", "t.a", number(2)) == "t = {b = 1, a = [2]}\n");
    CHECK(add("b = 1\n", "a", number(2)) == "b = 1\na = [2]\n");
    CHECK(add("", "t.a", number(2)) == "[t]\na = [2]\n");
    CHECK(add("a = [{b = 1}]\n", "a", table_of({{"b", number(2)}})) == "a = [{b = 1}, {b = 2}]\n");
}

TEST_CASE("a new table stands behind all of the one before it, its keys as those of that one") {
    const auto dish = table_of({{"thaw", table_of({{"method", text_value("microwave")}})},
                                {"dish", text_value("A")},
                                {"finish", list_of_values({table_of({{"add", number(1)}}),
                                                           table_of({{"add", number(2)}})})},
                                {"in", number(3)}});
    CHECK(add("  [[p]]\n  dish   = 'B'\n\n  [p.thaw]\n\n# end of p\n\n[u]\n", "p", dish) ==
          "  [[p]]\n  dish   = 'B'\n\n  [p.thaw]\n\n  [[p]]\n  dish   = \"A\"\n  in     = 3\n\n"
          "  [p.thaw]\n  method = \"microwave\"\n\n  [[p.finish]]\n  add = 1\n\n  [[p.finish]]\n"
          "  add = 2\n\n# end of p\n\n[u]\n");
    CHECK(add("[[p]]\r\na=1\r\n", "p", table_of({{"a", number(2)}})) ==
          "[[p]]\r\na=1\r\n\r\n[[p]]\r\na=2\r\n");
    CHECK(add("[[p]]\n[[p.q]]\n[[p]]\n", "p[1].q", table_of({})) ==
          "[[p]]\n[[p.q]]\n\n[[p.q]]\n[[p]]\n");
    CHECK(add("[u]\na = 1\n\n# the end\n", "p", dish)
              .starts_with(
                  "[u]\na = 1\n\n# the end\n\n[[p]]\ndish = \"A\"\nin = 3\n\n[p.thaw]\nmethod ="));
}

TEST_CASE("with a table go the blank lines behind it, at the end of the file those before") {
    const std::string three = "[[p]]\na = 1\n\n\n[[p]]\na = 2\n\n\n\n[[p]]\na = 3\n\n";
    CHECK(remove(three, "p[1]") == "[[p]]\na = 2\n\n\n\n[[p]]\na = 3\n\n");
    CHECK(remove(three, "p[2]") == "[[p]]\na = 1\n\n\n[[p]]\na = 3\n\n");
    CHECK(remove(three, "p[3]") == "[[p]]\na = 1\n\n\n[[p]]\na = 2\n");
    CHECK(remove("[[p]]\na = 1\n", "p[1]") == "");
    CHECK(remove("# a\n# b\n[[p]]\n", "p[1]") == "");
    CHECK(remove("\n\n[[p]]\n", "p[1]") == "");
    CHECK(remove("b = 1\n[[p]]\n", "p[1]") == "b = 1\n");
}

TEST_CASE("remarks belong to the table below them, to that above, or to none") {
    const auto without_first = [](const std::string& between) {
        return remove("[[p]]\na = 1\n" + between + "[[p]]\na = 2\n", "p[1]");
    };
    const std::string second = "[[p]]\na = 2\n";
    CHECK(without_first("# of the second\n") == "# of the second\n" + second);
    CHECK(without_first("# of the first\n\n") == second);
    CHECK(without_first("# of the first\n# too\n\n") == second);
    CHECK(without_first("# of the first\n\n# of none\n\n") == "# of none\n\n" + second);
    CHECK(without_first("\n# of none\n# b = 1\n\n") == "# of none\n# b = 1\n\n" + second);
    CHECK(without_first("\n# b = 1\n# on b\n\n") == second);
    CHECK(without_first("\n# b = 1\n\n# c = 1\n\n") == second);
    CHECK(without_first("\n# of none\n\n# b = 1\n\n") == "# of none\n\n# b = 1\n\n" + second);
    CHECK(without_first("\n# b = 1\n# on b\n\n# of none\n\n") == "# of none\n\n" + second);
    for (const auto* sleeping : {"#b=1", "#  b  = 1", "##b = 1", "# b.c-d_9 = 1", "#\tb\t= 1",
                                 "# [p.q]", "#[[p.q]]", "  # b = 1"}) {
        CAPTURE(sleeping);
        CHECK(without_first("\n" + std::string{sleeping} + "\n\n") == second);
    }
    for (const std::string said :
         {"#", "# b", "# b c = 1", "# b: 1", "# = 1", "# b == 1!", "# (b = 1)", "# é = 1"}) {
        CAPTURE(said);
        const bool is_key = said == "# b == 1!";
        CHECK(without_first("\n" + said + "\n\n") == (is_key ? "" : said + "\n\n") + second);
    }
}

TEST_CASE("a table that others stand in between goes and is copied piece by piece, and stays put") {
    const std::string apart = "[[p]]\na = 1\n\n[day]\nb = 2\n\n[p.thaw]\nc = 3\n\n[[p]]\nd = 4\n";
    CHECK(remove(apart, "p[1]") == "[day]\nb = 2\n\n[[p]]\nd = 4\n");
    CHECK(copy(apart, "p[1]") ==
          "[[p]]\na = 1\n\n[day]\nb = 2\n\n[p.thaw]\nc = 3\n\n[[p]]\na = 1\n\n[p.thaw]\nc = 3\n\n"
          "[[p]]\nd = 4\n");
    const std::string refused = "refused: other tables stand between its own: move it in the text";
    CHECK(move(apart, "p[1]", 1) == refused);
    CHECK(move(apart, "p[2]", -1) == refused);
    CHECK(take_out(apart, "p[1].thaw") == "[[p]]\na = 1\n\n[day]\nb = 2\n\n[[p]]\nd = 4\n");
}

TEST_CASE("a table is moved past others, and what stands between stays") {
    const std::string text = "# one\n[[p]]\na = 1\n[p.q]\n\n# ----\n\n[[p]]\na = 2\n\n\n"
                             "[[p]]\na = 3\n# end\n";
    const auto moved = [&text](const char* path, int by) {
        return toml::edit(text, {{What::Move, KeyPath{path}, {}, by}}).value().text;
    };
    const std::string one = "# one\n[[p]]\na = 1\n[p.q]";
    const std::string two = "[[p]]\na = 2";
    const std::string three = "[[p]]\na = 3\n# end";
    const auto in_order = [](const std::string& x, const std::string& y, const std::string& z) {
        return x + "\n\n# ----\n\n" + y + "\n\n\n" + z + "\n";
    };
    REQUIRE(in_order(one, two, three) == text);
    CHECK(moved("p[1]", 1) == in_order(two, one, three));
    CHECK(moved("p[1]", 2) == in_order(two, three, one));
    CHECK(moved("p[2]", 1) == in_order(one, three, two));
    CHECK(moved("p[3]", -1) == in_order(one, three, two));
    CHECK(moved("p[3]", -2) == in_order(three, one, two));
    CHECK(moved("p[2]", 0) == text);
    CHECK(move(text, "p[3]", 1) == "refused: there is no place so far up or down");
    CHECK(move(text, "p[1]", -1) == "refused: there is no place so far up or down");
}

TEST_CASE("headers are found however they are written") {
    CHECK(remove("[[ p ]]\na = 1\n\n[[p . \"q\"]]\nb = 1\n\n[[ p ]]\n", "p[1]") == "[[ p ]]\n");
    CHECK(take_out("[ t . u ] # x\na = 1\n[t.\"v]\"]\n", "t.u") == "[t.\"v]\"]\n");
    CHECK(set("[ t . u ]\na = 1\n", "t.b", number(2)) == "[t]\nb = 2\n\n[ t . u ]\na = 1\n");
    CHECK(set("[ t ]\na = 1\n", "t.b", number(2)) == "[ t ]\na = 1\nb = 2\n");
    // What looks like a header or a remark in a text is neither.
    CHECK(remove("[[p]]\na = '''\n[[p]]\n# b\n'''\n\n[[p]]\n", "p[1]") == "[[p]]\n");
    CHECK(take_out("[t]\na = [\n[1],\n]\n\n[u]\n", "t") == "[u]\n");
}

} // namespace edit_elements_test
