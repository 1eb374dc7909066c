// Against the Unicode Character Database 15.0.0, NormalizationTest.txt (Unicode Consortium, 2022),
// as Debian's unicode-data ships it.

#include "base/utf8.h"
#include "unicode/normalize.h"

#include <array>
#include <cstdio>
#include <doctest/doctest.h>
#include <memory>
#include <sstream>
#include <string>
#include <vector>

using namespace thawslip;

namespace {

std::string unpacked(const std::string& path) {
    const std::unique_ptr<std::FILE, int (*)(std::FILE*)> pipe{
        popen(("bzip2 -dc " + path).c_str(), "r"), &pclose};
    REQUIRE(pipe);
    std::string text;
    std::array<char, 4096> buffer{};
    for (std::size_t n = 0; (n = std::fread(buffer.data(), 1, buffer.size(), pipe.get())) > 0;) {
        text.append(buffer.data(), n);
    }
    return text;
}

/// The first three columns: as written, composed, decomposed.
std::array<std::string, 3> columns_of(const std::string& line) {
    std::array<std::string, 3> columns;
    std::istringstream fields{line};
    for (auto& column : columns) {
        std::string field;
        std::getline(fields, field, ';');
        std::istringstream points{field};
        for (std::uint32_t point = 0; points >> std::hex >> point;) {
            append_utf8(column, point);
        }
    }
    return columns;
}

} // namespace

TEST_CASE("composing agrees with all of Unicode's normalization cases") {
    std::istringstream file{unpacked("/usr/share/unicode/NormalizationTest.txt.bz2")};
    std::size_t cases = 0;
    for (std::string line; std::getline(file, line);) {
        if (line.empty() || line.front() == '#' || line.front() == '@') {
            continue;
        }
        const auto [source, composed, apart] = columns_of(line);
        ++cases;
        CAPTURE(line);
        CHECK(unicode::to_nfc(source) == composed);
        CHECK(unicode::to_nfc(composed) == composed);
        CHECK(unicode::to_nfc(apart) == composed);
    }
    CHECK(cases > 19'000);
}
