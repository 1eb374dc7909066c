// Every member of every answer, with values made up for it, as other programs and the page read it.

#include "json/answers.h"
#include "wording/timeline_words.h"

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <tuple>
#include <vector>

using namespace thawslip;
using namespace std::chrono_literals;
using kitchen::ThawMethod;

namespace {

constexpr kitchen::Date packed = std::chrono::year{2026} / 10 / 17;
constexpr kitchen::Date best = std::chrono::year{2027} / 1 / 16;

wording::Style english() {
    return style_for(wording::shipped_language("en"), {});
}

bool has(const std::string& answer, const std::string& part) {
    return answer.find(part) != std::string::npos;
}

archive::Bag bag_of_stew() {
    archive::Bag bag;
    bag.id = "7KQ4-1";
    bag.dish = "Quince stew";
    bag.servings = 4;
    bag.made = packed;
    bag.keep_until = best;
    bag.weight = kitchen::Mass{1500.0};
    bag.state = archive::State::Discarded;
    bag.changed = "2026-11-01T18:00:00";
    bag.place = "top basket";
    return bag;
}

kitchen::PlannedPackage planned_stew() {
    kitchen::PlannedPackage planned;
    auto& package = planned.package;
    package.dish = "Quince stew";
    package.servings = 4;
    package.days_refrigerated = 1;
    package.place = "top basket";
    package.contains = {"celery"};
    package.may_contain = {"milk"};
    package.thaw.method = ThawMethod::ColdWater;
    planned.made = packed;
    planned.keep_until.date = best;
    planned.keep_until.basis = kitchen::DateBasis::StorageTable;
    planned.bags = {{"7KQ4-1"}, {"7KQ4-2"}};
    planned.number = 3;
    planned.in_freezer = 5;
    return planned;
}

/// What is answered of a day with this plan.
std::string checked(kitchen::Plan plan) {
    service::Days days;
    plan.made = packed;
    days.plans.push_back(std::move(plan));
    return json::check(&days, {}, english());
}

} // namespace

TEST_CASE("a kind of food is answered with its row in each list") {
    service::FoodFacts facts;
    facts.food = "soup or stew";
    CHECK(json::foods(std::vector{facts}) ==
          "[\n  {\"food\":\"soup or stew\",\"frozen\":null,\"chilled\":null,\"thawed\":null,"
          "\"minimum_celsius\":null,\"unsuitable\":null,\"words\":[]}\n]\n");
    facts.frozen = {"",        "us",  std::chrono::months{2}, std::chrono::months{3}, "Soups",
                    "a chart", "read"};
    facts.chilled = {"",          "uk",     std::chrono::days{1}, std::chrono::days{2},
                     "Leftovers", "a page", "mapping ours"};
    facts.words = {"broth"};
    facts.minimum = kitchen::SafeMinimum{};
    facts.minimum->celsius = 74;
    const auto answer = json::foods(std::vector{facts, facts});
    CHECK(has(answer, R"("frozen":{"low":2,"high":3,"unit":"months","list":"us","row":"Soups",)"
                      R"("source":"a chart","status":"read"})"));
    CHECK(has(answer, R"("chilled":{"low":1,"high":2,"unit":"days","list":"uk","row":"Leftovers",)"
                      R"("source":"a page","status":"mapping ours"})"));
    CHECK(has(answer, R"("minimum_celsius":74,"unsuitable":null,"words":["broth"]},)"));
    facts.frozen->low_weeks = std::chrono::weeks{4};
    facts.frozen->high_weeks = std::chrono::weeks{6};
    CHECK(has(json::foods(std::vector{facts}), R"("frozen":{"low":4,"high":6,"unit":"weeks")"));
    for (const auto& [weeks, low, high, unit] :
         {std::tuple{1, 4, 1, "weeks"}, std::tuple{0, 2, 3, "months"}}) {
        facts.frozen->high_weeks = std::chrono::weeks{weeks};
        CHECK(has(json::foods(std::vector{facts}),
                  fmt::format(R"("frozen":{{"low":{},"high":{},"unit":"{}")", low, high, unit)));
    }
    facts.thawed = kitchen::DaysLeft{std::chrono::days{0}, std::chrono::days{2}, {}, {}};
    facts.thawed->row.low = std::chrono::days{3}; // of the list, before the days are counted
    facts.thawed->row.rule_set = "nz";
    facts.thawed->row.row = "Thawed food";
    facts.thawed->row.source = "a leaflet";
    facts.thawed->row.status = "from memory";
    facts.unsuitable = kitchen::UnsuitableRow{"soup or stew", "", "", "", "turns to glue", ""};
    CHECK(has(json::foods(std::vector{facts}),
              R"("thawed":{"low":0,"high":2,"unit":"days","list":"nz","row":"Thawed food",)"
              R"("source":"a leaflet","status":"from memory"},"minimum_celsius":74,)"
              R"("unsuitable":"turns to glue",)"));
    CHECK(json::foods({}) == "[]\n");
}

TEST_CASE("a label's message is answered with all that it says, and nothing that it does not") {
    code::Message message;
    message.dish = "QUINCE STEW";
    CHECK(json::message(message, packed, english()) == R"({"dish":"QUINCE STEW","finish":[]})");
    message.raw = true;
    message.bag_id = "7KQ4-1";
    message.servings = 4;
    message.made = packed;
    message.keep_until = {best, kitchen::DateBasis::SetByCook};
    message.thaw = ThawMethod::Refrigerator;
    message.thaw_time = {22h, 30h};
    message.cook_within_days = 2;
    message.thaw_note = "ON A PLATE";
    message.other_thaws = {{ThawMethod::ColdWater, kitchen::TimeRange{3h, 3h}, {}, {}},
                           {ThawMethod::Microwave, {}, {}, {}}};
    message.additions = {{{kitchen::When::Anchor::AtStart, {}}, "1 L STOCK", "TAPED ON"},
                         {{kitchen::When::Anchor::AtServing, {}}, "SAGE", ""}};
    message.cooking.in = "POT";
    message.steps = {"STIR."};
    message.cautions = {"COOK AT ONCE"};
    message.may_contain = {"MILK"};
    message.allergens = {"CELERY"};
    message.note = "FOR SIX";
    message.extent = code::Extent::SeeCard;
    CHECK(json::message(message, packed, english()) ==
          R"({"dish":"QUINCE STEW","raw":true,"id":"7KQ4-1","servings":4,"made":"2026-10-17",)"
          R"("keep_until":"2027-01-16","basis":"use by","days_left":91,"thaw":"refrigerator",)"
          R"("look_from_minutes":1320,"thaw_minutes":1800,"cook_within_days":2,)"
          R"("thaw_note":"ON A PLATE","other_thaws":[{"thaw":"cold water","look_from_minutes":180,)"
          R"("thaw_minutes":180},{"thaw":"microwave"}],)"
          R"("finish":[{"add":"1 L STOCK","when":"at the start","bag":"TAPED ON"},)"
          R"({"add":"SAGE","when":"to serve"}],"cook":"POT","steps":["STIR."],)"
          R"("cautions":["COOK AT ONCE"],"may_contain":["MILK"],"contains":["CELERY"],)"
          R"("note":"FOR SIX","see_card":true})");
    CHECK(json::text("A \"B\"") == R"({"text":"A \"B\""})");
}

TEST_CASE(
    "a bag of the freezer is answered with what it is, and what it names is not for a guest") {
    service::FoundBag found{bag_of_stew(), {}, {}, {}};
    const std::string bag =
        R"({"id":"7KQ4-1","dish":"Quince stew","raw":false,"servings":4,"made":"2026-10-17",)"
        R"("keep_until":"2027-01-16","basis":"use by","days_left":90,"grams":1500,)"
        R"("state":"discarded","changed":"2026-11-01T18:00:00","place":"top basket",)";
    const auto tomorrow = kitchen::add_days(packed, std::chrono::days{1});
    const auto answer = [&] { return json::freezer(std::vector{found}, tomorrow, english()); };
    CHECK(answer() == "[\n  " + bag +
                          R"("contains":null,"may_contain":null,"added":null})"
                          "\n]\n");
    found.bag.weight = kitchen::Mass{283.5};
    CHECK(has(answer(), R"("grams":283.5,)"));
    found.bag.weight.reset();
    CHECK(has(answer(), R"("grams":null,)"));
    found.allergens = wording::DoorAllergens{
        {{"celeriac", {{kitchen::Allergen::Celery, ""}}}}, {{"star moss", {}}}, {}};
    using enum service::NamedIn;
    found.named = {{"a", Contains, "b"},
                   {"a", MayContain, "b"},
                   {"a", Added, "b"},
                   {"a", Words, "b"},
                   {"a", Group, "c"}};
    CHECK(has(answer(), R"("contains":["celery"],"may_contain":["star moss"],"added":[],)"
                        R"("named":[{"word":"a","where":"contains","as":"b"},)"
                        R"({"word":"a","where":"may contain","as":"b"},)"
                        R"({"word":"a","where":"added","as":"b"},)"
                        R"({"word":"a","where":"words","as":"b"},)"
                        R"({"word":"a","where":"group","as":"c"}]})"));
}

TEST_CASE("a bag's history is answered with what each event changed") {
    archive::PastEvent out{"7KQ4-1", {}, false};
    out.event.at = "2026-11-01T18:00:00";
    out.event.state = archive::State::Out;
    archive::PastEvent moved{"7KQ4-1", {}, true};
    moved.event.at = "2026-11-02T09:00:00";
    moved.event.state.reset();
    moved.event.place = "";
    moved.event.joined = "9ABC-1";
    moved.event.undoes = 1;
    CHECK(json::history(bag_of_stew(), std::vector{out, moved}) ==
          R"({"id":"7KQ4-1","dish":"Quince stew","history":[{"at":"2026-11-01T18:00:00",)"
          R"("id":"7KQ4-1","undone":false,"state":"out"},{"at":"2026-11-02T09:00:00",)"
          R"("id":"7KQ4-1","undone":true,"place":"","known_as":"9ABC-1","takes_back":true}]})");
}

TEST_CASE("what to eat next is answered with its bags, and when to thaw them where that is known") {
    service::Proposal dinner;
    dinner.eat = std::chrono::local_days{std::chrono::year{2026} / 11 / 5} + 18h + 30min;
    auto second = bag_of_stew();
    second.id = "7KQ4-2";
    dinner.bags = {bag_of_stew(), second};
    const std::string bags =
        R"("id":"7KQ4-1","ids":["7KQ4-1","7KQ4-2"],"dish":"Quince stew","raw":false,"servings":8,)"
        R"("place":"top basket","keep_until":"2027-01-16","basis":"use by")";
    CHECK(json::next(std::vector{dinner}) ==
          "[\n  "
          R"({"eat":"2026-11-05T18:30","thaw_start":null,"thaw":null,)" +
              bags + "}\n]\n");
    dinner.thaw_start = dinner.eat - 30h;
    dinner.method = ThawMethod::Refrigerator;
    dinner.thaw_time = kitchen::TimeRange{22h, 30h};
    dinner.cook_within = std::chrono::days{2};
    CHECK(json::next(std::vector{dinner}) ==
          "[\n  "
          R"({"eat":"2026-11-05T18:30","thaw_start":"2026-11-04T12:30",)"
          R"("thaw":"refrigerator",)" +
              bags +
              R"(,"look_from_minutes":1320,"thaw_minutes":1800,"cook_within_days":2})"
              "\n]\n");
}

TEST_CASE("a checked day is answered package by package") {
    kitchen::Plan plan;
    auto planned = planned_stew();
    const std::string head =
        R"({"packages":[{"dish":"Quince stew","number":3,"servings":4,"raw":false,)"
        R"("made":"2026-10-17","keep_until":"2027-01-16","basis":"best",)"
        R"("bags":["7KQ4-1","7KQ4-2"],"days_refrigerated":1,"in_freezer":5,)"
        R"("place":"top basket","contains":["celery"],"may_contain":["milk"],)";
    plan.packages = {planned};
    CHECK(checked(plan) ==
          head + R"("thaw":"cold water","other_thaws":[],"sides":[],"cautions":[]}],"cautions":[],)"
                 R"("freezers":[null],"days":[{"made":"2026-10-17","room":{"bags":0,"litres":0.0,)"
                 R"("without_weight":0,"stack_mm":0,"without_thickness":0,)"
                 R"("largest_face_cm2":0}}],"messages":[]})");
    auto& package = planned.package;
    package.weight = kitchen::Mass{749.6};
    package.thickness = Length::millimetres(25);
    package.container = kitchen::Container{{}, {}, {}, "18 × 22 cm"};
    planned.thaw_lead = kitchen::ThawLead{.lead = 3h};
    planned.other_thaws = {planned};
    planned.other_thaws[0].package.thaw.method = ThawMethod::Refrigerator;
    planned.other_thaws[0].thaw_lead->soonest = 2h;
    planned.other_thaws[0].after_thawing = kitchen::DaysLeft{std::chrono::days{2}, {}, {}};
    package.sides = {
        {kitchen::parse_quantity("200 g rice").value(), {20min, 25min}, "pot", {}, {}, {}},
        {kitchen::parse_quantity("bread").value(), {5min, 5min}, "", {}, {}, {}}};
    plan.packages = {planned};
    CHECK(has(checked(plan),
              head + R"("grams":750,"thickness_mm":25.0,"container":"18 × 22 cm",)"
                     R"("thaw":"cold water","look_from_minutes":180,"thaw_minutes":180,)"
                     R"("other_thaws":[{"thaw":"refrigerator","look_from_minutes":120,)"
                     R"("thaw_minutes":180,"cook_within_days":2}],)"
                     R"("sides":[{"add":"200 g rice","takes_minutes":[20,25],"in":"pot"},)"
                     R"({"add":"bread","takes_minutes":[5,5]}],"cautions":[]}])"));
}

TEST_CASE("a checked day is answered with its cautions, each with where it is shown") {
    using enum kitchen::CautionLevel;
    kitchen::Plan plan;
    plan.packages = {planned_stew()};
    const auto caution = [](const char* id, kitchen::CautionLevel level) {
        return kitchen::Caution{id, level, {}, {}, {}, {}};
    };
    plan.cautions = {caution("beans-unclear", Check), caution("refreeze-never", Report),
                     caution("thaw-still-hard", Card)};
    plan.packages[0].cautions = {caution("frozen-grill", LabelAndCard),
                                 caution("slow-cooker-fill", Refuse)};
    const auto answer = checked(plan);
    for (const auto* part :
         {R"("cautions":[{"id":"frozen-grill","shown_on":"label and card","text":"From frozen it)",
          R"({"id":"slow-cooker-fill","shown_on":"refuse","text":"Fill it)",
          R"("cautions":[{"id":"beans-unclear","shown_on":"check","text":"Beans that)",
          R"({"id":"refreeze-never","shown_on":"report","text":"Do not freeze it again)",
          R"({"id":"thaw-still-hard","shown_on":"card","text":"Still hard inside?)"}) {
        CAPTURE(part);
        CHECK(has(answer, part));
    }
}

TEST_CASE("a checked day is answered with what goes into the freezer when, and how full that is") {
    kitchen::Plan plan;
    plan.prepared = kitchen::add_days(packed, std::chrono::days{-1});
    plan.freezer_load = kitchen::FreezerLoad{.total = {3000.4},
                                             .limit_low = {1000},
                                             .limit_high = {2000},
                                             .batches = {{{"a"}, {1000}}, {{"b", "c"}, {500}}},
                                             .elsewhere = {"d"},
                                             .elsewhere_weight = {700},
                                             .too_heavy = {"e"},
                                             .without_weight = {"f"}};
    CHECK(has(checked(plan),
              R"("freezers":[{"grams":3000,"limit_low_grams":1000,"limit_grams":2000,)"
              R"("batches":[{"day":"2026-10-17","grams":1000,"bags":["a"]},)"
              R"({"day":"2026-10-18","grams":500,"bags":["b","c"]}],"elsewhere_grams":700,)"
              R"("elsewhere":["d"],"too_heavy":["e"],"without_weight":["f"]}])"));
    plan.room = {.bags = 4,
                 .litres = 8.96,
                 .unweighed = 1,
                 .stack = Length::millimetres(120.4),
                 .unmeasured = 2,
                 .largest_face = 749.6};
    const std::string room = R"("days":[{"made":"2026-10-17","room":{"bags":4,"litres":9.0,)"
                             R"("without_weight":1,"stack_mm":120,"without_thickness":2,)"
                             R"("largest_face_cm2":750)";
    const std::string rest = R"(},"prepared":"2026-10-16"}])";
    CHECK(has(checked(plan), room + rest));
    struct Case {
        double litres;
        const char* verdict;
    };
    for (const auto& c : {Case{40.0, "fits"}, Case{22.0, "tight"}, Case{20.0, "over"}}) {
        plan.holds = kitchen::FreezerHolds{6, 12.24, 3};
        plan.freezer_litres = c.litres;
        CAPTURE(c.litres);
        CHECK(has(checked(plan), room + R"(,"held":{"bags":6,"litres":12.2,"without_weight":3},)" +
                                     R"("freezer_litres":)" + fmt::format("{:.1f}", c.litres) +
                                     R"(,"verdict":")" + c.verdict + "\"" + rest));
    }
    plan.holds.reset();
    CHECK(has(checked(plan), R"("verdict":"fits")"));
    // To the brim, and just beyond, of what the bags alone take.
    plan.freezer_litres = plan.room.litres;
    CHECK(has(checked(plan), R"("freezer_litres":9.0,"verdict":"tight")"));
    plan.freezer_litres = plan.room.litres - 0.01;
    CHECK(has(checked(plan), R"("verdict":"over")"));
}

TEST_CASE("what was said of the files is answered with its place") {
    service::Messages messages;
    messages.note("a word");
    messages.add_in_order({{Severity::Error, {"day.toml", 3, 5, 1}, {}, "wrong", {"so", "or so"}}},
                          "");
    CHECK(json::check(nullptr, messages, english()) ==
          R"({"packages":[],"cautions":[],"freezers":[],"days":[],"messages":[)"
          R"({"severity":"note","text":"a word","hints":[]},)"
          R"({"severity":"error","file":"day.toml","line":3,"column":5,"text":"wrong",)"
          R"("hints":["so","or so"]}]})");
}

TEST_CASE("a dinner is answered with its dishes, its events and what is to be minded at them") {
    using kitchen::RemarkId;
    using kitchen::TimelineStep;
    const kitchen::Instant noon{std::chrono::sys_days{packed} + 12h};
    service::DinnerPlan plan;
    plan.dishes.resize(2);
    plan.dishes[0].package = planned_stew().package;
    plan.dishes[0].bags = {"7KQ4-1", "7KQ4-2"};
    plan.dishes[0].missed = noon;
    plan.dishes[1].package.dish = "Medlar hash";
    plan.dishes[1].raw = true;
    plan.line.clock.offset = 60min;
    plan.line.eat = noon + 6h;
    plan.line.dishes.resize(2);
    plan.line.dishes[1].ways = {{ThawMethod::ColdWater, noon, noon + 3h, 2h, {}}};
    for (const auto step : {TimelineStep::Thaw, TimelineStep::Look, TimelineStep::Start,
                            TimelineStep::Side, TimelineStep::Add, TimelineStep::Ready}) {
        plan.line.events.push_back({noon, step, 1});
        plan.words.push_back({"Do it", step == TimelineStep::Ready ? "" : "So"});
    }
    plan.line.remarks = {{.id = RemarkId::CookAtOnce, .dish = 1}, {.id = RemarkId::EatIsPast}};
    const auto answer = json::plan(plan, english());
    CHECK(has(answer, R"({"eat":"2026-10-17T19:00","ways":[{"dish":"Medlar hash",)"
                      R"("method":"cold water","begin":"2026-10-17T13:00",)"
                      R"("start":"2026-10-17T16:00","ready":"2026-10-17T19:00","text":")"));
    for (const auto& caution : cautions_of(ThawMethod::ColdWater, 1)) {
        CHECK(has(answer, "\"" + say_remark(plan.line, plan.dishes, caution, english()) + "\""));
    }
    for (const auto* what : {"thaw", "look", "start", "side", "add"}) {
        CAPTURE(what);
        CHECK(has(answer, fmt::format(R"({{"at":"2026-10-17T13:00","what":"{}",)"
                                      R"("dish":"Medlar hash","bags":[],"text":"Do it. So"}})",
                                      what)));
    }
    CHECK(has(answer, R"("what":"ready","dish":"Medlar hash","bags":[],"text":"Do it"}])"));
    CHECK(has(answer, R"("remarks":[{"id":"cook_at_once","severity":"caution",)"
                      R"("dish":"Medlar hash","events":[2],"text":")"));
    CHECK(
        has(answer, R"({"id":"eat_is_past","severity":"cannot be done","dish":null,"events":[],)"));
    CHECK(has(answer, R"("dishes":[{"dish":"Quince stew","raw":false,"serves":4,)"
                      R"("bags":["7KQ4-1","7KQ4-2"],"thaw":"cold water","first_choice":false},)"
                      R"({"dish":"Medlar hash","raw":true,"serves":0,"bags":[],)"
                      R"("thaw":"refrigerator","first_choice":true}]})"));
}

TEST_CASE("how a bag is thawed is answered with what is known of it alone") {
    code::Message message;
    message.dish = "A";
    message.thaw = ThawMethod::Refrigerator;
    const std::string head = R"({"dish":"A","thaw":"refrigerator",)";
    CHECK(has(json::message(message, packed, english()), head + R"("finish":[])"));
    message.cook_within_days = 0;
    CHECK(has(json::message(message, packed, english()), head + R"("cook_within_days":0,)"));
    message.cook_within_days.reset();
    message.thaw_time = {0min, 45min};
    CHECK(has(json::message(message, packed, english()),
              head + R"("look_from_minutes":0,"thaw_minutes":45,"finish":[])"));
}

TEST_CASE("days left are counted to the day itself, and negative beyond it") {
    code::Message message;
    message.dish = "A";
    message.keep_until = {best, kitchen::DateBasis::StorageTable};
    service::FoundBag found{bag_of_stew(), {}, {}, {}};
    for (const int days : {1, 0, -1}) {
        CAPTURE(days);
        const auto today = kitchen::add_days(best, std::chrono::days{-days});
        const auto left = fmt::format(R"("days_left":{})", days);
        CHECK(has(json::message(message, today, english()), left + "}") !=
              has(json::message(message, today, english()), left + ","));
        CHECK(has(json::freezer(std::vector{found}, today, english()), left + ","));
    }
    CHECK_FALSE(has(json::message(message, best, english()), "\"made\""));
}

TEST_CASE("a text that is no UTF-8 is answered as one that is") {
    CHECK(json::text("a\xFF"
                     "b") == "{\"text\":\"a�"
                             "b\"}");
    CHECK(json::text("a\n\"é") == "{\"text\":\"a\\n\\\"é\"}");
}
