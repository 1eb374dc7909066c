// One mistake does not hide another: the sample day with lines damaged in every way a cook may
// damage them, each reported where it stands, and nothing else.

#include "support/command.h"
#include "toml/document.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <optional>
#include <string>
#include <vector>

using namespace thawslip;

namespace {

using Lines = std::vector<std::string>;
using Damage = std::optional<std::string> (*)(std::string line);

Lines lines_of(const std::string& text) {
    Lines lines;
    for (std::size_t begin = 0; begin < text.size();) {
        const auto end = std::min(text.find('\n', begin), text.size());
        lines.push_back(text.substr(begin, end - begin));
        begin = end + 1;
    }
    return lines;
}

std::string joined(const Lines& lines) {
    std::string text;
    for (const auto& line : lines) {
        text += line + "\n";
    }
    return text;
}

/// Takes `piece` off the end of the line.
std::optional<std::string> without_end(std::string line, std::string_view piece) {
    if (line.find('=') == std::string::npos || !line.ends_with(piece)) {
        return std::nullopt;
    }
    line.resize(line.size() - piece.size());
    return line;
}

const Damage damages[] = {
    [](std::string line) { return without_end(std::move(line), "\""); },
    [](std::string line) { return without_end(std::move(line), "]"); },
    [](std::string line) { return without_end(std::move(line), "\"]"); },
    [](std::string line) -> std::optional<std::string> { // text without quotes
        const auto at = line.find(" = ");
        return at == std::string::npos ? std::nullopt
                                       : std::optional{line.substr(0, at) + " = warm and wet"};
    },
    [](std::string line) -> std::optional<std::string> { // no value
        const auto at = line.find(" = ");
        return at == std::string::npos ? std::nullopt : std::optional{line.substr(0, at) + " ="};
    },
    [](std::string line) -> std::optional<std::string> { // a colon for the sign
        const auto at = line.find(" = ");
        return at == std::string::npos ? std::nullopt : std::optional{line.replace(at, 2, ":")};
    },
    [](std::string line) -> std::optional<std::string> { // more after the value
        return line.find(" = ") == std::string::npos ? std::nullopt : std::optional{line + " more"};
    },
    [](std::string line) -> std::optional<std::string> { // a header without its end
        return line.starts_with('[') ? std::optional{line.substr(0, line.size() - 1)}
                                     : std::nullopt;
    },
};

/// The lines on which something is reported.
std::vector<std::uint32_t> reported(const Lines& lines) {
    Diagnostics faults;
    toml::parse(joined(lines), "day.toml", faults);
    std::vector<std::uint32_t> found;
    for (const auto& fault : faults) {
        found.push_back(fault.where.line);
    }
    return found;
}

} // namespace

TEST_CASE("of two damaged lines both are reported, and nothing else") {
    const auto whole =
        lines_of(test_support::read_file(THAWSLIP_SOURCE_DIR "/samples/orchard-day.toml"));
    std::size_t tried = 0;
    for (std::size_t i = 0; i < whole.size(); ++i) {
        for (const auto& damage : damages) {
            auto lines = whole;
            const auto first = damage(whole[i]);
            if (!first) {
                continue;
            }
            lines[i] = *first;
            const std::size_t other = (i + 1 + tried % 7) % whole.size();
            const auto second = damages[tried % std::size(damages)](whole[other]);
            lines[other] = second.value_or(whole[other]);
            std::vector<std::uint32_t> wanted{static_cast<std::uint32_t>(i + 1)};
            if (second) {
                wanted.push_back(static_cast<std::uint32_t>(other + 1));
            }
            std::ranges::sort(wanted);
            CAPTURE(lines[i]);
            CAPTURE(lines[other]);
            CHECK(reported(lines) == wanted);
            ++tried;
        }
    }
    CHECK(tried > 300);
}
