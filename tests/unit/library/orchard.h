#pragma once

#include "support/command.h"
#include "thawslip/sheets.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <string>
#include <vector>

// What a program outside sees: only the headers below <thawslip/>, and files as it has them.
namespace thawslip::test_support {

inline const std::string source = THAWSLIP_SOURCE_DIR;

/// The sample day, with a word of it exchanged.
inline DayText orchard(const std::string& from = {}, const std::string& to = {}) {
    auto text = read_file(source + "/samples/orchard-day.toml");
    if (!from.empty()) {
        const auto at = text.find(from);
        REQUIRE(at != std::string::npos);
        text.replace(at, from.size(), to);
    }
    return {"orchard.toml", text};
}

/// A kitchen in which nothing is past.
inline Kitchen kitchen_with(const std::string& settings = "paper = \"a4\"") {
    auto opened = open_kitchen(source, settings);
    REQUIRE(opened);
    return std::move(*opened.value);
}

/// Whether any message of the kind has these words.
inline bool has(const std::vector<Message>& messages, Message::Kind kind,
                const std::string& words) {
    return std::ranges::any_of(messages, [&](const Message& message) {
        return message.kind == kind && message.words.find(words) != std::string::npos;
    });
}

} // namespace thawslip::test_support
