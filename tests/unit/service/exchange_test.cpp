#include "kitchen/bag_id.h"
#include "service/archive/archive_days.h"
#include "service/archive/archive_folder.h"
#include "service/archive/exchange.h"
#include "service/days.h"
#include "service/record/day_record.h"
#include "support/command.h"

#include <doctest/doctest.h>
#include <functional>
#include <map>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

/// An archive with one day, in a folder that goes with it.
struct Kept {
    ScratchFolder folder;
    archive::Archive archive = opened("archive.db");

    Kept() {
        record("[day]\nmade = 2026-10-17\n[[package]]\ndish = \"Barley stew\"\nservings = 4\n"
               "use_by = 2026-12-17\n");
    }

    archive::Archive opened(const std::string& name) const {
        return std::move(archive::Archive::open(folder / name, archive::Mode::Write)).value();
    }
    void record(const std::string& text, const std::string& settings = {}) {
        const auto days = service::plan_days(
            std::vector<service::DayText>{{"day.toml", text, {}, "/day.toml"}}, {});
        REQUIRE(days.plans.size() == 1);
        archive.record({"2026-10-17T14:05:00",
                        {"labels", "roll", "", settings, ""},
                        {service::record_of(days, 0)}});
    }
};

/// The files of a folder, by their names.
std::map<std::string, std::string> files_of(const archive::Contents& contents) {
    std::map<std::string, std::string> files;
    for (const auto& [name, text] : service::archive_files(contents)) {
        CHECK(files.emplace(name, text).second);
    }
    return files;
}

service::Outcome<archive::Contents> read(const std::map<std::string, std::string>& files) {
    return service::read_archive_files(
        "kept", [&files](const std::string& name) -> Result<std::string, Diagnostic> {
            const auto file = files.find(name);
            return file != files.end()
                       ? Result<std::string, Diagnostic>{file->second}
                       : Failure{Diagnostic{Severity::Error, {name}, {}, "is not there", {}}};
        });
}

} // namespace

TEST_CASE("a day that was printed with settings that nobody knows is held against nothing") {
    Kept kept;
    CHECK(service::held_against_days(kept.archive).empty());
    kept.record("[day]\nmade = 2026-10-18\n[[package]]\ndish = \"Medlar stew\"\nservings = 4\n"
                "use_by = 2026-12-18\n",
                "gravity = \"moon\"\n");
    CHECK(service::held_against_days(kept.archive).empty());
}

TEST_CASE_FIXTURE(Kept, "what an archive holds comes back from its files") {
    const auto contents = service::contents_to_export(archive);
    REQUIRE(contents);
    const auto files = files_of(*contents.value);
    CHECK(files.contains("days/0001-01/as-written.toml"));
    CHECK(service::archive_files(*contents.value).back().name == "archive.toml");
    const auto back = read(files);
    REQUIRE_MESSAGE(back, to_text(back.messages));
    CHECK(*back.value == *contents.value);
}

TEST_CASE_FIXTURE(Kept, "whatever can be known of a bag comes back from files") {
    using archive::State;
    record("[day]\nmade = 2026-10-18\nkitchen = \"Pear barn\"\n[[package]]\ndish = \"Medlar "
           "stew\"\nfood = \"soup or stew\"\ncontains = [\"barley\"]\nplace = \"barn\"\n"
           "thaw.method = \"refrigerator\"\n[[package.size]]\nservings = 4\nbags = 2\nweight = "
           "\"1.5 kg\"\nthickness = \"30 mm\"\n[[package.size]]\nservings = 1\n");
    const auto days = archive.days();
    const auto bags = archive.bags_of(days.back().key);
    REQUIRE(bags.size() == 3);
    const archive::Station here{"here", 1'792'245'906, 3, "boot", 77};
    archive.set_state(std::vector{bags[0].id}, State::Out, "2026-11-01T18:00:00", here);
    archive.set_state(std::vector{bags[1].id}, State::Discarded, "2026-11-01T18:01:00", here);
    archive.note(std::vector{bags[2].id}, {.place = "shed \"two\""}, "2026-11-01T18:02:00", here);
    archive.undo("2026-11-01T18:03:00", here, {});
    archive.note(std::vector{bags[2].id}, {.place = ""}, "2026-11-01T18:04:00", here);
    const auto contents = service::contents_to_export(archive);
    REQUIRE(contents);
    const auto files = files_of(*contents.value);
    const auto back = read(files);
    REQUIRE_MESSAGE(back, to_text(back.messages));
    CHECK(*back.value == *contents.value);
    CHECK(files_of(*back.value) == files);
}

TEST_CASE_FIXTURE(Kept, "bytes that are no text come back from files as they were") {
    auto contents = *service::contents_to_export(archive).value;
    contents.days.front().record.file = "/day-\xFF\x00\x9A.toml";
    contents.days.front().record.kitchen = "the \"barn\" \\";
    const auto files = files_of(contents);
    CHECK(files.at("days/0001-01/record.toml").find("file_hex = \"") != std::string::npos);
    const auto back = read(files);
    REQUIRE_MESSAGE(back, to_text(back.messages));
    CHECK(*back.value == contents);
}

TEST_CASE_FIXTURE(Kept, "a folder of before there were batches and events is read") {
    auto files = files_of(*service::contents_to_export(archive).value);
    const auto id = archive.bags(archive::Which::All).front().id;
    files["archive.toml"] = "format = 1\ndays = [\"0001-01\"]\nprints = []\n";
    files["days/0001-01/record.toml"] =
        "description = 1\nrevision = 1\nrecorded = \"2026-10-17T14:05:00\"\nmade = 2026-10-17\n"
        "kitchen = \"\"\nfile = \"/day.toml\"\n[[package]]\ndish = \"Barley stew\"\n"
        "words = \"barley stew\"\nmade = 2026-10-17\nkeep_until = 2026-12-17\nbasis = \"use by\"\n"
        "servings = 4\ndescribed_bags = 1\nbag = [{ids = [\"" +
        id + "\"], number = 1, state = \"eaten\", changed = \"2026-11-01T18:00:00\"}]\n";
    const auto back = read(files);
    REQUIRE_MESSAGE(back, to_text(back.messages));
    auto other = opened("old.db");
    CHECK(service::add_contents(other, *back.value, "kept", {}).value->bags == 1);
    const auto bag = other.bag(id);
    REQUIRE(bag);
    CHECK(bag->state == archive::State::Eaten);
    CHECK(bag->changed == "2026-11-01T18:00:00");
    CHECK(bag->servings == 4);
    // It says less, and not more.
    files["days/0001-01/record.toml"] += "[[package]]\ncolour = 1\n";
    CHECK_FALSE(read(files));
}

TEST_CASE_FIXTURE(Kept, "each thing that is wrong with a folder is refused, and it is said which") {
    archive = opened("whole.db");
    record("[day]\nmade = 2026-10-17\n[[package]]\ndish = \"Barley stew\"\nservings = 4\n"
           "food = \"soup or stew\"\nweight = \"1.5 kg\"\nthickness = \"30 mm\"\n"
           "contains = [\"barley\"]\nplace = \"barn\"\nthaw.method = \"refrigerator\"\n");
    const auto whole = files_of(*service::contents_to_export(archive).value);
    REQUIRE(read(whole));
    const std::string day = "days/0001-01/record.toml";
    const std::string print = "prints/0001/print.toml";
    struct Case {
        std::string file;
        std::string from;
        std::string to;
        std::string said; ///< what is said, among others
    };
    const Case cases[] = {
        {"archive.toml", "format = 3", "format = 4", "a later thawslip wrote this folder"},
        {"archive.toml", "format = 3", "format = 0", "format must be"},
        {"archive.toml", "format = 3", "", "format"},
        {"archive.toml", "format = 3", "format = 3\ncolour = 1", "colour"},
        {"archive.toml", "\"0001-01\"", "\"../0001\"", "something that cannot be in this folder"},
        {"archive.toml", "\"0001-01\"", "\"\"", "something that cannot be in this folder"},
        {"archive.toml", "\"0001\"", "\"x\"", "something that cannot be in this folder"},
        {"archive.toml", "\"0001-01\"", "", "there is no such day in this folder"},
        {print, "\"0001-01\"", "\"0002-01\"", "there is no such day in this folder"},
        {print, "what =", "wat =", "what"},
        {print, "what =", "colour = 1\nwhat =", "colour"},
        {print, "[[printed]]", "[[printed]]\ncolour = 1", "colour"},
        {print, "[[printed]]", "[[file]]\nname = \"a.toml\"\n[[printed]]",
         "prints/0001/file-1.toml: error: is not there"},
        {day, "hash = \"", "hash = \"0", "as-written.toml is not what was exported"},
        {day, "description = 1", "description = 0", "description must be"},
        {day, "revision = 1", "revision = 0", "revision must be"},
        {day, "\nmade = 2026-10-17", "\nmade = 17", "made"},
        {day, "\nstation = ", "\nstaton = ", "station"},
        {day, "servings = 4", "servings = -1", "servings must be"},
        {day, "described_bags = 1", "described_bags = -1", "described_bags must be"},
        {day, "grams = 1500", "grams = -1", "grams must be"},
        {day, "basis = \"best\"", "basis = \"worst\"", "\"worst\""},
        {day, "thaw = \"refrigerator\"", "thaw = \"sun\"", "\"sun\""},
        {day, "batch = 1", "batch = 0", "batch must be"},
        {day, "kitchen_number = 0", "kitchen_number = -1", "kitchen_number must be"},
        {day, "origin = ", "orgin = ", "origin"},
        {day, "number = 1, event", "number = 0, event", "number must be"},
        {day, "state = \"frozen\"", "state = \"lost\"", "\"lost\""},
        {day, ", uptime = ", ", colour = 1, uptime = ", "colour"},
        {day, "ordered = ", "orderd = ", "ordered"},
    };
    for (const auto& [file, from, to, said] : cases) {
        CAPTURE(file + ": " + from + " -> " + to);
        auto files = whole;
        auto& text = files.at(file);
        REQUIRE(text.find(from) != std::string::npos);
        text.replace(text.find(from), from.size(), to);
        const auto back = read(files);
        CHECK_FALSE(back);
        const auto told = to_text(back.messages);
        CAPTURE(told);
        CHECK(told.find(said) != std::string::npos);
    }
    // What cannot be read is said, and not that what is left of it makes no archive.
    auto undated = whole;
    auto& text_of_day = undated.at(day);
    text_of_day.replace(text_of_day.find("\nmade = 2026-10-17"), 18, "\nmade = 17");
    CHECK(read(undated).messages.all().size() == 1);
    auto without = whole;
    without.erase("days/0001-01/as-written.toml");
    CHECK(read(without).messages.all().size() == 1);
    for (const auto& [name, text] : whole) {
        CAPTURE(name);
        auto files = whole;
        files.erase(name);
        CHECK_FALSE(read(files));
        files[name] = "= no text =";
        CHECK_FALSE(read(files));
    }
}

TEST_CASE_FIXTURE(Kept, "all that is wrong with files is said, each in its place") {
    auto files = files_of(*service::contents_to_export(archive).value);
    files.erase("days/0001-01/as-written.toml");
    auto& print = files.at("prints/0001/print.toml");
    print += "colour = 1\n";
    const auto back = read(files);
    CHECK_FALSE(back);
    CHECK(back.messages.all().size() >= 1);
    CHECK(to_text(back.messages).find("days/0001-01/as-written.toml: error: is not there\n") !=
          std::string::npos);
}

TEST_CASE_FIXTURE(Kept, "what comes in is added once, and what is untrue is refused") {
    auto other = opened("other.db");
    const auto contents = service::contents_to_merge(archive, "archive.db");
    REQUIRE(contents);
    const auto first = service::add_contents(other, *contents.value, "archive.db", {});
    CHECK(first.value->bags == 1);
    CHECK(first.messages.all().empty());
    CHECK(service::add_contents(other, *contents.value, "archive.db", {}).value->bags == 0);
    auto untrue = *contents.value;
    untrue.days.front().record.packages.front().servings = 9;
    const auto refused = service::held_to_be_true(untrue, "kept");
    CHECK_FALSE(refused);
    CHECK(to_text(refused.messages) ==
          "error: kept: \"Barley stew\" of 2026-10-17 serves 9 in the archive, 4 in the "
          "description\n    hint: nothing of it was added; where it comes from: thawslip archive "
          "repair\n");
}

TEST_CASE_FIXTURE(Kept, "whatever an archive says otherwise than its description is told") {
    archive = opened("whole.db");
    record(
        "[day]\nmade = 2026-10-17\nkitchen = \"Pear barn\"\n[[package]]\ndish = \"Barley stew\"\n"
        "servings = 4\nbags = 2\nfood = \"soup or stew\"\nweight = \"1.5 kg\"\n"
        "thickness = \"30 mm\"\ncontains = [\"barley\"]\nplace = \"barn\"\n"
        "thaw.method = \"refrigerator\"\n");
    const auto contents = service::contents_to_export(archive);
    REQUIRE(contents);
    CHECK(service::held_against_days(*contents.value).empty());
    using Package = archive::PackageRecord;
    const struct {
        std::function<void(Package&)> change;
        std::string said; ///< behind `"Barley stew" of 2026-10-17 `; empty: nothing is
    } cases[] = {
        {[](Package& p) { p.dish = "Bean stew"; },
         "is named \"Bean stew\" in the archive, \"Barley stew\" in the description"},
        {[](Package& p) { p.words = "bean stew"; },
         "is found by \"bean stew\" in the archive, \"barley stew\" in the description"},
        {[](Package& p) { p.made = std::chrono::year{2026} / 10 / 16; },
         "was made 2026-10-16 in the archive, 2026-10-17 in the description"},
        {[](Package& p) { p.servings = 5; }, "serves 5 in the archive, 4 in the description"},
        {[](Package& p) { p.weight = kitchen::Mass{1500.002}; },
         "weighs 1500.002 g in the archive, 1500 g in the description"},
        {[](Package& p) { p.weight = kitchen::Mass{1500.0005}; }, ""},
        {[](Package& p) { p.weight.reset(); },
         "weighs nothing in the archive, 1500 g in the description"},
        {[](Package& p) { p.bags.pop_back(); }, "has bags: 1 in the archive, 2 in the description"},
        {[](Package& p) { p.place = "attic"; },
         "lies in \"attic\" in the archive, \"barn\" in the description"},
        {[](Package& p) { p.food->allergens = {}; },
         "contains: none in the archive, cereals containing gluten"},
        {[](Package& p) { p.food->classes = {"bread"}; },
         "is of the kinds: bread in the archive, soup or stew in the description"},
        {[](Package& p) { p.food->classes = {}; }, ""},
        {[](Package& p) { p.food.reset(); }, ""},
        {[](Package& p) { p.thaw->method = kitchen::ThawMethod::Microwave; },
         "thaws: microwave in the archive, refrigerator in the description"},
        {[](Package& p) { p.thaw->lead = std::chrono::minutes{60}; },
         "thaws in 60 min in the archive, "},
        {[](Package& p) { p.thaw->lead = std::chrono::hours{200}; }, ""}, // longer is no harm
        {[](Package& p) { p.thaw.reset(); }, ""},
        {[](Package& p) { p.keep_until = std::chrono::year{2026} / 12 / 18; },
         "keeps until 2026-12-18 in the archive, 2026-12-17 in the description"},
        {[](Package& p) { p.keep_until = std::chrono::year{2026} / 12 / 16; }, ""}, // nor is sooner
        {[](Package& p) { p.basis = kitchen::DateBasis::SetByCook; },
         "keeps until 2026-12-17 in the archive, 2026-12-17 in the description"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.said);
        auto untrue = *contents.value;
        c.change(untrue.days.front().record.packages.front());
        const auto told = service::held_against_days(untrue);
        REQUIRE(told.size() == (c.said.empty() ? 0 : 1));
        const auto begins = "\"Barley stew\" of 2026-10-17 " + c.said;
        CHECK((told.empty() ? begins : told.front().substr(0, begins.size())) == begins);
    }
    auto untrue = *contents.value;
    untrue.days.front().record.kitchen = "Plum barn";
    CHECK(service::held_against_days(untrue).at(0) ==
          "the description of 2026-10-17 is of the kitchen \"Plum barn\" in the archive, \"Pear "
          "barn\" in the description");
    // A day that was never printed says nothing of what hangs on settings.
    untrue = *contents.value;
    untrue.prints.clear();
    untrue.days.front().record.packages.front().thaw->lead = std::chrono::minutes{60};
    CHECK(service::held_against_days(untrue).empty());
}

TEST_CASE_FIXTURE(Kept, "a sound archive has no faults, and one that is rotten names them") {
    CHECK(service::faults_of(archive).all().empty());
    archive.put_right(archive.days().front().key, kitchen::Date{std::chrono::year{2026} / 10 / 16},
                      "");
    const auto faults = service::faults_of(archive);
    CHECK(faults.have_errors());
    CHECK(faults.all().back().what.hints.size() == 1);
}

TEST_CASE_FIXTURE(Kept, "what only the archive of before has is said") {
    auto now = opened("now.db");
    const auto missing = service::left_behind(archive, now, "before.db");
    CHECK(to_text(missing) ==
          "caution: not in this one, but in the archive of before: 1 bag, 1 description, 1 print\n"
          "    hint: thawslip archive merge before.db adds them; without that, ids of its bags are "
          "given again\n");
    CHECK(service::left_behind(archive, archive, "before.db").all().empty());
}
