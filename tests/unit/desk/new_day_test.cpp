#include "sample_text.h"
#include "support/asked.h"
#include "support/fake_machine.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

struct DraftsFolder {
    FakeMachine fake;
    desk::Desk desk;

    DraftsFolder() : desk{(fake.days["a.toml"] = former, machine_of(fake))} {
        get(desk, "/api/state");
    }

    http::Response make(const json::Json& body) { return post(desk, "/api/days", body); }
    json::Json made(const json::Json& body) {
        const auto answer = make(body);
        REQUIRE(answer.status == 200);
        return said(answer);
    }
    json::Json checked(const json::Json& day) {
        return said(post(
            desk, "/api/check",
            {{"number", day["number"]}, {"text", fake.days[day["name"]]}, {"what", "labels"}}));
    }

    static inline const std::string former =
        "# the crew\n[day]\nmade = 2026-10-17 # Saturday\nprepared = 2026-10-16\n\n[[package]]\n"
        "dish = \"Barley stew\" # with celery\nservings = 4\nfood = \"soup or stew\"\n"
        "use_by = 2026-11-20\nmade = 2026-10-16\n";
};

} // namespace

TEST_CASE("a new day is blank, a sample, or a former one without the dates of its bags") {
    DraftsFolder folder;
    const auto again = folder.made({{"from", 1}, {"made", "2026-11-07"}});
    CHECK(again["name"] == "2026-11-07-day.toml");
    CHECK(again["number"] == 2);
    CHECK(folder.fake.days["2026-11-07-day.toml"] ==
          "# the crew\n[day]\nmade = 2026-11-07 # Saturday\n\n[[package]]\n"
          "dish = \"Barley stew\" # with celery\nservings = 4\nfood = \"soup or stew\"\n");
    CHECK(folder.fake.days["a.toml"] == DraftsFolder::former);

    for (const std::string language : {"en", "es", "de"}) {
        folder.fake.settings.language = language;
        const auto sample = folder.made({{"from", "sample"}, {"made", "2026-10-17"}});
        CHECK(folder.checked(sample)["messages"].empty());
        CHECK(folder.checked(sample)["prints"].size() == 1);
        const auto blank = folder.checked(folder.made({{"from", "blank"}, {"made", "2026-10-17"}}));
        CHECK(blank["form"]["package"].size() == 1);
        CHECK_FALSE(blank["messages"].empty()); // what must be filled in
    }
}

TEST_CASE("a new day never takes the place of a file") {
    DraftsFolder folder;
    const json::Json blank{{"from", "blank"}, {"made", "2026-10-17"}};
    CHECK(folder.made(blank)["name"] == "2026-10-17-day.toml");
    CHECK(folder.made(blank)["name"] == "2026-10-17-2-day.toml");
    CHECK(folder.made(blank)["name"] == "2026-10-17-3-day.toml");
    CHECK(folder.fake.days.size() == 4);
}

TEST_CASE("where a thousand files of a name are there already, another name is asked for") {
    FakeMachine fake;
    auto machine = machine_of(fake);
    int tries = 0;
    int free = 1000;
    machine.days.write = [&](const std::string&, const std::optional<std::string>& before,
                             const std::string&) {
        CHECK_FALSE(before); // never in the place of another
        return ++tries == free;
    };
    desk::Desk desk{machine};
    const json::Json blank{{"from", "blank"}, {"made", "2026-10-17"}};
    CHECK(said(post(desk, "/api/days", blank))["name"] == "2026-10-17-1000-day.toml");
    tries = 0;
    free = 1001;
    const auto refused = post(desk, "/api/days", blank);
    CHECK(refused.status == 422);
    CHECK(said(refused)["messages"][0]["text"] ==
          "there are too many days of this name: give it another");
    CHECK(tries == 1000);
}

TEST_CASE("a new day is of the years that a description may have") {
    DraftsFolder folder;
    const auto status = [&folder](const char* made) {
        return folder.make({{"from", "blank"}, {"made", made}}).status;
    };
    CHECK(status("1989-12-31") == 400);
    CHECK(status("1990-01-01") == 200);
    CHECK(status("2200-12-31") == 200);
    CHECK(status("2201-01-01") == 400);
}

TEST_CASE("a name of a cook's words is one that any folder takes") {
    DraftsFolder folder;
    const auto name = [&folder](const std::string& words) {
        return folder.made({{"from", "blank"}, {"made", "2026-10-17"}, {"name", words}})["name"];
    };
    CHECK(name("Äpfel und Kraut") == "Äpfel-und-Kraut-day.toml");
    CHECK(name("../../etc/passwd") == "etc-passwd-day.toml");
    CHECK(name(".hidden") == "hidden-day.toml");
    CHECK(name("/") == "2026-10-17-day.toml");
    CHECK(name(std::string(59, 'a') + "ä") == std::string(59, 'a') + "-day.toml");
    CHECK(name("Tuesday") == "Tuesday.toml");
}

TEST_CASE("a new day that no page asks for is refused") {
    DraftsFolder folder;
    CHECK(folder.make({{"from", "empty"}, {"made", "2026-10-17"}}).status == 400);
    CHECK(folder.make({{"made", "2026-10-17"}}).status == 400);
    CHECK(folder.make({{"from", "blank"}}).status == 400);
    CHECK(folder.make({{"from", "blank"}, {"made", "17.10.2026"}}).status == 400);
    CHECK(folder.make({{"from", "blank"}, {"made", "2026-02-30"}}).status == 400);
    CHECK(folder.make({{"from", "blank"}, {"made", "0026-10-17"}}).status == 400);
    CHECK(folder.make({{"from", "blank"}, {"made", "9999-10-17"}}).status == 400);
    CHECK(folder.make({{"from", 1.5}, {"made", "2026-10-17"}}).status == 400);
    CHECK(folder.make({{"from", 9}, {"made", "2026-10-17"}}).status == 422);
    folder.fake.days["a.toml"] = "[day\n";
    CHECK(folder.make({{"from", 1}, {"made", "2026-10-17"}}).status == 422);
    CHECK(put(folder.desk, "/api/days", json::Json::object()).status == 405);
    CHECK(folder.fake.days.size() == 1);
}
