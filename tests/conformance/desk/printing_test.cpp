// What the page prints is what the commands print: the same bytes, ids and archive; and once.

#include "running_desk.h"

#include <doctest/doctest.h>
#include <filesystem>

using namespace thawslip;
using namespace thawslip::test_support;
using json::Json;

namespace {

namespace fs = std::filesystem;

struct Kitchen {
    User user;

    Kitchen() { fs::copy_file(sample_day, user.day("orchard.toml")); }
};

struct OpenDay {
    int number = 0;
    std::string etag;
    std::string text;
};

OpenDay open_day(const RunningDesk& desk, const std::string& name = "orchard.toml") {
    OpenDay day{desk.number_of(name), {}, {}};
    const auto shown = json_of(desk.get("/api/day/" + std::to_string(day.number)));
    day.etag = shown.at("etag").get<std::string>();
    day.text = shown.at("text").get<std::string>();
    return day;
}

std::string ticket(int number) {
    return "ticket-of-a-test-" + std::to_string(number);
}

Json wish(const OpenDay& day, const std::string& what, int number, Json look = Json::object()) {
    return {{"number", day.number}, {"etag", day.etag},   {"what", what},
            {"look", look},         {"printer", nullptr}, {"ticket", ticket(number)}};
}

std::string pdf_of(const RunningDesk& desk, const Json& answer) {
    const auto reply = desk.get(answer.at("pdf").get<std::string>());
    CHECK(reply.status == 200);
    CHECK(reply.headers.at("content-type") == "application/pdf");
    return reply.body;
}

/// What the same command writes for another user with the same day at the same place: ids are made
/// from where the file is.
std::string file_of(const User& user, const std::string& words) {
    const auto file = user.home / "by-command.pdf";
    const auto done = user.thawslip(words + " -o " + shell_word(file));
    CAPTURE(done.err);
    CHECK(done.status == 0);
    return read_file(file);
}

std::string bags_known(const User& user) {
    return user.thawslip("freezer list --json").out;
}

} // namespace

TEST_CASE_FIXTURE(Kitchen, "a PDF from the page is the file of the command, byte for byte") {
    const auto day = shell_word(user.day("orchard.toml"));
    const std::pair<const char*, std::string> prints[] = {
        {"labels", "labels --no-archive " + day},
        {"cook_day_cards", "cards --no-archive --cook-day " + day},
        {"finishing_cards", "cards --no-archive --finishing " + day},
        {"cards", "cards --no-archive " + day},
        {"shopping", "lists --shopping " + day}};
    const RunningDesk desk{user};
    const auto open = open_day(desk);
    int number = 0;
    for (const auto& [what, words] : prints) {
        CAPTURE(what);
        const auto expected = file_of(user, words);
        const auto answer = json_of(desk.post("/api/spool", wish(open, what, ++number)));
        CAPTURE(answer.dump());
        REQUIRE(answer.at("done") == true);
        CHECK(pdf_of(desk, answer) == expected);
        CHECK(answer.at("said").get<std::string>().find(user.home / "tmp") == std::string::npos);
    }
    CHECK(fs::is_empty(user.home / "tmp")); // no PDF stays behind
}

TEST_CASE_FIXTURE(Kitchen, "the preview of a sheet is the file of the command, byte for byte") {
    const RunningDesk desk{user};
    const auto open = open_day(desk);
    const auto file = user.home / "labels.svg";
    const auto done = user.thawslip("labels " + shell_word(user.day("orchard.toml")) + " -o " +
                                    shell_word(file) + " --no-archive --first-cell 3");
    REQUIRE(done.status == 0);
    const auto sheet = json_of(desk.post("/api/sheet", {{"number", open.number},
                                                        {"text", open.text},
                                                        {"what", "labels"},
                                                        {"look", {{"first_cell", 3}}},
                                                        {"sheet", 1}}));
    CHECK(sheet.at("svg") == read_file(file));
    CHECK_FALSE(fs::exists(user.archive())); // looking remembers nothing
}

TEST_CASE_FIXTURE(Kitchen, "what the page printed is in the archive that commands have") {
    const RunningDesk desk{user};
    const auto answer = json_of(desk.post("/api/spool", wish(open_day(desk), "labels", 1)));
    REQUIRE(answer.at("done") == true);
    CHECK(fs::exists(user.archive()));
    CHECK(bags_known(user).find("\"id\"") != std::string::npos);
    const auto trial =
        json_of(desk.post("/api/spool", wish(open_day(desk), "labels", 2, {{"trial", true}})));
    CHECK(trial.at("said").get<std::string>().find("a trial: nothing was recorded") !=
          std::string::npos);
}

TEST_CASE_FIXTURE(Kitchen, "a ticket is good for one print: whoever asks again gets its answer") {
    const RunningDesk desk{user};
    const auto first = desk.post("/api/spool", wish(open_day(desk), "labels", 1));
    const auto known = bags_known(user);
    CHECK(desk.post("/api/spool", wish(open_day(desk), "labels", 1)).body == first.body);
    write_file(user.day("orchard.toml"), read_file(user.day("orchard.toml")) + "\n# changed\n");
    CHECK(desk.post("/api/spool", wish(open_day(desk), "labels", 1)).body == first.body);
    CHECK(bags_known(user) == known);
    for (const auto* poor :
         {"", "short", "with a blank in the middle", "../../../etc/passwd...."}) {
        CAPTURE(poor);
        auto asked = wish(open_day(desk), "labels", 9);
        asked["ticket"] = poor;
        CHECK(desk.post("/api/spool", asked).status == 400);
    }
}

TEST_CASE_FIXTURE(Kitchen, "a day that changed since the page saw it is not printed") {
    const RunningDesk desk{user};
    const auto seen = open_day(desk);
    write_file(user.day("orchard.toml"), read_file(user.day("orchard.toml")) + "\n# changed\n");
    const auto refused = desk.post("/api/spool", wish(seen, "labels", 1));
    CHECK(refused.status == 409);
    CHECK_FALSE(fs::exists(user.archive()));
    // Nothing was printed, so the ticket is as good as before.
    CHECK(json_of(desk.post("/api/spool", wish(open_day(desk), "labels", 1))).at("done") == true);
}

TEST_CASE_FIXTURE(Kitchen, "a bag is printed again, and a door list, as the commands do it") {
    const RunningDesk desk{user};
    REQUIRE(json_of(desk.post("/api/spool", wish(open_day(desk), "labels", 1))).at("done") == true);
    const auto bags = json::parsed(bags_known(user));
    const auto id = bags.at(0).at("id").get<std::string>();
    const auto again = json_of(desk.post("/api/reprint", {{"bags", {id}},
                                                          {"kind", "labels"},
                                                          {"look", {{"first_cell", 2}}},
                                                          {"printer", nullptr},
                                                          {"ticket", ticket(2)}}));
    REQUIRE(again.at("done") == true);
    const auto file = user.home / "again.pdf";
    REQUIRE(user.thawslip("reprint " + id + " --first-cell 2 -o " + shell_word(file)).status == 0);
    CHECK(pdf_of(desk, again) == read_file(file));
    const auto door =
        json_of(desk.post("/api/freezer/door-list",
                          {{"look", Json::object()}, {"printer", nullptr}, {"ticket", ticket(3)}}));
    REQUIRE(door.at("done") == true);
    const auto list = user.home / "door.pdf";
    REQUIRE(user.thawslip("lists --door -o " + shell_word(list)).status == 0);
    CHECK(pdf_of(desk, door) == read_file(list));
    for (const Json& poor : {Json{{"kind", "labels"}}, Json{{"kind", "boxes"}, {"bags", {id}}},
                             Json{{"kind", "labels"}, {"bags", {id}}, {"printed", "2026-10-17"}}}) {
        CAPTURE(poor.dump());
        auto asked = poor;
        asked["ticket"] = ticket(4);
        CHECK(desk.post("/api/reprint", asked).status == 400);
    }
}

TEST_CASE_FIXTURE(Kitchen, "where only the cook knows which bags are meant, the page is asked") {
    const RunningDesk desk{user};
    REQUIRE(json_of(desk.post("/api/spool", wish(open_day(desk), "labels", 1))).at("done") == true);
    // The same dishes of the same day in another file, edited: the same pots, or others?
    write_file(user.day("second.toml"), read_file(sample_day) + "\n# a second pot\n");
    const auto second = open_day(desk, "second.toml");
    const auto known = bags_known(user);
    const auto asked = json_of(desk.post("/api/spool", wish(second, "labels", 2)));
    CHECK(asked.at("done") == false);
    REQUIRE(asked.at("asks").size() > 0);
    const auto& question = asked.at("asks").at(0);
    CHECK(question.at("made") == "2026-10-17");
    const auto bag = question.at("known").at(0).at("bag").get<std::string>();
    CHECK(known.find(bag) != std::string::npos);
    CHECK(bags_known(user) == known);
    auto others = wish(second, "labels", 3);
    others["new_batch"] = true;
    CHECK(json_of(desk.post("/api/spool", others)).at("done") == true);
    CHECK(bags_known(user) != known);
    others["same_batch"] = bag; // a list of them
    others["ticket"] = ticket(4);
    CHECK(desk.post("/api/spool", others).status == 400);
}

TEST_CASE_FIXTURE(Kitchen,
                  "PDFs are kept for a while, and one that is forgotten can be made again") {
    const RunningDesk desk{user};
    const auto first = json_of(desk.post("/api/spool", wish(open_day(desk), "shopping", 1)));
    for (int number = 2; number <= 5; ++number) {
        CHECK(
            json_of(desk.post("/api/spool", wish(open_day(desk), "shopping", number))).at("done") ==
            true);
    }
    CHECK(desk.get(first.at("pdf").get<std::string>()).status == 404);
    CHECK(desk.get("/api/out/" + ticket(5) + ".pdf").status == 200);
}

TEST_CASE_FIXTURE(Kitchen,
                  "a page knows no files: stocks are named, and nothing is read through one") {
    const RunningDesk desk{user};
    for (const auto* stock : {"/etc/passwd", "../days/orchard.toml", "orchard.toml"}) {
        CAPTURE(stock);
        const auto reply =
            desk.post("/api/spool", wish(open_day(desk), "labels", 1, {{"stock", stock}}));
        CHECK(reply.status == 400);
        CHECK(reply.body.find("root:") == std::string::npos);
    }
}

TEST_CASE_FIXTURE(Kitchen,
                  "a backup and an export stand beside the days, over nothing that is there") {
    const RunningDesk desk{user};
    CHECK(json_of(desk.post("/api/archive/backup", Json::object())).at("done") == false);
    REQUIRE(json_of(desk.post("/api/spool", wish(open_day(desk), "labels", 1))).at("done") == true);
    write_file(user.day("archive-2026-10-17.db"), "mine");
    for (int i = 0; i < 2; ++i) {
        CHECK(json_of(desk.post("/api/archive/backup", Json::object())).at("done") == true);
        CHECK(json_of(desk.post("/api/archive/export", Json::object())).at("done") == true);
    }
    CHECK(read_file(user.day("archive-2026-10-17.db")) == "mine");
    CHECK(fs::exists(user.day("archive-2026-10-17-2.db")));
    CHECK(fs::exists(user.day("archive-2026-10-17-3.db")));
    CHECK(fs::is_directory(user.day("archive-2026-10-17")));
    CHECK(fs::is_directory(user.day("archive-2026-10-17-2")));
}
