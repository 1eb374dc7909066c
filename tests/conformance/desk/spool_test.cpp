// Printing from the page on a real CUPS server: what arrives where the printer would be.

#include "conformance/spool/server.h"
#include "running_desk.h"
#include "support/skip.h"

#include <doctest/doctest.h>
#include <filesystem>
#include <memory>

namespace spool_test {

using namespace thawslip;
using namespace thawslip::test_support;
using json::Json;

namespace {

bool has(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

/// The number in "note: printing on kitchen, job 7, at 100 %…".
int job_in(const std::string& said) {
    const auto at = said.find(", job ");
    REQUIRE(at != std::string::npos);
    return std::stoi(said.substr(at + 6));
}

} // namespace

TEST_CASE("the page prints on a printer, and a double tap prints once") {
    const Server cups;
    if (!cups.answers()) {
        skip("no CUPS server of our own can be started here: " + cups.log());
        return;
    }
    User user;
    user.environment["CUPS_SERVER"] = cups.address();
    std::filesystem::copy_file(sample_day, user.day("orchard.toml"));
    const auto file = user.home / "labels.pdf";
    REQUIRE(user.thawslip("labels " + shell_word(user.day("orchard.toml")) + " --no-archive -o " +
                          shell_word(file))
                .status == 0);
    const RunningDesk desk{user};
    const auto state = json_of(desk.get("/api/state"));
    CHECK(state.at("printers").at(0) == "kitchen"); // the usual one
    CHECK(state.at("printers").size() == 3);
    const int number = desk.number_of("orchard.toml");
    const auto etag =
        json_of(desk.get("/api/day/" + std::to_string(number))).at("etag").get<std::string>();
    Json wish{{"number", number},       {"etag", etag},  {"what", "labels"},
              {"look", Json::object()}, {"printer", ""}, {"ticket", "a-double-tap-is-one"}};
    const auto first = json_of(desk.post("/api/spool", wish));
    const auto second = json_of(desk.post("/api/spool", wish));
    REQUIRE(first.at("done") == true);
    CHECK(first == second);
    CHECK_FALSE(first.contains("pdf"));
    const auto said = first.at("said").get<std::string>();
    CHECK(has(said, "printing on kitchen, job "));
    const int job = job_in(said);
    const auto arrived = cups.arrived(job);
    CHECK(arrived.document == read_file(file));
    CHECK(arrived.copies == "1");
    wish["ticket"] = "another-tap-later";
    wish["printer"] = "office";
    const auto third = json_of(desk.post("/api/spool", wish));
    CHECK(job_in(third.at("said").get<std::string>()) == job + 1); // none came between
    wish["ticket"] = "a-printer-that-takes-none";
    wish["printer"] = "broken";
    const auto refused = json_of(desk.post("/api/spool", wish));
    CHECK(refused.at("done") == false);
    CHECK(has(refused.at("said").get<std::string>(), "refused the job"));
    wish["ticket"] = "a-printer-that-is-not";
    wish["printer"] = "kichten";
    CHECK(has(json_of(desk.post("/api/spool", wish)).at("said").get<std::string>(),
              "did you mean \"kitchen\""));
}

} // namespace spool_test
