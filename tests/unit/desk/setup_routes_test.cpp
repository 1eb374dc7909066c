#include "support/asked.h"
#include "support/fake_machine.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

struct Setup {
    FakeMachine fake;
    desk::Desk desk{machine_of(fake)};

    json::Json shown() { return said(get(desk, "/api/setup")); }
    http::Response keep(const json::Json& edits) {
        return put(desk, "/api/setup", {{"edits", edits}}, shown()["etag"]);
    }
    json::Json kept(const json::Json& edits) {
        const auto answer = keep(edits);
        REQUIRE(answer.status == 200);
        return said(answer);
    }
};

json::Json one_edit(const std::string& path, const json::Json& value) {
    return json::Json::array({{{"path", path}, {"value", value}}});
}

} // namespace

TEST_CASE("the page is told what holds and what may be chosen") {
    Setup setup;
    auto shown = setup.shown();
    CHECK(shown["there"] == false);
    CHECK(shown["file"] == "/home/settings.toml");
    CHECK(shown["values"]["paper"] == "letter");
    CHECK(shown["values"]["language"] == json::Json::array({"en"}));
    CHECK(shown["values"]["units"] == "both");
    CHECK(shown["values"]["allergens"] == "us");
    CHECK(shown["values"]["refrigerator"] == "4 °C");
    CHECK(shown["values"]["labels.dpi"].is_null());
    CHECK(shown["choices"]["paper"] == json::Json::array({"letter", "a4"}));
    CHECK(shown["choices"]["allergens"] == json::Json::array({"us", "eu", "canada"}));
    CHECK(said(get(setup.desk, "/api/state"))["set_up"] == false);
}

TEST_CASE("what is kept first begins the file that setup would write") {
    Setup setup;
    setup.kept(json::Json::array());
    REQUIRE(setup.fake.settings_text);
    CHECK(setup.fake.settings_text->starts_with("# What holds for this kitchen"));
    CHECK(setup.shown()["there"] == true);
    CHECK(said(get(setup.desk, "/api/state"))["set_up"] == true);
}

TEST_CASE("a value is set, or taken out, and no other line of the file changes") {
    Setup setup;
    const std::string before = "# the crew's\r\npaper = \"a4\" # as bought\r\n";
    setup.fake.settings_text = before;
    CHECK(setup.kept(one_edit("units", "metric"))["values"]["units"] == "metric");
    CHECK(*setup.fake.settings_text == before + "units = \"metric\"\r\n");
    setup.kept(one_edit("units", nullptr));
    CHECK(*setup.fake.settings_text == before);
    const auto in_two = setup.kept(one_edit("language", json::Json::array({"de", "en"})));
    CHECK(in_two["values"]["language"] == json::Json::array({"de", "en"}));
    CHECK(setup.kept(one_edit("labels.stock", "a4-2x4-99x68mm"))["values"]["labels.stock"] ==
          "a4-2x4-99x68mm");
    CHECK(setup.kept(one_edit("labels.dpi", 203.2))["values"]["labels.dpi"] == 203.2);
    CHECK(setup.fake.settings.labels.stock == "a4-2x4-99x68mm");
}

TEST_CASE("what is no setting is refused, and the file stays") {
    Setup setup;
    setup.fake.settings_text = "paper = \"a4\"\n";
    const auto warm = setup.keep(one_edit("refrigerator", "20 °C"));
    CHECK(warm.status == 422);
    CHECK(said(warm)["messages"][0]["key"] == "refrigerator");
    CHECK(setup.keep(one_edit("language", json::Json::array({"de", "de"}))).status == 422);
    CHECK(setup.keep(one_edit("archive", "/etc/passwd")).status == 400);
    CHECK(setup.keep(one_edit("labels", json::Json::object())).status == 400);
    CHECK(setup.keep(json::Json::array({{{"path", "paper"}, {"copy", true}}})).status == 400);
    CHECK(setup.fake.settings_text == "paper = \"a4\"\n");
    const auto doubtful = setup.kept(one_edit("refrigerator", "7 °C"));
    CHECK(doubtful["messages"][0]["severity"] == "caution");
    CHECK(doubtful["messages"][0]["key"] == "refrigerator");
    CHECK(setup.kept(one_edit("refrigerator", "40 °F"))["values"]["refrigerator"] == "4.4 °C");
}

TEST_CASE("settings that were changed elsewhere meanwhile are not written over") {
    Setup setup;
    setup.fake.settings_text = "paper = \"a4\"\n";
    const auto old = setup.shown()["etag"];
    setup.fake.settings_text = "paper = \"letter\"\n";
    CHECK(put(setup.desk, "/api/setup", {{"edits", one_edit("paper", "a4")}}, old).status == 409);
    setup.fake.before_write = [&setup] { setup.fake.settings_text = "units = \"us\"\n"; };
    CHECK(setup.keep(one_edit("paper", "a4")).status == 409);
    CHECK(setup.fake.settings_text == "units = \"us\"\n");
}
