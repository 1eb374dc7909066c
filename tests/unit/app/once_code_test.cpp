// A code opens the page once.

#include "app/desk/once_code.h"
#include "app/desk/random_text.h"
#include "support/command.h"

#include <doctest/doctest.h>
#include <filesystem>
#include <set>

using namespace thawslip;
using namespace thawslip::test_support;
namespace fs = std::filesystem;

TEST_CASE("a code is good once, in its own folder") {
    const ScratchFolder scratch;
    const auto folder = scratch / "codes";
    const auto code = app::make_code(folder);
    CHECK_FALSE(app::use_code(scratch / "others", code));
    CHECK(app::use_code(folder, code));
    CHECK_FALSE(app::use_code(folder, code));
    CHECK_FALSE(app::use_code(folder, app::random_text()));
}

TEST_CASE("what is no code names no file") {
    const ScratchFolder scratch;
    const auto folder = scratch / "codes";
    app::make_code(folder);
    const auto precious = scratch / "precious";
    write_file(precious, "kept");
    const auto beside = folder + "/short";
    write_file(beside, "kept");
    for (const std::string text : {"../precious", "short", "", ".", "/etc/passwd"}) {
        CAPTURE(text);
        CHECK_FALSE(app::use_code(folder, text));
    }
    CHECK(fs::exists(precious));
    CHECK(fs::exists(beside));
}

TEST_CASE("codes are kept where nobody else looks, and those not used are forgotten") {
    const ScratchFolder scratch;
    const auto folder = scratch / "codes";
    const auto code = app::make_code(folder);
    CHECK(mode_of(folder) == 0700U);
    app::forget_codes(folder);
    CHECK_FALSE(app::use_code(folder, code));
    CHECK_FALSE(fs::exists(folder));
}

TEST_CASE("random texts are 32 digits and letters, and no two alike") {
    std::set<std::string> texts;
    for (int i = 0; i < 100; ++i) {
        texts.insert(app::random_text());
    }
    CHECK(texts.size() == 100);
    for (const auto& text : texts) {
        CHECK(app::is_random_text(text));
    }
    const auto one = *texts.begin();
    CHECK_FALSE(app::is_random_text(one.substr(1)));
    CHECK_FALSE(app::is_random_text(one + "0"));
    CHECK_FALSE(app::is_random_text("G" + one.substr(1)));
}
