// What becomes of a print whose ids another program has given to other bags meanwhile.

#include "app/archive_place.h"
#include "app/commands/recording.h"
#include "service/print/printing.h"
#include "support/command.h"
#include "unit/service/surroundings.h"

#include <doctest/doctest.h>
#include <filesystem>
#include <sstream>

namespace recording_test {

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

service::Printing labels_of(const std::string& dish) {
    const auto text = "[day]\nmade = 2026-10-17\n[[package]]\ndish = \"" + dish +
                      "\"\nservings = 4\nfood = \"soup or stew\"\ncontains = []\n";
    service::Look look;
    look.stock = "roll";
    auto printing = print({{{dish + ".toml", text}}, {}}, service::What::Labels, look,
                          app::Settings{}, surroundings());
    REQUIRE(printing);
    return std::move(*printing.value);
}

/// A kitchen in which two prints have the same id for bags of two dishes.
struct Race {
    ScratchFolder folder;
    app::Settings settings;
    app::PrintOptions options;
    service::Printing first = labels_of("Quince and barley stew");
    service::Printing second = labels_of("Medlar and leek soup");
    std::ostringstream said = {};

    Race() {
        settings.archive = folder / "archive.db";
        options.output = folder / "labels.pdf";
        write_file(options.output, "of last week");
        second.days.plans.at(0).packages.at(0).bags = first.days.plans.at(0).packages.at(0).bags;
    }

    void record(const service::Printing& printing, const std::function<void()>& publish) {
        app::record_print(printing, options, settings, {said, said}, publish);
    }

    /// \returns whether it was out when it was refused
    bool raced(const std::function<void()>& publish) {
        try {
            record(second, publish);
        } catch (const app::Raced& raced) {
            return raced.is_out();
        }
        FAIL("recorded");
        return false;
    }
};

} // namespace

TEST_CASE("a print that is refused before it is out leaves the file of an earlier one") {
    Race race;
    race.record(race.first, [] {});
    CHECK_FALSE(race.raced([] { FAIL("it is out"); }));
    CHECK(read_file(race.options.output) == "of last week");
}

TEST_CASE("an archive that comes while its first print is written takes that back") {
    Race race;
    const auto publish = [&] {
        write_file(race.options.output, "labels");
        race.record(race.first, [] {});
    };
    CHECK(race.raced(publish));
    CHECK_FALSE(std::filesystem::exists(race.options.output));
    CHECK(app::existing_archive(race.settings, archive::Mode::Read)
              ->bag(race.first.days.plans[0].packages[0].bags[0].id)
              ->dish == "Quince and barley stew");
}

} // namespace recording_test
