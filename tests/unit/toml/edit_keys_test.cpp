// Where a key goes that is set, how it stands there, and what goes with one that is taken out.

#include "unit/toml/edited.h"

#include <string>

namespace edit_keys_test {

using namespace thawslip;
using namespace thawslip::toml_test;
using test_support::list_of_values;
using test_support::text_value;

TEST_CASE("a key of the file itself stands behind the last of those, above all tables") {
    const auto with_b = [](const std::string& text) { return set(text, "b", number(2)); };
    CHECK(with_b("") == "b = 2\n");
    CHECK(with_b("# crew\n") == "b = 2\n# crew\n");
    CHECK(with_b("a = 1\n") == "a = 1\nb = 2\n");
    CHECK(with_b("a = [\n  1,\n]\n") == "a = [\n  1,\n]\nb = 2\n");
    CHECK(with_b("a = 1\n# crew\n\n[t]\nx = 1\n") == "a = 1\nb = 2\n# crew\n\n[t]\nx = 1\n");
    CHECK(with_b("[t]\nx = 1\n") == "b = 2\n\n[t]\nx = 1\n");
    CHECK(with_b("# of t\n[t]\nx = 1\n") == "b = 2\n\n# of t\n[t]\nx = 1\n");
    CHECK(with_b("# crew\n\n# of t\n# too\n[t]\n") == "# crew\n\nb = 2\n\n# of t\n# too\n[t]\n");
    CHECK(with_b("\r\n[t]\r\nx = 1\r\n") == "\r\nb = 2\r\n\r\n[t]\r\nx = 1\r\n");
}

TEST_CASE("a key stands as the keys of its table do") {
    const auto with_key = [](const char* key, const std::string& text) {
        return set("[t]\n" + text, (std::string{"t."} + key).c_str(), number(2)).substr(4);
    };
    CHECK(with_key("b", "a = 1\n") == "a = 1\nb = 2\n");
    CHECK(with_key("b", "a=1\n") == "a=1\nb=2\n");
    CHECK(with_key("b", "a =1\n") == "a =1\nb =2\n");
    CHECK(with_key("b", "a= 1\n") == "a= 1\nb= 2\n");
    CHECK(with_key("b", "a\t=\t1\n") == "a\t=\t1\nb\t=\t2\n");
    CHECK(with_key("b", "a =   1\n") == "a =   1\nb =   2\n");
    CHECK(with_key("b", "  a = 1\n") == "  a = 1\n  b = 2\n");
    CHECK(with_key("b", "\ta = 1\n") == "\ta = 1\n\tb = 2\n");
    CHECK(with_key("b", "  a = 1\nc = 1\n") == "  a = 1\nc = 1\nb = 2\n"); // as the last
    CHECK(with_key("b", "a = 1\nc=1\n") == "a = 1\nc=1\nb=2\n");
    // With the signs below each other: a sign in the column of the others, or behind its key.
    CHECK(with_key("b", "a    = 1\n") == "a    = 1\nb    = 2\n");
    CHECK(with_key("abc", "a    = 1\n") == "a    = 1\nabc  = 2\n");
    CHECK(with_key("abcd", "a    = 1\n") == "a    = 1\nabcd = 2\n");
    CHECK(with_key("abcde", "a    = 1\n") == "a    = 1\nabcde = 2\n");
    CHECK(with_key("abcdef", "a    = 1\n") == "a    = 1\nabcdef = 2\n");
    CHECK(with_key("b", "a  = 1\n") == "a  = 1\nb  = 2\n");
    CHECK(with_key("b", "  a    = 1\n") == "  a    = 1\n  b    = 2\n");
    CHECK(with_key("b", "a    = 1\nlonger = 1\n") == "a    = 1\nlonger = 1\nb    = 2\n");
    CHECK(with_key("b", "a    = 1\nlonger  = 1\n") == "a    = 1\nlonger  = 1\nb       = 2\n");
    // The sign is the first that stands in no quotes.
    CHECK(with_key("b", "\"a=c\"  = 1\n") == "\"a=c\"  = 1\nb      = 2\n");
    CHECK(with_key("b", "'a=c'  = 1\n") == "'a=c'  = 1\nb      = 2\n");
    CHECK(with_key("b", "\"a\\\"=\"  = 1\n") == "\"a\\\"=\"  = 1\nb       = 2\n");
    CHECK(with_key("b", "'a\\'  = 1\n") == "'a\\'  = 1\nb     = 2\n");
    CHECK(with_key("b", "a  = \"c = d\"\n") == "a  = \"c = d\"\nb  = 2\n");
    // What goes on over lines is not looked at.
    CHECK(with_key("b", "a = '''\n  c    = 1\n'''\n") == "a = '''\n  c    = 1\n'''\nb = 2\n");
    CHECK(with_key("b", "a = 1\n\n# c   = 1\n") == "a = 1\nb = 2\n\n# c   = 1\n");
}

TEST_CASE("the first key of a table stands below its header, as far in as that") {
    CHECK(set("[t]\n\n[u]\n", "t.a", number(1)) == "[t]\na = 1\n\n[u]\n");
    CHECK(set("  [t]\n[u]\n", "t.a", number(1)) == "  [t]\n  a = 1\n[u]\n");
    CHECK(set("[t] # of t", "t.a", number(1)) == "[t] # of t\na = 1");
}

TEST_CASE("a key of a table that dots make is written with the same names in front") {
    CHECK(set("a.b.c = 1\nx = 2\n", "a.b.d", number(3)) == "a.b.c = 1\na.b.d = 3\nx = 2\n");
    CHECK(set("a.b.c = 1\n", "a.x", number(3)) == "a.b.c = 1\na.x = 3\n");
    CHECK(set("a . b = 1\n", "a.x", number(3)) == "a . b = 1\na . x = 3\n");
    CHECK(set("  a.b  = 1\n", "a.x", number(3)) == "  a.b  = 1\n  a.x  = 3\n");
    CHECK(set("a.b = [\n  1,\n]\nx = 2\n", "a.c", number(3)) ==
          "a.b = [\n  1,\n]\na.c = 3\nx = 2\n");
    CHECK(set("a.b = 1\nx = 2\na.c = 3\ny = 4\n", "a.d", number(5)) ==
          "a.b = 1\nx = 2\na.c = 3\na.d = 5\ny = 4\n");
    CHECK(set("[t]\na.b = 1\n", "t.a.c.d", number(2)) == "[t]\na.b = 1\na.c = {d = 2}\n");
    // In braces.
    CHECK(set("t = {a.b = 1}\n", "t.a.c", number(2)) == "t = {a.b = 1, a.c = 2}\n");
    CHECK(set("t = { x = 0, a.b = 1, y = 2 }\n", "t.a.c", number(2)) ==
          "t = { x = 0, a.b = 1, a.c = 2, y = 2 }\n");
    CHECK(set("t = [{a.b.c = 1}]\n", "t[1].a.d", number(2)) == "t = [{a.b.c = 1, a.d = 2}]\n");
    CHECK(set("t = {a.b = {c = 1}}\n", "t.d", number(2)) == "t = {a.b = {c = 1}, d = 2}\n");
    CHECK(set("t = {x = 9, a.b.c = 1}\n", "t.d", number(2)) == "t = {x = 9, a.b.c = 1, d = 2}\n");
}

TEST_CASE("a table that only those below it name is given a header above the first of them") {
    CHECK(set("[x]\n\n# of b\n[a.b]\ny = 1\n\n[a.c]\n", "a.z", number(2)) ==
          "[x]\n\n[a]\nz = 2\n\n# of b\n[a.b]\ny = 1\n\n[a.c]\n");
    CHECK(set("[a.b]\ny = 1\n\n[x]\n", "a.c.z", number(2)) ==
          "[a.b]\ny = 1\n\n[a.c]\nz = 2\n\n[x]\n");
    CHECK(set("[a.\"b c\".d]\ny = 1\n", "a.\"b c\".z", number(2)) ==
          "[a.\"b c\"]\nz = 2\n\n[a.\"b c\".d]\ny = 1\n");
}

TEST_CASE("a new table stands behind the keys of its own, those of the file before all others") {
    CHECK(set("a = 1\n\n# the end\n", "t.x", number(2)) == "a = 1\n\n# the end\n\n[t]\nx = 2\n");
    CHECK(set("\n\n", "t.x", number(2)) == "[t]\nx = 2\n\n\n");
    CHECK(set("a = 1\n\n# of u\n[u]\n", "t.x", number(2)) ==
          "a = 1\n\n[t]\nx = 2\n\n# of u\n[u]\n");
    CHECK(set("[u]\na = 1\n# b = 2\n\n[u.v]\n", "u.t.x", number(2)) ==
          "[u]\na = 1\n# b = 2\n\n[u.t]\nx = 2\n\n[u.v]\n");
    CHECK(set("[[p]]\na = 1\n\n[[p]]\nb = 2\n", "p[1].t.x.y", number(2)) ==
          "[[p]]\na = 1\n\n[p.t]\n\n[p.t.x]\ny = 2\n\n[[p]]\nb = 2\n");
    CHECK(set("[[p]]\na = 1\n\n[p.q]\nc = 1\n\n[[p]]\nb = 2\n", "p[1].r[1].x", number(2)) ==
          "[[p]]\na = 1\n\n[p.q]\nc = 1\n\n[[p.r]]\nx = 2\n\n[[p]]\nb = 2\n");
    CHECK(set("[u]\na = 1\n", "t[1].x", number(2)) == "[u]\na = 1\n\n[[t]]\nx = 2\n");
    CHECK(set("[u]\r\na = 1\r\n", "u.t.x", number(2)) == "[u]\r\na = 1\r\n\r\n[u.t]\r\nx = 2\r\n");
}

TEST_CASE("a key one behind the last of a list makes an element, and none further on") {
    CHECK(set("[[p]]\na = 1\n", "p[2].a", number(2)) == "[[p]]\na = 1\n\n[[p]]\na = 2\n");
    CHECK(set("c = [1]\n", "c[2]", number(2)) == "c = [1, 2]\n");
    CHECK(set("c = [1]\n", "c[1]", number(2)) == "c = [2]\n");
    CHECK(set("", "p[1].a", number(2)) == "[[p]]\na = 2\n");
    CHECK(set("c = [1]\n", "c[3]", number(2)) == "refused: there is no \"c\" to be set");
    CHECK(set("[[p]]\na = 1\n", "p[3].a", number(2)) == "refused: there is no \"p.a\" to be set");
    CHECK(set("", "p[2].a", number(2)) == "refused: there is no \"p.a\" to be set");
    CHECK(set("[[p]]\na = 1\n", "p.a", number(2)) == "refused: there is no \"p.a\" to be set");
    CHECK(set("a = 1\n", "a.b", number(2)) == "refused: there is no \"a.b\" to be set");
    CHECK(set("[t]\na = 1\n", "t[1].b", number(2)) == "refused: there is no \"t.b\" to be set");
}

TEST_CASE("a key that differs by letter case alone is the one that is meant") {
    const auto edited = [](const std::string& text, const toml::Edit& edit) {
        const auto result = toml::edit(text, {edit});
        return result ? result.value().text : result.fault();
    };
    const auto set_to_2 = [&](const std::string& text, const char* path) {
        return edited(text, {What::Set, KeyPath{path}, number(2)});
    };
    CHECK(set_to_2("[Day]\nMade = 1\n", "day.made") == "[Day]\nMade = 2\n");
    CHECK(set_to_2("[Day]\nMade = 1\n", "day.x") == "[Day]\nMade = 1\nx = 2\n");
    CHECK(set_to_2("[[Pot]]\na = 1\n", "pot[1].thaw.time") ==
          "[[Pot]]\na = 1\n\n[Pot.thaw]\ntime = 2\n");
    CHECK(edited("[Day]\nMade = 1\nb = 2\n", {What::TakeOut, KeyPath{"day.made"}}) ==
          "[Day]\nb = 2\n");
}

TEST_CASE("a text keeps its quotes where they can hold it") {
    const auto with_text = [](const char* before, const char* text) {
        return set("a = " + std::string{before} + "\n", "a", text_value(text)).substr(4);
    };
    CHECK(with_text("'x'", "y") == "'y'\n");
    CHECK(with_text("'x'", "back\\slash \"y\"") == "'back\\slash \"y\"'\n");
    CHECK(with_text("'x'", "it's") == "\"it's\"\n");
    CHECK(with_text("'x'", "a\tb") == "\"a\\u0009b\"\n");
    CHECK(with_text("'x'", "a\x1F"
                           "b") == "\"a\\u001Fb\"\n");
    CHECK(with_text("'x'", "a\x7F"
                           "b") == "\"a\\u007Fb\"\n");
    CHECK(with_text("'x'", "a b~é") == "'a b~é'\n");
    CHECK(with_text("\"x\"", "y") == "\"y\"\n");
    CHECK(with_text("'''x'''", "y") == "\"y\"\n");
    CHECK(with_text("'x'", "a\nb") == "\"\"\"\na\nb\"\"\"\n");
    CHECK(set("a = 'x'\n", "a", number(2)) == "a = 2\n");
    CHECK(set("a = 'x'\n", "a", {true, {}}) == "a = true\n");
    CHECK(set("a = 1\n", "a", text_value("x")) == "a = \"x\"\n");
    // Where there is one line alone, its end is escaped.
    CHECK(set("t = {a = 'x'}\n", "t.a", text_value("a\nb")) == "t = {a = \"a\\nb\"}\n");
    CHECK(set("a = ['x']\n", "a[1]", text_value("a\nb")) == "a = [\"a\\nb\"]\n");
    CHECK(set("t = {b = 1}\n", "t.a", text_value("a\nb")) == "t = {b = 1, a = \"a\\nb\"}\n");
}

TEST_CASE("a list that goes beyond column 100 has a line for each element") {
    // "a = [" to "]" is 100 columns wide with a first text of 88 characters.
    const auto list = [](std::size_t length) {
        return list_of_values({text_value(std::string(length, 'x')), number(2)});
    };
    const auto in_a_line = [](std::size_t length) {
        return "a = [\"" + std::string(length, 'x') + "\", 2]\n";
    };
    const auto in_lines = [](std::size_t length) {
        return "a = [\n    \"" + std::string(length, 'x') + "\",\n    2,\n]\n";
    };
    REQUIRE(in_a_line(89).size() == 101); // with the line's end
    CHECK(set("", "a", list(89)) == in_a_line(89));
    CHECK(set("", "a", list(90)) == in_lines(90));
    CHECK(set("a = 1\n", "a", list(89)) == in_a_line(89));
    CHECK(set("a = 1\n", "a", list(90)) == in_lines(90));
    CHECK(set("a = []\n", "a", list(89)) == in_a_line(89));
    CHECK(set("a = []\n", "a", list(90)) == in_lines(90));
    // One element would be as long in a line of its own, and braces have one line alone.
    const auto alone = list_of_values({text_value(std::string(120, 'x'))});
    CHECK(set("", "a", alone) == "a = [\"" + std::string(120, 'x') + "\"]\n");
    CHECK(set("t = {a = 1}\n", "t.a", list(90)) ==
          "t = {a = [\"" + std::string(90, 'x') + "\", 2]}\n");
    CHECK(set("\r\n", "a", list(90)).find("a = [\r\n    \"x") == 0);
}

TEST_CASE("a key that is taken out goes with all its lines") {
    CHECK(take_out("a = 1\nb = [\n  1,\n]  # of b\nc = 1\n", "b") == "a = 1\nc = 1\n");
    CHECK(take_out("a = 1\nb = 2", "b") == "a = 1\n");
    CHECK(take_out("a = 1\n# of b\nb = 2\n\nc = 3\n", "b") == "a = 1\n# of b\n\nc = 3\n");
    CHECK(take_out("a = 1\nb =\nc = 3\n", "b") == "a = 1\nc = 3\n");
    CHECK(take_out("a.b = 1\nx = 2\na.c.d = 3\n", "a") == "x = 2\n");
    CHECK(take_out("[t]\na.b = 1\n\n[t.a.c]\nd = 2\n\n[u]\n", "t.a") == "[t]\n\n[u]\n");
    CHECK(take_out("[a.b]\nx = 1\n\n[u]\n\n[a.c]\ny = 1\n", "a") == "[u]\n");
    CHECK(take_out("[[p]]\nx = 1\n\n[u]\n\n[[p]]\ny = 1\n", "p") == "[u]\n");
    CHECK(take_out("a = 1\n", "a.b") == "a = 1\n");
    CHECK(take_out("[[p]]\na = 1\n", "p[2].a") == "[[p]]\na = 1\n");
}

TEST_CASE("a key that is taken out of braces goes with one comma") {
    CHECK(take_out("t = { a = 1 }\n", "t.a") == "t = {}\n");
    CHECK(take_out("t = { a = 1, b = 2, c = 3 }\n", "t.a") == "t = { b = 2, c = 3 }\n");
    CHECK(take_out("t = { a = 1, b = 2, c = 3 }\n", "t.b") == "t = { a = 1, c = 3 }\n");
    CHECK(take_out("t = { a = 1, b = 2, c = 3 }\n", "t.c") == "t = { a = 1, b = 2 }\n");
    CHECK(take_out("t = {a=1\t,\tb=2}\n", "t.a") == "t = {b=2}\n");
    CHECK(take_out("t = [{a = 1, b = 2}, 3]\n", "t[1].b") == "t = [{a = 1}, 3]\n");
    CHECK(take_out("t = {a.b = 1, a.c = 2}\n", "t.a.b") == "t = {a.c = 2}\n");
    CHECK(take_out("t = {a.b = 1, c = 2}\n", "t.a") ==
          "refused: a table inside of braces is taken out key by key");
}

TEST_CASE("an edit is refused where a mistake of the text would let it change something else") {
    const std::string refused = "refused: \"a\" cannot be changed as the text is written there: "
                                "change the text itself";
    // The list goes on to the next key, whose line would be lost with it.
    CHECK(set("a = [1\nb = 2\n", "a", number(5)) == refused);
    CHECK(take_out("a = [1\nb = 2\n", "a") == refused);
    CHECK(take_out("a = 1\na = 2\n", "a") == refused);
    for (const std::string more : {"", "[[p]]\nc = 3\n"}) { // in the last of a list, and before it
        CAPTURE(more);
        CHECK(take_out("[[p]]\na = [1\nb = 2\n" + more, "p[1].a")
                  .starts_with("refused: \"p[1].a\" cannot be changed"));
    }
    CHECK(set("a = 1\na = 2\n", "a", number(5)) == "a = 5\na = 2\n");
    const std::string lost = "refused: the text has a line that belongs to no key: correct that "
                             "first";
    CHECK(set("a = 1\nb\n", "a", number(5)) == lost);
    CHECK(set("[t\na = 1\n", "a", number(5)) == lost);
    // Mistakes elsewhere do not hinder.
    CHECK(set("a = 1\nb = x\nc = [1\n", "a", number(5)) == "a = 5\nb = x\nc = [1\n");
    CHECK(take_out("a = x\nb = y\n", "a") == "b = y\n");
}

TEST_CASE("what is refused is told by what stands there") {
    CHECK(set("", "a[", number(1)) == "refused: \"a[\" is no path of keys");
    CHECK(set("[t]\n", "t", number(1)) == "refused: \"t\" is a table: set its keys");
    CHECK(set("[[t]]\n", "t[1]", number(1)) == "refused: \"t\" is a table: set its keys");
    CHECK(set("a.b = 1\n", "a", number(1)) == "refused: \"a\" is a table: set its keys");
    CHECK(set("t = {a = 1}\n", "t", number(1)) == "t = 1\n"); // a value, by how it is written
    CHECK(add("a = 1\n", "a", number(1)) == "refused: \"a\" is no list");
    CHECK(add("[[t]]\n", "t", number(1)) == "refused: \"t\" is a list of tables");
    CHECK(remove("a = [1]\n", "a") == "refused: there is no \"a\"");
    CHECK(remove("a = [1]\n", "a[2]") == "refused: there is no \"a[2]\"");
    CHECK(copy("[t]\n", "t") == "refused: there is no \"t\"");
    CHECK(move("a = [1]\n", "a[1].b", 1) == "refused: there is no \"a[1].b\"");
}

} // namespace edit_keys_test
