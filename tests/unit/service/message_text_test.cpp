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

TEST_CASE("dates are said, and that one is past from the day after on") {
    code::Message message;
    message.dish = "QUINCE SOUP";
    message.made = std::chrono::year{2026} / 10 / 17;
    message.keep_until =
        code::KeepUntil{std::chrono::year{2026} / 12 / 10, kitchen::DateBasis::SetByCook};
    const auto text = [&message](unsigned day) {
        return service::message_text(message, std::chrono::year{2026} / 12 / std::chrono::day{day},
                                     service::style_of({}));
    };
    CHECK(text(10).find("17 Oct 2026\n") != std::string::npos);
    CHECK(text(10).find("10 Dec 2026\n") != std::string::npos);
    CHECK(text(11) ==
          "QUINCE SOUP\nMade 17 Oct 2026\nUse by 10 Dec 2026 - past its use-by date by 1 "
          "day\nLocal food-safety rules come first.\n");
    CHECK(text(13).find("10 Dec 2026 - past its use-by date by 3 days\n") != std::string::npos);
    const auto use_by = text(11);
    message.keep_until->basis = kitchen::DateBasis::StorageTable;
    CHECK(text(11).find("10 Dec 2026 - ") != std::string::npos);
    CHECK(text(11) != use_by); // what is past its best may be eaten
    message.made.reset();
    message.keep_until.reset();
    CHECK(text(11).find("2026") == std::string::npos);
}

TEST_CASE("temperatures are said in the kitchen's measures, and what capitals leave open is not") {
    code::Message message;
    message.dish = "Quince soup";
    message.additions = {{{kitchen::When::Anchor::AtStart, {}}, "1 T SAGE", ""}};
    message.cooking = {"oven", "190 °C", {}, code::Target{740, {}}};
    service::Settings settings;
    settings.kitchen.units = kitchen::Units::Us;
    const auto text = service::message_text(message, {}, service::style_of(settings));
    CAPTURE(text);
    CHECK(text.find("1 T SAGE") != std::string::npos); // a tablespoon, or a teaspoon
    CHECK(text.find("375 °F") != std::string::npos);   // 190 °C
    CHECK(text.find("165 °F") != std::string::npos);   // 74 °C (USDA FSIS)
    CHECK(text.find("°C") == std::string::npos);
}

TEST_CASE("another way to thaw says how long it cooks then, where that is not what the code says") {
    using namespace std::chrono_literals;
    code::Message message;
    message.dish = "WINDFALL ROAST";
    message.thaw = kitchen::ThawMethod::Refrigerator;
    message.cooking.in = "OVEN";
    message.cooking.time = kitchen::TimeRange{2h, 2h};
    message.other_thaws = {
        {kitchen::ThawMethod::Microwave, kitchen::TimeRange{30min, 30min}, {}, {}},
        {kitchen::ThawMethod::FromFrozen, {}, {}, {}}};
    const auto has = [&message](const std::string& words) {
        const auto text = service::message_text(message, {}, service::style_of({}));
        CAPTURE(text);
        return text.find(words) != std::string::npos;
    };
    auto& frozen = message.other_thaws.back();
    frozen.cook_time = kitchen::TimeRange{3h, 3h};
    CHECK(has("\nOr in the microwave, about 30 min. Cook at once\n"));
    CHECK(has("\nOr cook from frozen. Never in a slow cooker; cooks 3 h\n"));
    frozen.cook_time.reset();
    frozen.cooks_longer = true;
    CHECK(has("The time is for thawed food"));
    frozen.cooks_longer = false;
    CHECK_FALSE(has("The time is for thawed food"));
}
