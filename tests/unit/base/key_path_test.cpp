#include "base/key_path.h"

#include <doctest/doctest.h>

using thawslip::KeyPath;

TEST_CASE("a path leads to what lies below it, and to nothing that is only called alike") {
    const auto first = KeyPath{"package"}.index(0).key("side").index(0);
    CHECK(first.text() == "package[1].side[1]");
    CHECK(first.leads_to(first));
    CHECK(first.leads_to(first.key("steps").index(2)));
    CHECK(KeyPath{"package[1].side"}.leads_to(first));
    CHECK_FALSE(first.leads_to(KeyPath{"package[1].side[10].add"}));
    CHECK_FALSE(KeyPath{"package[1].side[1"}.leads_to(first));
    CHECK_FALSE(first.leads_to(KeyPath{"package[1]"}));
    CHECK_FALSE(KeyPath{}.leads_to(first));
}
