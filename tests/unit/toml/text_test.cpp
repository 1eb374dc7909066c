// Texts: what stands between quotes, and what is told where it may not stand there. TOML v1.0.0
// (toml.io/en/v1.0.0, 2021), "String" and "Comment".

#include "toml/document.h"

#include <doctest/doctest.h>
#include <string>

namespace text_test {

using namespace thawslip;

namespace {

/// The text behind the sign of `a = …`; where there are mistakes, the first.
std::string text_of(const std::string& written) {
    Diagnostics faults;
    const auto document = toml::parse("a = " + written + "\nb = 1\n", "x.toml", faults);
    if (!faults.empty()) {
        return "told: " + faults.front().message;
    }
    CHECK(toml::member(document.root(), "b") != nullptr);
    return std::get<std::string>(toml::member(document.root(), "a")->content);
}

} // namespace

TEST_CASE("a text in one line is read with its escapes, or as it stands") {
    CHECK(text_of(R"("")") == "");
    CHECK(text_of(R"('')") == "");
    CHECK(text_of(R"("a # b = [c]")") == "a # b = [c]");
    CHECK(text_of(R"("it's")") == "it's");
    CHECK(text_of(R"('"a" \b')") == R"("a" \b)");
    CHECK(text_of(R"("\b\t\n\f\r\"\\")") == "\b\t\n\f\r\"\\");
    CHECK(text_of("\"a\tb\"") == "a\tb");
    CHECK(text_of(R"("\u00e9\u00E9\U0001F372")") == "éé🍲");
    CHECK(text_of(R"("\u0041b")") == "Ab"); // four digits and no more
    CHECK(text_of(R"("\U000000410")") == "A0");
    CHECK(text_of(R"("\uD7FF\uE000\U0010FFFF")") == "\uD7FF\uE000\U0010FFFF");
    CHECK(text_of(R"("\u0000")") == std::string(1, '\0'));
    for (const auto* no_character :
         {"\\uD800", "\\uDFFF", "\\U0000D800", "\\U0000DFFF", "\\U00110000", "\\UFFFFFFFF", "\\u12",
          "\\u12G", "\\u", "\\U0001F37"}) {
        CAPTURE(no_character);
        CHECK(text_of("\"" + std::string{no_character} + "\"").find("is no character of Unicode") !=
              std::string::npos);
    }
}

TEST_CASE("a text over several lines is read from behind its first line end") {
    CHECK(text_of("\"\"\"\"\"\"") == "");
    CHECK(text_of("''''''") == "");
    CHECK(text_of("\"\"\"a\"\"\"") == "a");
    CHECK(text_of("\"\"\"\na\nb\n\"\"\"") == "a\nb\n");
    CHECK(text_of("\"\"\"\n\na\"\"\"") == "\na");
    CHECK(text_of("\"\"\"\r\na\r\nb\"\"\"") == "a\nb");
    CHECK(text_of("'''\na\\\nb'''") == "a\\\nb");
    CHECK(text_of("'''\r\na'''") == "a");
    CHECK(text_of("\"\"\"a\\tb\\u0041\"\"\"") == "a\tbA");
}

TEST_CASE("a backslash at a line's end takes all blanks and line ends behind it away") {
    CHECK(text_of("\"\"\"a\\\nb\"\"\"") == "ab");
    CHECK(text_of("\"\"\"a \\\n  b\"\"\"") == "a b");
    CHECK(text_of("\"\"\"a\\  \t\n\n \t \r\n  b\"\"\"") == "ab");
    CHECK(text_of("\"\"\"\\\n\"\"\"") == "");
    CHECK(text_of("\"\"\"a\\\\\nb\"\"\"") == "a\\\nb"); // an escaped one does not
    CHECK(text_of("\"\"\"a\\ b\"\"\"") == "told: \"\\ \" is no escape of TOML");
    CHECK(text_of("\"a\\ \"").starts_with("told: \"\\ \" is no escape"));
    CHECK(text_of("\"a\\").starts_with("told: the text that begins here is not closed"));
    CHECK(text_of("\"\"\"a\\\n").starts_with("told: the text that begins here is not closed"));
}

TEST_CASE("up to two quotes may stand anywhere in a text of several lines, before its end too") {
    for (const std::string quote : {"\"", "'"}) {
        const auto triple = quote + quote + quote;
        const auto other = quote == "'" ? "\"\"\"" : "'''";
        CAPTURE(quote);
        for (const auto& inside :
             {std::string{"a"}, quote + "a", quote + quote + "a", "a" + quote, "a" + quote + quote,
              "a" + quote + "b" + quote + quote + "c", std::string{other}, quote, quote + quote}) {
            CAPTURE(inside);
            CHECK(text_of(triple + inside + triple) == inside);
        }
        CHECK(text_of(triple + triple + quote + quote) == quote + quote);
        CHECK(text_of(triple + "a" + triple + triple) ==
              "told: the text has ended, but more follows in its line");
    }
}

TEST_CASE("a control character but the tab stands in no text and no remark") {
    for (int c = 1; c <= 0x7F; ++c) {
        if (c == '\n' || c == '\r' || (c >= 0x20 && c < 0x7F)) {
            continue;
        }
        const std::string control(1, static_cast<char>(c));
        CAPTURE(c);
        const bool is_tab = c == '\t';
        for (const auto& written : {"'" + control + "'", "\"" + control + "\"",
                                    "'''\n" + control + "'''", "\"\"\"" + control + "\"\"\""}) {
            CHECK(text_of(written).starts_with("told: the control character U+00") != is_tab);
        }
        CHECK(text_of("'' #" + control).starts_with("told: the control character U+00") != is_tab);
        CHECK(text_of("'' # a" + control + "b").starts_with("told: the control char") != is_tab);
    }
    CHECK(text_of("'\x1F'") == "told: the control character U+001F is not allowed in TOML");
    CHECK(text_of("'\x7F'") == "told: the control character U+007F is not allowed in TOML");
    CHECK(text_of("' ~\xC2\x80'") == " ~\xC2\x80"); // of C1 TOML 1.0 says nothing
}

TEST_CASE("a text that is left open ends with its line, or the next where its quote stands there") {
    const auto told = [](const std::string& text) {
        Diagnostics faults;
        const auto document = toml::parse(text, "x.toml", faults);
        std::string all;
        for (const auto& fault : faults) {
            all += std::to_string(fault.where.line) + ":" + std::to_string(fault.where.column) +
                   "+" + std::to_string(fault.where.length) + " ";
        }
        const auto* b = toml::member(document.root(), "b");
        return all + (b != nullptr ? "and b" : "and no b");
    };
    CHECK(told("a = \"x\nb = 1\n") == "1:5+2 and b");
    CHECK(told("a = \"x\r\nb = 1\r\n") == "1:5+2 and b");
    CHECK(told("a = \"x\ny\"\nb = 1\n") == "1:5+2 and b");
    CHECK(told("a = \"x\n  y\" # c\nb = 1\n") == "1:5+2 and b");
    CHECK(told("a = 'x\ny'\nb = 1\n") == "1:5+2 and b");
    CHECK(told("a = 'x\ny, 'z', w'\nb = 1\n") == "1:5+2 and b");
    // Not where that line begins something of its own.
    CHECK(told("a = \"x\nb = \"y\n") == "1:5+2 2:5+2 and b");
    CHECK(told("a = \"x\nb = \"y\"\n") == "1:5+2 and b");
    CHECK(told("a = \"x\n# it's \"\nb = 1\n") == "1:5+2 and b");
    CHECK(told("a = \"x\n[\"b\"]\n") == "1:5+2 and b");
    CHECK(told("a = \"\"\"x\ny\nb = 1\n") == "1:5+4 and b");
    CHECK(told("a = \"\"\"x\n\n  [b]\nc = 1\n") == "1:5+4 and b");
    CHECK(told("a = \"\"\"x\ny\nz\n") == "1:5+4 and no b");
    CHECK(told("a = [\"\"\"x\ny\n") == "1:6+4 and no b");
}

} // namespace text_test
