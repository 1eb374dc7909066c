#include "code/fold.h"
#include "unit/code/random_messages.h"

#include <doctest/doctest.h>

using namespace thawslip::code;

TEST_CASE("folding twice is folding once") {
    test::Random random{2};
    for (int i = 0; i < 10000; ++i) {
        const std::string words = test::random_words(random, 60);
        const std::string once = fold(words);
        REQUIRE_MESSAGE(fold(once) == once, words);
    }
}
