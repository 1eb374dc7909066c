// Every file of samples/faults has one mistake, named in its first line, and beside it the message
// that is told about it, word for word.

#include "support/command.h"
#include "unit/intake/told.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <filesystem>
#include <string>
#include <vector>

using namespace thawslip;
using test_support::read_file;

namespace {

std::vector<std::filesystem::path> gallery() {
    std::vector<std::filesystem::path> files;
    for (const auto& entry :
         std::filesystem::directory_iterator{THAWSLIP_SOURCE_DIR "/samples/faults"}) {
        if (entry.path().extension() == ".toml") {
            files.push_back(entry.path());
        }
    }
    std::ranges::sort(files);
    return files;
}

} // namespace

TEST_CASE("each fault of the gallery is told as it is written beside it") {
    const auto files = gallery();
    REQUIRE(files.size() >= 60);
    for (const auto& file : files) {
        CAPTURE(file.filename());
        const auto text = read_file(file);
        CHECK(text.starts_with("# "));
        const auto wanted = read_file(std::filesystem::path{file}.replace_extension(".txt"));
        CHECK_FALSE(wanted.empty());
        CHECK(intake_test::told(text, file.filename().string()) == wanted);
    }
}

TEST_CASE("no message of the gallery ends with a full stop or begins with a capital letter") {
    for (const auto& file : gallery()) {
        CAPTURE(file.filename());
        for (const auto& fault : intake_test::outcome_of(read_file(file)).faults) {
            CAPTURE(fault.message);
            CHECK(fault.where.line >= 1);
            CHECK(fault.where.column >= 1);
            CHECK_FALSE(fault.message.ends_with('.'));
            CHECK_FALSE((fault.message.front() >= 'A' && fault.message.front() <= 'Z'));
        }
    }
}
