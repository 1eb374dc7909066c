#include "support/asked.h"
#include "support/fake_machine.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::test_support;

TEST_CASE("the page's state has its words in the language that is set") {
    FakeMachine fake;
    fake.settings.language = "de";
    desk::Desk desk{machine_of(fake)};
    const auto state = get(desk, "/api/state");
    REQUIRE(state.status == 200);
    CHECK(said(state)["language"] == "de");
    CHECK(said(state)["words"].size() >= 1);
}
