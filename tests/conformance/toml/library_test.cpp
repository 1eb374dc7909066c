// Our reading of TOML against another: toml++ 3.3.0 (Mark Gillard, github.com/marzer/tomlplusplus,
// MIT licence) finds the same values in whatever both take for TOML, and neither takes for TOML
// what the other refuses, but for what is named here.

#include "support/command.h"
#include "support/random.h"
#include "toml/document.h"
#include "toml/scan.h"

#include <cmath>
#include <doctest/doctest.h>
#include <filesystem>
#include <sstream>
#include <string>
#include <toml++/toml.h>

namespace library = ::toml;
namespace own = thawslip::toml;
namespace test_support = thawslip::test_support;
using test_support::Random;

namespace {

own::Date date_of(const library::date& date) {
    return {std::chrono::year{date.year}, std::chrono::month{date.month},
            std::chrono::day{date.day}};
}

/// Whether both hold the same, to the last member and bit.
struct IsSame { // NOLINT(misc-no-recursion)
    const library::node& other;

    bool operator()(const own::Members& table) const {
        const auto* all = other.as_table();
        return all != nullptr && all->size() == table.list.size() &&
               std::ranges::all_of(table.list, [all](const own::Member& each) {
                   const auto* match = all->get(each.key);
                   return match != nullptr && std::visit(IsSame{*match}, each.value.content);
               });
    }
    bool operator()(const own::Array& list) const {
        const auto* all = other.as_array();
        bool same = all != nullptr && all->size() == list.elements.size();
        for (std::size_t i = 0; same && i < list.elements.size(); ++i) {
            same = std::visit(IsSame{(*all)[i]}, list.elements[i].content);
        }
        return same;
    }
    bool operator()(const std::string& text) const {
        return other.is_string() && other.as_string()->get() == text;
    }
    bool operator()(std::int64_t number) const {
        return other.is_integer() && other.as_integer()->get() == number;
    }
    bool operator()(double number) const {
        const auto* found = other.as_floating_point();
        return found != nullptr &&
               (found->get() == number || (std::isnan(found->get()) && std::isnan(number)));
    }
    bool operator()(bool truth) const {
        return other.is_boolean() && other.as_boolean()->get() == truth;
    }
    bool operator()(const own::Date& date) const {
        return other.is_date() && date_of(other.as_date()->get()) == date;
    }
    bool operator()(const own::OtherTime& time) const {
        return time.kind == "time of day" ? other.is_time() : other.is_date_time();
    }
    bool operator()(own::Unreadable) const { return false; }
};

std::optional<library::table> by_library(const std::string& text) {
    try {
        return library::parse(text);
    } catch (const library::parse_error&) {
        return std::nullopt;
    }
}

constexpr std::size_t depth = 32;

/// Both refuse the text, or both find the same in it.
bool is_agreed(const std::string& text) {
    const auto ours = own::scan(text, depth);
    const auto theirs = by_library(text);
    if (!theirs || !ours.mistakes.empty()) {
        return !theirs && !ours.mistakes.empty();
    }
    return std::visit(IsSame{*theirs}, ours.root.content);
}

std::vector<std::string> suite(const std::string& folder) {
    namespace fs = std::filesystem;
    std::vector<std::string> texts;
    for (const auto& entry :
         fs::recursive_directory_iterator{fs::path{THAWSLIP_TOML_SUITE} / folder}) {
        if (entry.path().extension() == ".toml") {
            texts.push_back(test_support::read_file(entry.path()));
        }
    }
    REQUIRE_FALSE(texts.empty());
    return texts;
}

library::array random_array(Random& random, int depth_left);

std::string random_text(Random& random) {
    const std::string_view pieces[] = {"a",  "Plum ", "é", "🍲", "\"",   "'",    "\\",     "\n",
                                       "\t", "#",     "=", "]", "\x1F", "\x7F", "\"\"\"", "'''"};
    std::string text;
    for (auto count = random.below(7); count > 0; --count) {
        text += pieces[random.below(std::size(pieces))];
    }
    return text;
}

library::table random_table(Random& random, int depth_left);

template <class Into>
void add_random_value(Random& random, int depth_left, const Into& add) {
    switch (random.below(depth_left > 0 ? 9 : 7)) {
    case 0: return add(static_cast<std::int64_t>(random.next()));
    case 1: return add(static_cast<std::int64_t>(random.below(1000)));
    case 2: return add(random.between(-1e6, 1e6));
    case 3: return add(random.chance(2));
    case 4:
        return add(library::date{static_cast<int>(1 + random.below(9998)),
                                 static_cast<unsigned>(1 + random.below(12)),
                                 static_cast<unsigned>(1 + random.below(28))});
    case 5:
        return add(library::time{static_cast<unsigned>(random.below(24)),
                                 static_cast<unsigned>(random.below(60)),
                                 static_cast<unsigned>(random.below(60)),
                                 static_cast<unsigned>(random.below(1'000'000'000))});
    case 6: return add(random_text(random));
    case 7: return add(random_array(random, depth_left - 1));
    default: return add(random_table(random, depth_left - 1));
    }
}

library::array random_array(Random& random, int depth_left) {
    library::array list;
    for (auto count = random.below(5); count > 0; --count) {
        add_random_value(random, depth_left,
                         [&list](auto&& value) { list.push_back(std::move(value)); });
    }
    return list;
}

library::table random_table(Random& random, int depth_left) {
    library::table table;
    for (auto count = random.below(6); count > 0; --count) {
        add_random_value(random, depth_left, [&table, &random](auto&& value) {
            table.insert_or_assign(random.chance(3)
                                       ? random_text(random)
                                       : std::string(1, static_cast<char>('a' + random.below(26))),
                                   std::move(value));
        });
    }
    return table;
}

} // namespace

TEST_CASE("our own reading finds what the library finds in every document of the suite") {
    for (const auto& text : suite("valid")) {
        CAPTURE(text);
        const bool newer = text.find("\\e") != std::string::npos; // TOML 1.1
        CHECK((newer || is_agreed(text)));
    }
}

TEST_CASE("our own reading finds the mistake of every document of the suite") {
    for (const auto& text : suite("invalid")) {
        CAPTURE(text);
        thawslip::Diagnostics faults;
        own::parse(text, "suite.toml", faults);
        REQUIRE_FALSE(faults.empty());
        CHECK_FALSE(faults.front().message.starts_with("this is no TOML 1.0"));
    }
}

TEST_CASE("what the library writes is read as it was meant") {
    Random random{20'261'017};
    for (int round = 0; round < 3'000; ++round) {
        std::ostringstream text;
        text << random_table(random, 3);
        CAPTURE(text.str());
        CHECK(is_agreed(text.str()));
    }
}

TEST_CASE("heaps of TOML's own signs are judged alike") {
    Random random{7};
    const std::string_view pieces[] = {
        "a",          "b",           "c",       "a.b",       "=",
        " = ",        "\n",          "\n",      "\n",        "[",
        "]",          "[[",          "]]",      "{",         "}",
        ",",          ".",           "\"",      "'",         "\"\"\"",
        "'''",        "#",           "\\",      "1",         "0",
        "_",          "e",           "-",       "+",         "07:30:00",
        "2026-10-17", "true",        "inf",     "nan",       " ",
        "\t",         "°",           "\x7F",    "T",         "Z",
        "\\u00e9",    "\\n",         "\r\n",    "0x",        "0b1",
        "a = 1\n",    "[a]\n",       "[[a]]\n", "a.b = 1\n", "b = {a = 1}\n",
        "[a.b]\n",    "x = [1, 2]\n"};
    std::size_t whole = 0;
    for (int round = 0; round < 60'000; ++round) {
        std::string text = random.chance(2) ? "a = " : "";
        for (auto count = random.below(9); count > 0; --count) {
            text += pieces[random.below(std::size(pieces))];
        }
        CAPTURE(text);
        CHECK(is_agreed(text));
        whole += own::scan(text, depth).mistakes.empty() ? 1U : 0U;
    }
    CHECK(whole > 1'000); // else the heaps are too wild to show anything
}
