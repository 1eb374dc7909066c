#include "code/message.h"
#include "code/seal.h"
#include "orchard.h"
#include "unit/archive/samples.h"

#include <thawslip/bag.h>
#include <thawslip/dinner.h>
#include <thawslip/freezer.h>

using namespace thawslip;
using namespace thawslip::test_support;

TEST_CASE("a kitchen is opened with a day or none, and with settings that are right") {
    CHECK(open_kitchen(source));
    CHECK(open_kitchen(source, "", "2026-10-17"));
    const auto undated = open_kitchen(source, "", "the day after");
    CHECK_FALSE(undated);
    CHECK(has(undated.messages, Message::Kind::Error, "\"the day after\" is no date"));
    CHECK(undated.messages.front().hints == std::vector<std::string>{"write it as 2026-10-17"});
    const auto faulty = open_kitchen(source, "paper = \"a9\"\n");
    CHECK_FALSE(faulty);
    CHECK(faulty.messages.front().file == "settings");
    CHECK(faulty.messages.front().line == 1);
}

TEST_CASE("what is past is told only by whoever knows the day") {
    const auto told = [](const std::string& today) {
        const auto kitchen = open_kitchen(source, "", today);
        REQUIRE(kitchen);
        return check(*kitchen.value, {orchard()}).messages.size();
    };
    CHECK(told("2026-10-17") == told(""));
    CHECK(told("2027-12-01") > told(""));
}

TEST_CASE("a dinner has its steps in order, each with its dish, and a calendar of them") {
    const auto kitchen = kitchen_with();
    const DinnerQuestion question{"lentil", "2026-12-03T18:30", "2026-12-01T09:00", 60};
    const auto dinner = plan_dinner(kitchen, {orchard()}, question);
    REQUIRE(dinner);
    const auto& steps = dinner.value->steps;
    REQUIRE(steps.size() > 2);
    CHECK(std::ranges::is_sorted(steps, {}, &DinnerStep::at));
    CHECK(steps.front().words.find("refrigerator") != std::string::npos); // into it, days before
    CHECK(steps.front().at < "2026-12-02");
    CHECK(steps.back().at == "2026-12-03T18:30");
    for (const auto& step : steps) {
        CHECK(step.dish == "Squash and red lentil stew");
        CHECK_FALSE(step.words.empty());
    }
    CHECK(dinner.value->calendar.starts_with("BEGIN:VCALENDAR\r\n"));
    // Half past six where clocks are an hour ahead of UTC (RFC 5545, 3.3.5).
    CHECK(dinner.value->calendar.find("20261203T173000Z") != std::string::npos);
}

TEST_CASE("a dinner without a time, or of a day with a fault, is refused in its own words") {
    const auto kitchen = kitchen_with();
    const auto late = plan_dinner(kitchen, {orchard()}, {"", "supper", "2026-12-01T09:00", 0});
    CHECK_FALSE(late);
    CHECK(has(late.messages, Message::Kind::Error, "\"supper\" is no date and time"));
    const auto early = plan_dinner(kitchen, {orchard()}, {"", "2026-12-03T18:30", "noon", 0});
    CHECK_FALSE(early);
    CHECK(has(early.messages, Message::Kind::Error, "\"noon\" is no date and time"));
    const auto faulty = plan_dinner(kitchen, {orchard("servings", "servngs")},
                                    {"", "2026-12-03T18:30", "2026-12-01T09:00", 0});
    CHECK_FALSE(faulty);
    CHECK(has(faulty.messages, Message::Kind::Error, "servngs"));
}

TEST_CASE("the text of a code that is whole is read, one with a slip is refused and shown") {
    const auto texts = code_texts(kitchen_with(), {orchard()}, {.stock = "a4-2x2-99x139mm"});
    REQUIRE(texts);
    const auto bag = read_code_text(texts.value->front());
    REQUIRE(bag);
    CHECK(bag.value->dish == "SQUASH AND RED LENTIL STEW");
    CHECK(bag.value->keep_until == "2026-12-17");
    CHECK_FALSE(bag.value->raw);
    CHECK_FALSE(bag.value->steps.empty());
    CHECK_FALSE(bag.value->cautions.empty());
    CHECK(bag.value->servings == 6);
    auto slip = texts.value->front();
    slip.front() = 'X';
    const auto refused = read_code_text(slip);
    CHECK_FALSE(refused);
    CHECK(has(refused.messages, Message::Kind::Error, "damaged"));
    CHECK_FALSE(read_code_text("plum and ginger compote"));
}

TEST_CASE("each thing that a code says is told, and what it does not say is empty") {
    code::Message message;
    message.dish = "APPLE AND SAGE PORK SHOULDER";
    message.raw = true;
    message.servings = 8;
    message.bag_id = "C8H-YNW-87N";
    message.keep_until =
        code::KeepUntil{std::chrono::year{2027} / 2 / 28, kitchen::DateBasis::SetByCook};
    message.steps = {"POUR THE CIDER OVER", "PULL THE MEAT APART"};
    message.cautions = {"RAW - COOK THROUGH"};
    const auto said = read_code_text(code::write(message));
    REQUIRE(said);
    CHECK(said.messages.empty());
    CHECK(said.value->dish == message.dish);
    CHECK(said.value->raw);
    CHECK(said.value->servings == 8);
    CHECK(said.value->id == message.bag_id);
    CHECK(said.value->keep_until == "2027-02-28");
    CHECK(said.value->steps == message.steps);
    CHECK(said.value->cautions == message.cautions);
    CHECK_FALSE(said.value->see_card);
    code::Message bare;
    bare.dish = "PLUM COMPOTE";
    const auto little = read_code_text(code::write(bare));
    REQUIRE(little);
    CHECK_FALSE(little.value->raw);
    CHECK(little.value->servings == 0);
    CHECK(little.value->id == "");
    CHECK(little.value->keep_until == "");
    CHECK(little.value->steps.empty());
    CHECK(little.value->cautions.empty());
}

TEST_CASE("a code of a later grammar is refused, and what it says is shown all the same") {
    const std::string text = "STEW\nSTIR TWICE\nEND 4";
    const auto later = read_code_text(text + code::check_characters(text));
    CHECK_FALSE(later);
    REQUIRE(later.messages.size() == 1);
    REQUIRE(later.messages.front().hints.size() == 1);
    CHECK(later.messages.front().hints.front().find("STIR TWICE") != std::string::npos);
    const auto foreign = read_code_text("plum and ginger compote");
    REQUIRE(foreign.messages.size() == 1);
    CHECK(foreign.messages.front().hints.empty()); // nothing to show
}

TEST_CASE("a kitchen may take the place of another") {
    auto kitchen = kitchen_with("paper = \"letter\"");
    kitchen = kitchen_with("paper = \"a4\"");
    CHECK(draw(kitchen, {orchard()}, Print::Labels).value->stock.starts_with("a4-"));
}

TEST_CASE("an archive's bags are listed by their dates, and a dish by its words") {
    const Scratch scratch;
    auto soup = package("Chestnut soup", 2, date(2026, 12, 17));
    auto stew = package("Squash stew", 1, date(2026, 11, 20));
    {
        auto archive = opened(scratch.path);
        archive.record(print({day({soup, stew})}));
    }
    const auto all = list_bags(scratch.path, {}, "2026-11-01");
    REQUIRE(all);
    REQUIRE(all.value->size() == 3);
    const auto& first = all.value->front();
    CHECK(first.dish == "Squash stew");
    CHECK(first.id == stew.bags.front());
    CHECK(first.servings == 6);
    CHECK(first.number == 1);
    CHECK(first.of == 1);
    CHECK(first.made == "2026-10-17");
    CHECK(first.keep_until == "2026-11-20");
    CHECK(first.state == "frozen");
    CHECK(all.value->back().of == 2);
    const auto soups = list_bags(scratch.path, {"chestnut"}, "2026-11-01");
    REQUIRE(soups);
    CHECK(soups.value->size() == 2);
    opened(scratch.path).set_state(stew.bags, archive::State::Eaten, "2026-11-01T08:00:00");
    CHECK(list_bags(scratch.path, {}, "2026-11-01").value->size() == 2); // what is inside
}

TEST_CASE("a list of bags without a day, or of no archive, is refused") {
    const Scratch scratch;
    CHECK(has(list_bags(scratch.path, {}, "in November").messages, Message::Kind::Error,
              "\"in November\" is no date"));
    const auto none = list_bags(scratch.path, {}, "2026-11-01");
    CHECK_FALSE(none);
    CHECK(none.messages.size() == 1);
}
