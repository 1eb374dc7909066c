#include "service/read/message_text.h"
#include "unit/service/days.h"

#include <doctest/doctest.h>

using namespace thawslip;

TEST_CASE("a bag's message says nothing of what its code left out") {
    code::Message message;
    message.dish = "QUINCE SOUP";
    const kitchen::Date today{std::chrono::year{2026}, std::chrono::November, std::chrono::day{1}};
    const auto style = service::style_of({});
    const std::string last = "Local food-safety rules come first.\n";
    CHECK(service::message_text(message, today, style) == "QUINCE SOUP\n" + last);
    message.servings = 6;
    CHECK(service::message_text(message, today, style) == "QUINCE SOUP\nServes 6\n" + last);
    message.bag_id = "C8H-YNW-87N";
    message.steps = {"HEAT IT", "EAT IT"};
    CHECK(service::message_text(message, today, style) ==
          "QUINCE SOUP  (C8H-YNW-87N)\nServes 6\n1. HEAT IT\n2. EAT IT\n" + last);
}
