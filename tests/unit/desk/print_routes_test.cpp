// What the page asks of printing: once for a ticket, of the day that it has seen, and of nothing
// else.

#include "desk/tickets.h"
#include "support/asked.h"
#include "support/fake_machine.h"
#include "support/printed_days.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::test_support;
using json::Json;

namespace {

const std::string day = "[day]\nmade = 2026-10-17\n";

struct Page {
    FakeMachine machine;
    desk::Desk desk{[this] {
        machine.days["plums.toml"] = day;
        return machine_of(machine);
    }()};

    /// Of the only day.
    int number = said(get(desk, "/api/days"))["days"][0]["number"].get<int>();

    std::string etag() {
        const auto path = "/api/day/" + std::to_string(number);
        return said(get(desk, path))["etag"].get<std::string>();
    }
    Json wish(const std::string& ticket) {
        return {{"number", number}, {"etag", etag()}, {"what", "labels"}, {"ticket", ticket}};
    }
};

const std::string one = "ticket-number-one";
const std::string two = "ticket-number-two";

} // namespace

TEST_CASE_FIXTURE(Page, "what the page wants printed is what the computer is asked for") {
    auto asked = wish(one);
    asked["what"] = "cook_day_cards";
    asked["look"] = {{"stock", "a4-cards-a6-cut"},
                     {"first_cell", "next"},
                     {"skip", {2, 3}},
                     {"copies", 2},
                     {"trial", true},
                     {"dishes", "plum"}};
    asked["printer"] = "cellar";
    asked["new_batch"] = true;
    CHECK(post(desk, "/api/spool", asked).status == 200);
    REQUIRE(machine.prints.size() == 1);
    const auto& print = machine.prints.front();
    CHECK(print.day == "plums.toml");
    CHECK(print.what == service::What::CookDayCards);
    CHECK(print.look.stock == "a4-cards-a6-cut");
    CHECK(print.look.first_cell == service::next_cell);
    CHECK(print.look.skip == std::vector{2, 3});
    CHECK(print.look.part.copies == 2);
    CHECK(print.look.part.dishes == "plum");
    CHECK(print.look.is_trial);
    CHECK(print.to.printer == "cellar");
    CHECK(print.which.kind == archive::WhichBatch::Kind::New);
}

TEST_CASE_FIXTURE(Page, "a ticket prints once, and its answer is given again") {
    const auto first = post(desk, "/api/spool", wish(one));
    CHECK(post(desk, "/api/spool", wish(one)).body == first.body);
    CHECK(machine.prints.size() == 1);
    CHECK(post(desk, "/api/spool", wish(two)).status == 200);
    CHECK(machine.prints.size() == 2);
    // A ticket of one kind of print is none for another.
    CHECK(post(desk, "/api/freezer/door-list", {{"ticket", one}}).body == first.body);
    CHECK(machine.door_lists == 0);
}

TEST_CASE_FIXTURE(Page, "what is no ticket prints nothing, and bags are those that were named") {
    for (const auto& ticket : {std::string(15, 'a'), std::string(65, 'a'),
                               std::string(15, 'a') + "/", std::string(16, ' '), std::string{}}) {
        CAPTURE(ticket);
        const auto refused = post(desk, "/api/spool", wish(ticket));
        CHECK(refused.status == 400);
        CHECK(refused.body.find("from 16 to 64 letters, digits and hyphens") != std::string::npos);
    }
    auto both = wish(one);
    both["same_batch"] = "K7Q-2M4-9XW";
    CHECK(post(desk, "/api/spool", both).status == 400); // a list of them
    CHECK(machine.prints.empty());
    both["same_batch"] = Json::array({"K7Q-2M4-9XW"});
    both["new_batch"] = true;
    CHECK(post(desk, "/api/spool", both).status == 200);
    CHECK(machine.prints.back().which.kind == archive::WhichBatch::Kind::New);
    CHECK(machine.prints.back().which.bags == std::vector<std::string>{"K7Q-2M4-9XW"});
    for (const auto& ticket : {std::string(16, 'a'), std::string(63, 'Z') + "-"}) {
        CHECK(post(desk, "/api/spool", wish(ticket)).status == 200);
    }
    auto same = wish(two);
    same["same_batch"] = Json::array({"K7Q-2M4-9XW", "000-000-011"});
    CHECK(post(desk, "/api/spool", same).status == 200);
    CHECK(machine.prints.back().which.kind == archive::WhichBatch::Kind::OfBag);
    CHECK(machine.prints.back().which.bags.size() == 2);
}

TEST_CASE_FIXTURE(Page, "a ticket is used up by a print that failed when paper may be out") {
    auto asks = machine_of(machine);
    int times = 0;
    asks.print = [&times](const desk::PrintWish&) -> desk::Delivered {
        ++times;
        throw std::runtime_error{"this print is at the printer, but not recorded"};
    };
    desk::Desk broken{asks};
    get(broken, "/api/days"); // gives the day its number
    const auto first = post(broken, "/api/spool", wish(one));
    CHECK(first.status == 500);
    CHECK(first.body.find("not recorded") != std::string::npos);
    CHECK(post(broken, "/api/spool", wish(one)).body == first.body);
    CHECK(times == 1);
}

TEST_CASE_FIXTURE(Page, "a PDF is handed over by its ticket, the last four of them") {
    for (int i = 0; i < 5; ++i) {
        machine.delivered = {true, "printed", "%PDF-" + std::to_string(i)};
        const auto ticket = "ticket-of-number-" + std::to_string(i);
        CHECK(said(post(desk, "/api/spool", wish(ticket)))["pdf"] == "/api/out/" + ticket + ".pdf");
    }
    CHECK(get(desk, "/api/out/ticket-of-number-0.pdf").status == 404);
    for (int i = 1; i < 5; ++i) {
        const auto pdf = get(desk, "/api/out/ticket-of-number-" + std::to_string(i) + ".pdf");
        CHECK(pdf.status == 200);
        CHECK(pdf.type == "application/pdf");
        CHECK(pdf.body == "%PDF-" + std::to_string(i));
    }
    machine.delivered = {true, "printing on kitchen", ""};
    CHECK_FALSE(said(post(desk, "/api/spool", wish("ticket-of-a-paper"))).contains("pdf"));
}

TEST_CASE_FIXTURE(Page, "a day that the page has not seen so is not printed") {
    const auto seen = wish(one);
    machine.days["plums.toml"] += "# changed\n";
    CHECK(post(desk, "/api/spool", seen).status == 409);
    CHECK(machine.prints.empty());
    CHECK(post(desk, "/api/spool", wish(one)).status == 200); // the ticket is as good as before
    auto gone = wish(two);
    gone["number"] = 17;
    CHECK(post(desk, "/api/spool", gone).status == 404);
}

TEST_CASE("a print that may be of bags that are there already is answered with the question") {
    PrintedDay printed{R"([day]
made = 2026-10-17

[[package]]
dish = "Barley stew"
servings = 4
bags = 2
use_by = 2027-01-17
)"};
    const std::string other = R"([day]
made = 2026-10-17

[[package]]
dish = "Barley stew"
servings = 6
bags = 3
use_by = 2027-02-17
)";
    printed.fake.days["barn.toml"] = other;
    printed.fake.delivered = {false, "which is it?", ""};
    const auto number = said(get(printed.desk, "/api/days"))["days"][0]["number"];
    const auto etag =
        said(get(printed.desk, "/api/day/" + number.dump()))["etag"].get<std::string>();
    const auto asked = [&](const std::string& ticket, const Json& more) {
        Json body{{"number", number}, {"etag", etag}, {"what", "labels"}, {"ticket", ticket}};
        body.update(more);
        return printed.ask("/api/spool", body);
    };
    const auto answer = asked(one, Json::object());
    CHECK(answer["done"] == false);
    REQUIRE(answer["asks"].size() == 1);
    const auto& ask = answer["asks"][0];
    CHECK(ask["dish"] == "Barley stew");
    CHECK(ask["made"] == "2026-10-17");
    REQUIRE(ask["known"].size() == 1);
    const auto& known = ask["known"][0];
    CHECK(known["bag"] == printed.bag("barley").id);
    CHECK(known["bags"] == 2);
    CHECK(known["servings"] == 4);
    CHECK(known["file"] == "/days/day.toml");
    CHECK(known["kitchen"] == "");
    CHECK(known["printed"] == "2026-10-17T11:00:00");
    // Who has said it, or tries on plain paper, is not asked.
    CHECK_FALSE(asked("ticket-of-other-bags", {{"new_batch", true}}).contains("asks"));
    CHECK_FALSE(asked("ticket-of-same-bags-", {{"same_batch", Json::array({known["bag"]})}})
                    .contains("asks"));
    CHECK_FALSE(asked("ticket-of-a-trial-now", {{"look", {{"trial", true}}}}).contains("asks"));
    printed.fake.delivered = {true, "printed", ""};
    CHECK_FALSE(asked(two, Json::object()).contains("asks"));
    // What has no question has none to answer.
    printed.fake.delivered = {false, "no paper", ""};
    printed.fake.days["barn.toml"] = "[day]\nmade = 2026-10-17\n";
    const auto fresh =
        said(get(printed.desk, "/api/day/" + number.dump()))["etag"].get<std::string>();
    CHECK_FALSE(asked("ticket-of-no-question", {{"etag", fresh}}).contains("asks"));
}

TEST_CASE_FIXTURE(Page, "a print that was asked for badly leaves its ticket as good as before") {
    auto poor = wish(one);
    poor["look"] = {{"copies", 100}};
    CHECK(post(desk, "/api/spool", poor).status == 400);
    poor["look"] = {{"copies", 99}};
    CHECK(post(desk, "/api/spool", poor).status == 200);
    CHECK(machine.prints.back().look.part.copies == 99);
    CHECK(post(desk, "/api/freezer/door-list", {{"ticket", two}, {"printer", 7}}).status == 400);
    CHECK(post(desk, "/api/freezer/door-list", {{"ticket", two}}).status == 200);
    CHECK(machine.door_lists == 1);
    // Cells are numbered as on a sheet, from 1 to 1000.
    auto cells = wish("ticket-of-the-cells");
    for (const Json& skip : {Json{0}, Json{1001}, Json{1.5}, Json::array({"1"})}) {
        CAPTURE(skip.dump());
        cells["look"] = {{"skip", skip}};
        CHECK(post(desk, "/api/spool", cells).status == 400);
    }
    cells["look"] = {{"skip", {1, 1000}}, {"first_cell", 0}};
    CHECK(post(desk, "/api/spool", cells).status == 400);
    cells["look"]["first_cell"] = 1;
    CHECK(post(desk, "/api/spool", cells).status == 200);
    CHECK(machine.prints.back().look.skip == std::vector{1, 1000});
}

TEST_CASE_FIXTURE(Page, "each word for a print is a print of its own") {
    const std::pair<const char*, service::What> words[] = {
        {"labels", service::What::Labels},
        {"finishing_cards", service::What::FinishingCards},
        {"cook_day_cards", service::What::CookDayCards},
        {"cards", service::What::Cards},
        {"lists", service::What::Lists},
        {"day_sheets", service::What::DaySheets},
        {"shopping", service::What::Shopping},
        {"door_list", service::What::DoorList}};
    int ticket = 0;
    for (const auto& [word, what] : words) {
        CAPTURE(word);
        auto asked = wish("ticket-of-a-word-" + std::to_string(++ticket));
        asked["what"] = word;
        CHECK(post(desk, "/api/spool", asked).status == 200);
        CHECK(machine.prints.back().what == what);
        CHECK_FALSE(machine.prints.back().to.printer); // the page makes a file of it
    }
}

TEST_CASE_FIXTURE(Page, "reprints name bags or a date, and keep the look that they had") {
    const auto asked = [](Json more) {
        Json body{{"kind", "labels"}, {"ticket", one}};
        body.update(more);
        return body;
    };
    CHECK(post(desk, "/api/reprint", asked({{"bags", {"K7Q-2M4-9XW"}}, {"printer", ""}})).status ==
          200);
    REQUIRE(machine.reprints.size() == 1);
    const auto& wish = machine.reprints.front();
    CHECK(wish.question.bags == std::vector<std::string>{"K7Q-2M4-9XW"});
    CHECK_FALSE(wish.look.first_cell);
    CHECK_FALSE(wish.look.copies);
    CHECK(wish.to.printer == "");
    CHECK(post(desk, "/api/reprint",
               asked({{"printed", "2026-10-17"},
                      {"ticket", two},
                      {"look", {{"first_cell", 1}, {"only_new", true}}}}))
              .status == 200);
    CHECK(machine.reprints.back().look.first_cell == 1);
    CHECK(machine.reprints.back().question.part.only_new);
    CHECK(machine.reprints.back().question.printed == "2026-10-17");
    const auto one_kind = asked(
        {{"bags", {"K7Q-2M4-9XW"}}, {"kind", "finishing_cards"}, {"ticket", std::string(20, 'c')}});
    CHECK(post(desk, "/api/reprint", one_kind).status == 200);
    CHECK(machine.reprints.back().question.kind == service::ReprintKind::FinishingCards);
    for (const Json& poor :
         {asked(Json::object()), asked({{"bags", {"K7Q"}}, {"printed", "2026-10-17"}}),
          asked({{"bags", {"K7Q"}}, {"kind", "boxes"}}), asked({{"bags", "K7Q"}}),
          asked({{"bags", {"K7Q"}}, {"printer", 7}}), asked({{"bags", {"K7Q"}}, {"ticket", 7}})}) {
        CAPTURE(poor.dump());
        CHECK(post(desk, "/api/reprint", poor).status == 400);
    }
    CHECK(machine.reprints.size() == 3);
}

TEST_CASE("tickets are what a page makes, and nothing that leads anywhere") {
    using desk::Tickets;
    CHECK(Tickets::is_ticket("0123456789abcdef"));
    CHECK(Tickets::is_ticket(std::string(64, 'x')));
    CHECK(Tickets::is_ticket("5d1a3e7c-90aa-4c1b-8f2e-6f1f0f9f7a11"));
    for (const auto& poor :
         {std::string{}, std::string(15, 'x'), std::string(65, 'x'),
          std::string{"0123456789abcde/"}, std::string{"0123456789abcde."},
          std::string{"0123456789abcde\0", 16}, std::string{"größer-als-sechzehn"}}) {
        CAPTURE(poor);
        CHECK_FALSE(Tickets::is_ticket(poor));
    }
}

TEST_CASE("answers are kept for hundreds of prints, and large PDFs for as much as there is room") {
    desk::Tickets tickets;
    const std::string large(std::size_t{40} << 20U, 'x');
    for (int i = 0; i < 3; ++i) {
        tickets.keep("large-" + std::to_string(i), {}, large);
    }
    CHECK(tickets.pdf("large-2") != nullptr); // the newest, whatever its size
    CHECK(tickets.pdf("large-1") != nullptr);
    CHECK(tickets.pdf("large-0") == nullptr);
    for (int i = 0; i < 500; ++i) {
        tickets.keep("small-" + std::to_string(i), {}, {});
    }
    CHECK(tickets.answer("large-2") == nullptr);
    CHECK(tickets.answer("small-0") != nullptr);
    CHECK(tickets.pdf("small-0") == nullptr);
}
