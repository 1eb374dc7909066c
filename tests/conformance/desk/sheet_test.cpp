// What the page shows of a sheet is the file that the program writes, byte for byte: the cook sees
// what comes out of the printer.

#include "support/asked.h"
#include "support/command.h"
#include "support/fake_machine.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

struct Case {
    const char* what;
    json::Json look;
    const char* command; ///< the same at a command line
};

const std::vector<Case> cases = {
    {"labels", json::Json::object(), "labels"},
    {"labels", {{"first_cell", 4}, {"skip", {5, 7}}}, "labels --first-cell 4 --skip 5,7"},
    {"labels",
     {{"stock", "a4-2x4-99x68mm"}, {"trial", true}},
     "labels --stock a4-2x4-99x68mm --trial"},
    {"labels",
     {{"large_print", true}, {"stock", "letter-2x2-4x5in"}},
     "labels --large-print --stock letter-2x2-4x5in"},
    {"labels", {{"bags", "2-3"}, {"copies", 2}}, "labels --bag 2-3 --copies 2"},
    {"cards", json::Json::object(), "cards"},
    {"finishing_cards", json::Json::object(), "cards --finishing"},
    {"lists", json::Json::object(), "lists"},
};

/// The first sheet that the program writes.
std::string written(const std::string& day, const std::string& command) {
    const ScratchFolder scratch;
    const auto done =
        run("cd " + shell_word(scratch.path().string()) +
            "; XDG_CONFIG_HOME=/nonexistent XDG_DATA_HOME=" + shell_word(scratch / "data") +
            " LC_ALL=C.UTF-8 SOURCE_DATE_EPOCH=1792238400 " THAWSLIP_PROGRAM " " + command + " " +
            shell_word(day) + " -o out.svg");
    INFO(done.err);
    REQUIRE(done.status == 0);
    const auto one = scratch / "out.svg";
    return read_file(std::filesystem::exists(one) ? one : scratch / "out-1.svg");
}

} // namespace

TEST_CASE("a sheet is shown as it is written, byte for byte") {
    const std::string file = THAWSLIP_SOURCE_DIR "/samples/orchard-day.toml";
    FakeMachine fake;
    fake.days["orchard-day.toml"] = read_file(file);
    desk::Desk desk{machine_of(fake)};
    get(desk, "/api/state");
    for (const auto& [what, look, command] : cases) {
        CAPTURE(command);
        const auto answer = said(post(desk, "/api/sheet",
                                      {{"number", 1},
                                       {"text", fake.days["orchard-day.toml"]},
                                       {"what", what},
                                       {"look", look},
                                       {"sheet", 1}}));
        REQUIRE(answer["svg"].is_string());
        const auto shown = answer["svg"].get<std::string>();
        const auto from_program = written(file, command);
        CHECK(shown.size() == from_program.size());
        CHECK((shown == from_program)); // no diff of a hundred thousand characters
    }
}
