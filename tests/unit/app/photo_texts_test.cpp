#include "app/photo_texts.h"
#include "support/command.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::test_support;

TEST_CASE("a photograph is told by its ending, or by how it begins") {
    const ScratchFolder folder;
    const auto is_photo = [&folder](const std::string& begin) {
        write_file(folder / "bag", begin);
        return app::names_a_photo(folder / "bag");
    };
    for (const char* name :
         {"bag.jpg", "BAG.JPEG", "bag.png", "bag.heic", "bag.HEIF", "bag.avif"}) {
        CAPTURE(name);
        CHECK(app::names_a_photo(name));
    }
    CHECK_FALSE(app::names_a_photo("bag.toml"));
    CHECK(is_photo("\x89PNG\r\n\x1a\n and more"));
    CHECK(is_photo("\xFF\xD8\xFF\xE0 and more"));
    CHECK(is_photo(std::string(3, '\0') + "\030ftypheic"));
    CHECK_FALSE(is_photo("ftyp")); // no box of ISO/IEC 14496-12 begins without its size
    CHECK_FALSE(is_photo("[day]\nmade = 2026-10-17\n"));
    CHECK_FALSE(is_photo(""));
    CHECK_FALSE(app::names_a_photo(folder.path().string()));
}
