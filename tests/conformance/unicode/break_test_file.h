#pragma once

#include "base/utf8.h"

#include <cstddef>
#include <fstream>
#include <string>
#include <vector>

namespace thawslip::test_support {

/// One line of a break test file of the Unicode Character Database: code points in hex, with ÷
/// where the text may be parted and × where not.
struct BreakCase {
    std::string line; ///< as it stands, without the remark
    std::string text;
    std::vector<std::size_t> breaks; ///< byte offsets, rising; the end of the text included
};

inline BreakCase read_break_case(const std::string& line) {
    BreakCase result{line.substr(0, line.find('\t')), {}, {}};
    std::size_t at = 0;
    while (at < result.line.size()) {
        const auto end = std::min(result.line.find(' ', at), result.line.size());
        const auto word = result.line.substr(at, end - at);
        if (word == "÷" && !result.text.empty()) {
            result.breaks.push_back(result.text.size());
        } else if (word != "÷" && word != "×") {
            append_utf8(result.text, static_cast<char32_t>(std::stoul(word, nullptr, 16)));
        }
        at = end + 1;
    }
    return result;
}

inline std::vector<BreakCase> read_break_file(const std::string& path) {
    std::vector<BreakCase> cases;
    std::ifstream file{path};
    for (std::string line; std::getline(file, line);) {
        if (!line.empty() && line.front() != '#') {
            cases.push_back(read_break_case(line));
        }
    }
    return cases;
}

} // namespace thawslip::test_support
