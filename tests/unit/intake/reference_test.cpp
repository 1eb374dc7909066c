#include "intake/day_file.h"
#include "support/command.h"

#include <doctest/doctest.h>
#include <set>
#include <string>

using namespace thawslip;

namespace {

/// The keys in the first column of README's table: `package.thaw.method`.
std::set<std::string> documented_keys() {
    const auto readme = test_support::read_file(THAWSLIP_SOURCE_DIR "/README.md");
    const auto from = readme.find("## A day");
    const auto section = readme.substr(from, readme.find("\n## ", from) - from);
    std::set<std::string> keys;
    constexpr std::string_view opening = "\n| `";
    for (auto at = section.find(opening); at != std::string::npos;
         at = section.find(opening, at + 1)) {
        const auto begin = at + opening.size();
        keys.insert(section.substr(begin, section.find('`', begin) - begin));
    }
    return keys;
}

} // namespace

TEST_CASE("README's table has every key that a description may have, and no other") {
    std::set<std::string> accepted;
    for (auto key : intake::accepted_keys()) {
        for (auto at = key.find("[]"); at != std::string::npos; at = key.find("[]")) {
            key.erase(at, 2);
        }
        accepted.insert(key);
    }
    CHECK(accepted.size() >= 30);
    CHECK(documented_keys() == accepted);
}
