#include "code/message.h"
#include "days.h"
#include "kitchen/bag_id.h"
#include "kitchen/figures.h"
#include "service/dinner/dinner_plan.h"
#include "service/dinner/photographed_bags.h"
#include "wording/style.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

constexpr kitchen::Date supper_day = std::chrono::year{2026} / 11 / 3;

std::string code_of(const std::string& text) {
    const auto packages = packages_of(text);
    return code::write(code::message_for(packages.front(), packages.front().bags.front()));
}

service::Outcome<std::vector<kitchen::PlannedPackage>>
plan_by(const std::vector<std::string>& codes, archive::Archive* archive = nullptr) {
    return service::packages_of_codes(archive, codes);
}

} // namespace

TEST_CASE("a bag that the archive does not know is planned by its code alone, and that is said") {
    const auto known = packages_of(stew).front();
    const auto by_code = plan_by({code_of(stew)});
    REQUIRE(by_code);
    REQUIRE(by_code.value->size() == 1);
    const auto& planned = by_code.value->front();
    CHECK(planned.package.dish == "BARLEY STEW"); // as codes have it
    CHECK(planned.bags.front().id == known.bags.front().id);
    CHECK(planned.keep_until.date == known.keep_until.date);
    CHECK(kitchen::thaw_time(planned) == kitchen::thaw_time(known));
    CHECK(kitchen::cook_within(planned) == kitchen::cook_within(known));
    REQUIRE(planned.package.cook.has_value());
    CHECK(planned.package.cook->time == known.package.cook->time);
    CHECK(planned.package.cook->until->celsius == doctest::Approx(74.0));
    CHECK(planned.package.cook->vessel == known.package.cook->vessel);
    const auto said = to_text(by_code.messages);
    CHECK(said.find("is not in this archive: planned from its code alone") != std::string::npos);
    CHECK(said.find("how long it cooks") == std::string::npos);
}

TEST_CASE("bags whose codes say the same but for the id are one package, each once") {
    code::Message message;
    message.dish = "Pear pot";
    message.cautions = {"STIR OFTEN"};
    std::vector<std::string> codes;
    for (int number : {1, 2, 2}) {
        message.bag_id = kitchen::bag_id({"Pear pot", supper_day, number});
        codes.push_back(code::write(message));
    }
    const auto alike = plan_by(codes);
    REQUIRE(alike);
    REQUIRE(alike.value->size() == 1);
    CHECK(alike.value->front().bags.size() == 2);
    const auto said = to_text(alike.messages);
    CHECK(said.find("STIR OFTEN") == said.rfind("STIR OFTEN"));
    message.servings = 3; // another size
    CHECK(plan_by({codes.front(), code::write(message)}).value->size() == 2);
}

TEST_CASE("what a code leaves out is said, and the strict side taken") {
    code::Message message;
    message.dish = "Pear pot";
    message.bag_id = packages_of(stew).front().bags.front().id;
    message.raw = true;
    const auto by_code = plan_by({code::write(message)});
    REQUIRE(by_code);
    const auto said = to_text(by_code.messages);
    for (const std::string missing :
         {"how it is thawed", "how long it cooks", "how hot it must get", "by when it is best"}) {
        CAPTURE(missing);
        CHECK(said.find(missing) != std::string::npos);
    }
    CHECK(by_code.value->front().raw);
    CHECK(by_code.value->front().package.thaw.method == kitchen::ThawMethod::Refrigerator);
    CHECK_FALSE(kitchen::cook_within(by_code.value->front())); // the same day
}

TEST_CASE("each way to thaw that a code has is planned with its own times, as the label has it") {
    std::string text = stew;
    const std::string_view one = R"(method = "refrigerator")";
    text.replace(text.find(one), one.size(),
                 R"(method = ["refrigerator", "cold water", "from frozen"])");
    const auto known = packages_of(text).front();
    const auto by_code = plan_by({code_of(text)});
    REQUIRE(by_code);
    const auto& planned = by_code.value->front();
    REQUIRE(planned.other_thaws.size() == 2);
    for (std::size_t i = 0; i < 2; ++i) {
        CAPTURE(i);
        const auto& way = planned.other_thaws[i];
        const auto& as_known = known.other_thaws[i];
        CHECK(way.package.thaw.method == as_known.package.thaw.method);
        CHECK(kitchen::thaw_time(way) == kitchen::thaw_time(as_known));
        CHECK(kitchen::cook_within(way) == kitchen::cook_within(as_known));
        CHECK(way.package.cook->time == as_known.package.cook->time);
        CHECK(way.other_thaws.empty());
    }
    // Only thawed food cooks as long as the code says.
    CHECK(planned.other_thaws[0].package.cook->time.has_value());
    CHECK_FALSE(planned.other_thaws[1].package.cook->time.has_value());
}

TEST_CASE("a roast that a code offers from frozen is planned with its time from frozen") {
    const std::string roast =
        "[[package]]\ndish = \"Windfall roast\"\nservings = 4\nfood = \"raw roasts\"\n"
        "weight = \"1.5 kg\"\nthickness = \"60 mm\"\n"
        "thaw.method = [\"refrigerator\", \"from frozen\"]\n"
        "cook = {in = \"oven\", setting = \"180 °C\", time = \"2 h\", until = \"74 °C\"}\n";
    const auto code = code_of(roast);
    CHECK(code.find("OR COOK FROM FROZEN * FOR 3 H") != std::string::npos);
    const auto by_code = plan_by({code});
    REQUIRE(by_code);
    const auto& way = by_code.value->front().other_thaws.at(0);
    CHECK(way.package.cook->time ==
          packages_of(roast).front().other_thaws.at(0).package.cook->time);
    CHECK(way.package.cook->time->low == std::chrono::hours{3});
}

TEST_CASE("what is added on cook day is planned as the code has it") {
    code::Message message;
    message.dish = "Pear pot";
    message.bag_id = packages_of(stew).front().bags.front().id;
    message.additions = {{{kitchen::When::Anchor::AtStart, {}}, "1 L STOCK", ""},
                         {{kitchen::When::Anchor::AtServing, {}}, "SALT TO TASTE", "JAR"},
                         {{kitchen::When::Anchor::Halfway, {}}, "1/0 PEARS", ""}};
    const auto by_code = plan_by({code::write(message)});
    REQUIRE(by_code);
    const auto& finish = by_code.value->front().package.finish;
    REQUIRE(finish.size() == 3);
    CHECK(finish[2].add.item == "1/0 PEARS"); // no amount, so it stays as it is
    CHECK(finish[2].add.as_written == "1/0 PEARS");
    CHECK_FALSE(finish[2].add.low.has_value());
    CHECK(finish[0].add.item == "STOCK");
    CHECK(finish[0].add.low.has_value());
    CHECK(finish[0].when.anchor == kitchen::When::Anchor::AtStart);
    CHECK(finish[1].add.as_written == "SALT TO TASTE");
    CHECK(finish[1].when.anchor == kitchen::When::Anchor::AtServing);
    CHECK(finish[1].bag == "JAR");
}

TEST_CASE("a plan by codes and a plan by the description start thawing at the same time") {
    const auto style = wording::style_for(wording::shipped_language("en"), {});
    const auto eat =
        kitchen::LocalMinute{std::chrono::local_days{supper_day}} + std::chrono::hours{18};
    const service::DinnerQuestion question{
        {},
        eat,
        kitchen::Instant{std::chrono::sys_days{supper_day} - std::chrono::days{5}},
        {},
        {}};
    const auto start = [&](const std::vector<kitchen::PlannedPackage>& packages) {
        const auto planned = service::dinner_plan(packages, question, style);
        REQUIRE(planned);
        REQUIRE(planned.value->line.dishes.front().thaw.has_value());
        return planned.value->line.dishes.front().thaw->at;
    };
    CHECK(start(*plan_by({code_of(stew)}).value) == start(packages_of(stew)));
}

TEST_CASE("what is eaten frozen has no way to thaw, by its description and by its code") {
    const std::string sorbet = "[[package]]\ndish = \"Quince sorbet\"\nservings = 6\n"
                               "food = \"ice cream or sorbet\"\nweight = \"900 g\"\n"
                               "thickness = \"40 mm\"\n";
    for (const auto& text :
         {sorbet, sorbet + "thaw.method = [\"refrigerator\", \"cold water\"]\n"}) {
        const auto known = packages_of(text).front();
        CHECK(known.served == kitchen::Served::Frozen);
        CHECK_FALSE(kitchen::thaw_time(known));
        CHECK_FALSE(known.after_thawing);
        CHECK(known.other_thaws.empty());
        const auto code = code_of(text);
        CHECK(code.find("EAT IT FROZEN - DO NOT THAW") != std::string::npos);
        CHECK(code.find("COOK FROM FROZEN") == std::string::npos);
        CHECK(code.find("THAW IN") == std::string::npos);
        const auto by_code = plan_by({code});
        REQUIRE(by_code);
        CHECK(by_code.value->front().served == kitchen::Served::Frozen);
        CHECK(by_code.value->front().package.thaw.method == kitchen::ThawMethod::FromFrozen);
        CHECK(to_text(by_code.messages).find("thawed") == std::string::npos);
    }
    const auto baked = packages_of(sorbet + "cook = {in = \"oven\", time = \"5 min\"}\n").front();
    CHECK(baked.served == kitchen::Served::Cooked);
}

TEST_CASE("what is no code of a bag is refused") {
    CHECK_FALSE(plan_by({"https://example.org"}));
    CHECK_FALSE(plan_by({code_of(stew), "nothing of ours"}));
}
