// Numbers, truths, dates and times, and how each is written again. What is read as what: TOML
// v1.0.0 (toml.io/en/v1.0.0, 2021), "Integer" to "Local Time", whose examples these are, beside
// those at the ends of each range.

#include "toml/document.h"
#include "toml/literal.h"

#include <cmath>
#include <cstdint>
#include <doctest/doctest.h>
#include <limits>
#include <string>

namespace value_test {

using namespace thawslip;
using std::chrono::year;

namespace {

/// What stands behind the sign of `a = …`; Unreadable where it is no value.
toml::Content content_of(const std::string& word) {
    Diagnostics faults;
    const auto document = toml::parse("a = " + word + "\n", "x.toml", faults);
    const auto* value = toml::member(document.root(), "a");
    REQUIRE(value != nullptr);
    CHECK(faults.empty() != std::holds_alternative<toml::Unreadable>(value->content));
    return value->content;
}

toml::Value value_of(const std::string& word) {
    return {content_of(word), {}};
}

} // namespace

TEST_CASE("a whole number is read in each of its spellings, to the ends of 64 bits") {
    const struct {
        const char* written;
        std::int64_t number;
    } cases[] = {
        {"+99", 99},
        {"42", 42},
        {"0", 0},
        {"+0", 0},
        {"-0", 0},
        {"-17", -17},
        {"1_000", 1'000},
        {"5_349_221", 5'349'221},
        {"53_49_221", 5'349'221},
        {"1_2_3_4_5", 12'345},
        {"0xDEADBEEF", 0xDEADBEEF},
        {"0xdeadbeef", 0xDEADBEEF},
        {"0xdead_beef", 0xDEADBEEF},
        {"0x00", 0},
        {"0o01234567", 01234567},
        {"0o755", 0755},
        {"0b11010110", 214},
        {"9223372036854775807", std::numeric_limits<std::int64_t>::max()},
        {"-9223372036854775808", std::numeric_limits<std::int64_t>::min()},
        {"0x7FFFFFFFFFFFFFFF", std::numeric_limits<std::int64_t>::max()},
    };
    for (const auto& c : cases) {
        CAPTURE(c.written);
        const auto content = content_of(c.written);
        REQUIRE(std::holds_alternative<std::int64_t>(content));
        CHECK(std::get<std::int64_t>(content) == c.number);
    }
}

TEST_CASE("a real number is read in each of its spellings") {
    constexpr double infinity = std::numeric_limits<double>::infinity();
    const struct {
        const char* written;
        double number;
    } cases[] = {{"+1.0", 1.0},
                 {"3.1415", 3.1415},
                 {"-0.01", -0.01},
                 {"5e+22", 5e22},
                 {"1e06", 1e6},
                 {"-2E-2", -0.02},
                 {"0e0", 0.0},
                 {"6.626e-34", 6.626e-34},
                 {"224_617.445_991_228", 224617.445991228},
                 {"1_0e1_0", 10e10},
                 {"inf", infinity},
                 {"+inf", infinity},
                 {"-inf", -infinity}};
    for (const auto& c : cases) {
        CAPTURE(c.written);
        const auto content = content_of(c.written);
        REQUIRE(std::holds_alternative<double>(content));
        CHECK(std::get<double>(content) == c.number);
    }
    for (const auto* nan : {"nan", "+nan", "-nan"}) {
        CAPTURE(nan);
        CHECK(std::isnan(std::get<double>(content_of(nan))));
    }
    CHECK(std::signbit(std::get<double>(content_of("-0.0"))));
}

TEST_CASE("a truth, a date, a time and a date with a time are told apart") {
    CHECK(std::get<bool>(content_of("true")));
    CHECK_FALSE(std::get<bool>(content_of("false")));
    const struct {
        const char* written;
        toml::Date date;
    } dates[] = {{"0001-02-03", year{1} / 2 / 3},
                 {"1979-05-27", year{1979} / 5 / 27},
                 {"2028-02-29", year{2028} / 2 / 29},
                 {"9999-12-31", year{9999} / 12 / 31}};
    for (const auto& c : dates) {
        CAPTURE(c.written);
        CHECK(std::get<toml::Date>(content_of(c.written)) == c.date);
    }
    for (const auto* time : {"00:00:00", "23:59:59", "07:32:00", "00:32:00.999999", "09:10:11.0"}) {
        CAPTURE(time);
        CHECK(std::get<toml::OtherTime>(content_of(time)).kind == "time of day");
    }
    for (const auto* moment :
         {"1979-05-27T07:32:00Z", "1979-05-27t07:32:00z", "1979-05-27 07:32:00Z",
          "1979-05-27T00:32:00-07:00", "1979-05-27T00:32:00.999999-07:00",
          "1979-05-27T07:32:00+00:00", "1979-05-27T07:32:00+23:59", "1979-05-27T07:32:00",
          "1979-05-27T23:59:59.5"}) {
        CAPTURE(moment);
        CHECK(std::get<toml::OtherTime>(content_of(moment)).kind == "date with a time");
    }
}

TEST_CASE("what is almost a number, a truth, a date or a time is none") {
    for (const auto* word : {"0x_1",
                             "0x1_",
                             "0x1__2",
                             "0o8",
                             "0b12",
                             "0xfg",
                             "-0x1",
                             "0X1",
                             "0x8000000000000000",
                             "-9223372036854775809",
                             "1_.5",
                             "1._5",
                             "1.5_",
                             "1e_5",
                             "1e5_",
                             "1e",
                             "1e+",
                             "1e+-5",
                             "00",
                             "-01",
                             "01.5",
                             "1.",
                             "1.e5",
                             ".5",
                             "+.5",
                             "1e5.5",
                             "1.2.3",
                             "+",
                             "-",
                             "++1",
                             "+-1",
                             "-+1",
                             "1-",
                             "1x",
                             "+true",
                             "truefalse",
                             "infinity",
                             "nan1",
                             "24:00:00",
                             "23:60:00",
                             "23:59:60",
                             "7:32:00",
                             "07:3:00",
                             "07:32:0",
                             "07:32:00.",
                             "07:32:00.x",
                             "07:32:00.5x",
                             "07:32:00Z",
                             "07:32",
                             "07-32-00",
                             "1979-5-27",
                             "1979-05-2",
                             "1979/05/27",
                             "1979-05-27T",
                             "1979-05-27Z",
                             "1979-05-27x07:32:00",
                             "1979-05-27T24:00:00",
                             "1979-05-27T07:32:00ZZ",
                             "1979-05-27T07:32:00+24:00",
                             "1979-05-27T07:32:00+07:60",
                             "1979-05-27T07:32:00+07",
                             "1979-05-27T07:32:00x07:00",
                             "1979-05-27T07:32:00-07:00x",
                             "1979-02-29T07:32:00",
                             "1979-00-10",
                             "1979-13-10",
                             "1979-04-31",
                             "1979-05-32"}) {
        CAPTURE(word);
        CHECK(std::holds_alternative<toml::Unreadable>(content_of(word)));
    }
}

TEST_CASE("a value is written so that it is read as the same") {
    const struct {
        const char* written;
        const char* literal;
    } cases[] = {
        {"1_000", "1000"},
        {"-0x", "\"\""}, // what could not be read
        {"-7", "-7"},
        {"2.50", "2.5"},
        {"3e0", "3.0"}, // not a whole number
        {"1e30", "1e+30"},
        {"-0.0", "-0.0"},
        {"nan", "nan"},
        {"inf", "inf"},
        {"-inf", "-inf"},
        {"true", "true"},
        {"false", "false"},
        {"0901-02-03", "0901-02-03"},
        {"07:30:00", "\"\""}, // no value of ours
        {"'plum'", "\"plum\""},
        {"'say \"plum\" \\ pear'", R"("say \"plum\" \\ pear")"},
        {"\"\"\"\na\nb\"\"\"", R"("a\nb")"},
        {"\"\\u0001\\u001f \\u007f\\t~\u0080é\"", "\"\\u0001\\u001F \\u007F\\u0009~\u0080é\""},
        {"[ 1,2 , [] ]", "[1, 2, []]"},
        {"{a=1,\"b c\"={},\"\"=[{d.e=2}]}", R"({a = 1, "b c" = {}, "" = [{d = {e = 2}}]})"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.written);
        const auto value = value_of(c.written);
        CHECK(toml::literal_of(value) == c.literal);
        if (c.literal != std::string{"\"\""}) {
            CHECK(toml::is_same(value, value_of(c.literal)));
        }
    }
}

TEST_CASE("a key is bare where TOML lets it be") {
    for (const auto* key : {"azAZ09_-", "7", "-", "_"}) {
        CHECK(toml::key_literal(key) == key);
    }
    CHECK(toml::key_literal("") == "\"\"");
    CHECK(toml::key_literal("a.b") == "\"a.b\"");
    CHECK(toml::key_literal("pâté") == "\"pâté\"");
    CHECK(toml::key_literal("a\"b\n") == R"("a\"b\n")");
    CHECK(toml::key_literal(std::string(50, 'a')) == std::string(50, 'a'));
    CHECK(toml::escaped("a\nb\t\"", true) == "a\nb\\u0009\\\"");
}

TEST_CASE("values are the same where they say the same, wherever they stand") {
    const struct {
        const char* one;
        const char* other;
    } alike[] = {{"1", "0x1"},           {"1.50", "15e-1"},
                 {"nan", "-nan"},        {"'a'", "\"a\""},
                 {"true", "true"},       {"2026-10-17", "2026-10-17"},
                 {"[1,2]", "[ 1, 2, ]"}, {"{a = 1, b = 2}", "{b = 2, a = 1}"}};
    for (const auto& c : alike) {
        CAPTURE(c.one);
        CHECK(toml::is_same(value_of(c.one), value_of(c.other)));
        CHECK(toml::is_same(value_of(c.other), value_of(c.one)));
    }
    const char* all[] = {"1",
                         "2",
                         "1.0",
                         "1.5",
                         "nan",
                         "'1'",
                         "''",
                         "true",
                         "false",
                         "2026-10-17",
                         "2026-10-18",
                         "07:30:00",
                         "2026-10-17T07:30:00",
                         "[]",
                         "[1]",
                         "[2]",
                         "[1, 2]",
                         "[2, 1]",
                         "{}",
                         "{a = 1}",
                         "{a = 2}",
                         "{b = 1}",
                         "{a = 1, b = 1}"};
    for (const auto* one : all) {
        for (const auto* other : all) {
            CAPTURE(one);
            CAPTURE(other);
            CHECK(toml::is_same(value_of(one), value_of(other)) == (one == other));
        }
    }
    const toml::Value lost{toml::Unreadable{}, {}};
    CHECK(toml::is_same(lost, lost));
    CHECK_FALSE(toml::is_same(lost, value_of("''")));
}

} // namespace value_test
