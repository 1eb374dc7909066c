// The TOML community's own suite: toml-lang, "toml-test: Language agnostic test suite for TOML
// parsers" (github.com/toml-lang/toml-test, MIT licence), 234 documents that are not TOML and 100
// that are. Read from where Debian's golang-github-burntsushi-toml-dev 1.2.0 puts it: nothing of
// it is copied here.

#include "support/command.h"
#include "support/edits.h"
#include "unit/intake/told.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace suite_test {

using namespace thawslip;
namespace fs = std::filesystem;
namespace toml = thawslip::toml;

namespace {

/// Where our reader differs from the suite, and why it may.
const std::map<std::string, std::string> deviations = {
    {"valid/string/escape-esc.toml",
     "the escape \\e came with TOML 1.1; the suite itself leaves it out for TOML 1.0.0"},
};

std::vector<fs::path> documents(const std::string& folder) {
    std::vector<fs::path> found;
    const fs::path root = fs::path{THAWSLIP_TOML_SUITE} / folder;
    REQUIRE_MESSAGE(fs::is_directory(root), root.string()
                                                << " is missing: .ci/packages test installs it");
    for (const auto& entry : fs::recursive_directory_iterator{root}) {
        if (entry.path().extension() == ".toml") {
            found.push_back(entry.path());
        }
    }
    std::ranges::sort(found);
    return found;
}

std::string name_of(const fs::path& path) {
    return path.lexically_relative(THAWSLIP_TOML_SUITE).string();
}

/// What the TOML reader alone has against a text.
Diagnostics syntax_faults(const std::string& text) {
    Diagnostics faults;
    toml::parse(text, "suite.toml", faults);
    return faults;
}

/// The place lies in the text: on one of its lines, not beyond the end of that line by more than
/// the place after it.
bool stands_in(const SourceSpan& where, const std::string& text) {
    std::size_t start = 0;
    for (std::uint32_t line = 1; line < where.line; ++line) {
        const auto end = text.find('\n', start);
        if (end == std::string::npos) {
            return false;
        }
        start = end + 1;
    }
    const auto length = std::min(text.find('\n', start), text.size()) - start;
    return where.line >= 1 && where.column >= 1 && where.column <= length + 1;
}

bool has_placed_error(const Diagnostics& faults, const std::string& text) {
    return std::ranges::any_of(faults, [&text](const Diagnostic& fault) {
        return fault.severity == Severity::Error && !fault.message.empty() &&
               stands_in(fault.where, text);
    });
}

} // namespace

TEST_CASE("every document of the suite that is not TOML is refused, with line and column") {
    const auto paths = documents("invalid");
    CHECK(paths.size() == 234);
    for (const auto& path : paths) {
        const auto name = name_of(path);
        CAPTURE(name);
        const auto text = test_support::read_file(path);
        CHECK(has_placed_error(syntax_faults(text), text) != deviations.contains(name));
    }
}

TEST_CASE("every document of the suite that is TOML is read, and refused as a day with a reason") {
    const auto paths = documents("valid");
    CHECK(paths.size() == 100);
    for (const auto& path : paths) {
        const auto name = name_of(path);
        CAPTURE(name);
        const auto text = test_support::read_file(path);
        CHECK(syntax_faults(text).empty() != deviations.contains(name));
        CHECK(has_placed_error(intake_test::outcome_of(text).faults, text));
    }
}

// Written by hand after TOML v1.0.0 (toml.io/en/v1.0.0, 2021), section named: what later editions
// of the suite ask for and the one above does not.
TEST_CASE("what later editions of the suite refuse is refused, at its place") {
    struct Case {
        std::string section;
        std::string text;
        std::uint32_t line;
        std::uint32_t column;
    };
    const Case cases[] = {
        {"Offset Date-Time: offset of 25 hours", "a = 2026-10-17T00:00:00+25:00\n", 1, 5},
        {"Offset Date-Time: offset of 60 minutes", "a = 2026-10-17T00:00:00+23:60\n", 1, 5},
        {"Local Time: hour 24", "a = 24:00:00\n", 1, 5},
        {"Local Date: 29 February of a common year", "a = 2026-02-29\n", 1, 5},
        {"Spec: byte-order mark inside",
         "a = 1\n\xEF\xBB\xBF"
         "b = 2\n",
         2, 1},
        {"Spec: NUL", std::string{"a = 1\n\0", 7}, 2, 1},
        {"Comment: lone carriage return", "a = 1 # x\ry\n", 1, 10},
        {"String: surrogate", "a = \"\\uD800\"\n", 1, 6},
        {"String: six quotes at the end", "a = \"\"\"x\"\"\"\"\"\"\n", 1, 14},
        {"Integer: beyond 64 bits", "a = 9223372036854775808\n", 1, 5},
        {"Keys: dotted into an array", "[[t.a]]\n[t]\na.b = 1\n", 3, 1},
        {"Keys: dotted into a table that has a header", "[a.b.c]\nz = 9\n[a]\nb.c.t = 1\n", 4, 3},
        {"Table: under a value", "a = 1\n[a.b.c]\n", 2, 1},
        {"Table: brackets apart", "[ [a] ]\n", 1, 3},
        {"Inline Table: extended later", "a = {b = 1}\na.c = 2\n", 2, 1},
        {"Array of Tables: over a static array", "a = []\n[[a]]\n", 2, 1},
    };
    for (const auto& c : cases) {
        CAPTURE(c.section);
        const auto faults = syntax_faults(c.text);
        REQUIRE(!faults.empty());
        CHECK(faults.front().where.line == c.line);
        CHECK(faults.front().where.column == c.column);
    }
}

TEST_CASE("any edit of what is TOML leaves all else of it as it was") {
    test_support::Random random{19};
    int done = 0;
    for (const auto& path : documents("valid")) {
        const auto text = test_support::read_file(path);
        Diagnostics faults;
        const auto document = toml::parse(text, "", faults);
        for (int i = 0; document.well_formed() && document.text() == text && i < 30; ++i) {
            const auto edit = test_support::random_edit(document.root(), random);
            const auto result = toml::edit(text, {edit});
            CAPTURE(name_of(path));
            CAPTURE(edit.path.text());
            if (result) {
                ++done;
                CAPTURE(result.value().text);
                CHECK(test_support::fault_of(text, edit, result.value()) == "");
            }
        }
    }
    CHECK(done > 1000);
}

} // namespace suite_test
