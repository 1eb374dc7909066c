#include "code/message.h"
#include "code/symbol.h"
#include "unit/code/samples.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::code;
using namespace thawslip::literals;

TEST_CASE("the chosen symbol is read back as the text") {
    const auto chosen = choose_symbol(texts(test::squash_stew()), 36_mm, {300}, 0.4_mm);
    REQUIRE(chosen.ok());
    MESSAGE(chosen.value().symbol.version, " ", static_cast<int>(chosen.value().symbol.level), " ",
            chosen.value().dots_per_module, chosen.value().text_index);
    CHECK(read_back(chosen.value().symbol) == chosen.value().text);
}
