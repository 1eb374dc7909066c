#include "base/folder.h"

#include <doctest/doctest.h>

using namespace thawslip;

TEST_CASE("the folder of a file is where its name stands") {
    struct Case {
        const char* file;
        const char* folder;
    };
    const Case cases[] = {{"labels.pdf", "."},
                          {"out/labels.pdf", "out"},
                          {"/labels.pdf", "/"},
                          {"/a/b/c", "/a/b"},
                          {"../x", ".."}};
    for (const auto& c : cases) {
        CAPTURE(c.file);
        CHECK(folder_of(c.file) == c.folder);
    }
}
