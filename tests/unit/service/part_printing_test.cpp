// A part of what a day has is printed: some of its labels, cards, or rows of the door list.

#include "render/dump.h"
#include "service/print/printing.h"
#include "service/record/print_record.h"
#include "service/record/settle.h"
#include "support/command.h"
#include "surroundings.h"

#include <doctest/doctest.h>

namespace part_printing_test {

using namespace thawslip;
using namespace thawslip::test_support;
using service::Look;
using service::Part;
using service::Settings;
using service::What;

namespace {

std::string dish(const std::string& name, int bags, const std::string& use_by) {
    return "[[package]]\ndish = \"" + name + "\"\nservings = 2\nbags = " + std::to_string(bags) +
           "\ncontains = []\nfood = \"fruit\"\nuse_by = " + use_by +
           "\nthaw.method = \"refrigerator\"\n";
}

/// Three bags of one dish, two of another.
const std::string orchard = "[day]\nmade = 2026-10-17\n" + dish("Plum compote", 3, "2027-03-17") +
                            dish("Pear butter", 2, "2027-04-17");

service::Surroundings with_lists() {
    auto around = surroundings();
    around.layouts = [](const std::set<wording::Kind>&) {
        std::vector<service::ShippedText> texts;
        for (const std::string file : {"label/wide", "list/day", "list/door"}) {
            texts.push_back({file.substr(file.find('/') + 1), file, shipped_text(file + ".toml")});
        }
        return texts;
    };
    around.stock = [](const std::string& name) {
        return name == "roll" ? roll()
                              : layout::read_stock(shipped_text("stock/" + name + ".toml"),
                                                   name + ".toml", name);
    };
    return around;
}

Look on_roll(Part part = {}) {
    Look look;
    look.stock = "roll";
    look.part = std::move(part);
    return look;
}

service::Outcome<service::Printing> labels(const Look& look, const Settings& settings = {},
                                           const service::Surroundings& around = with_lists(),
                                           const std::string& day = orchard) {
    return print({{{"day.toml", day, {}, "/orchard/day.toml"}}, {}}, What::Labels, look, settings,
                 around);
}

/// The words on a sheet.
std::string words_on(const service::Outcome<service::Printing>& printing, int sheet) {
    CAPTURE(to_text(printing.messages));
    REQUIRE(printing);
    const auto& laid_out = printing.value->laid_out;
    return render::dump(draw_sheet(laid_out, sheet), laid_out.setup.fonts);
}

std::size_t prints_in(const service::Outcome<service::Printing>& printing) {
    CAPTURE(to_text(printing.messages));
    REQUIRE(printing);
    return printing.value->laid_out.fitting.prints.size();
}

bool says(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

/// What has been printed, in a folder that goes with it.
struct Printed {
    ScratchFolder folder;
    archive::Archive archive = opened(archive::Mode::Write);
    service::Surroundings around = with_lists();

    Printed() {
        around.ids.archive = [this] { return std::optional{opened(archive::Mode::Read)}; };
    }
    archive::Archive opened(archive::Mode mode) const {
        return std::move(archive::Archive::open(folder / "archive.db", mode)).value();
    }
    service::Outcome<service::Printing> record(const Part& part,
                                               const std::string& at = "2026-10-17T14:05:00") {
        auto printing = labels(on_roll(part), {}, around);
        CAPTURE(to_text(printing.messages));
        REQUIRE(printing);
        archive.record(print_record(*printing.value, {}, {}, {"here"}, at));
        return printing;
    }
};

std::vector<wording::DoorRow> rows() {
    const auto date = std::chrono::year{2027} / 3 / 17;
    return {{date, {}, "Plum compote", 2, {{"AAA", 1}, {"BBB", 2}}, {}},
            {date, {}, "Pear butter", 2, {{"CCC", 1}}, {}}};
}

service::Outcome<service::Printing> door_list(const Part& part,
                                              const std::vector<wording::DoorRow>& of = rows()) {
    Look look;
    look.part = part;
    return print_door_list(of, look, {}, with_lists());
}

} // namespace

TEST_CASE("a part is printed with its copies, and what it came to is remembered by ids") {
    const auto whole = labels(on_roll());
    CHECK(prints_in(whole) == 5);
    CHECK(whole.value->look.part == Part{.copies = 1});
    const auto part = labels(on_roll({.bags = "3-4", .copies = 2}));
    CHECK(prints_in(part) == 4);
    CHECK(part.value->look.part.copies == 2);
    const auto bags = bags_in(part.value->days);
    CHECK(part.value->look.part.ids == std::vector{bags[2].id, bags[3].id});
    CHECK(part.value->look.part.bags == "");
    CHECK(part.value->laid_out.fitting.sheets == 4);
    CHECK(says(words_on(part, 0), "Plum"));
    CHECK(says(words_on(part, 1), "Plum")); // its second copy
    CHECK(says(words_on(part, 2), "Pear"));
    CHECK(prints_in(labels(on_roll({.copies = 3}))) == 15);
    Settings twice;
    twice.labels.copies = 2;
    CHECK(prints_in(labels(on_roll(), twice)) == 10);
    CHECK(prints_in(labels(on_roll({.copies = 1}), twice)) == 5);
}

TEST_CASE("a half-used sheet is gone on with as the print that is made again will") {
    Look look;
    look.stock = "a4-2x4-99x68mm";
    look.first_cell = service::next_cell;
    look.skip = {8};
    auto around = with_lists();
    around.used_sheet = [](const std::string&) {
        return archive::UsedSheet{"a4-2x4-99x68mm", 5, {7}, "2026-10-16T10:00:00"};
    };
    const auto printing = labels(look, {}, around);
    REQUIRE_MESSAGE(printing, to_text(printing.messages));
    CHECK(printing.value->look.first_cell == 5);
    CHECK(printing.value->look.skip == std::vector{8, 7});
    CHECK(printing.value->laid_out.fitting.places.front() == layout::Place{0, 4});
    CHECK(printing.value->laid_out.fitting.sheets == 2);
    const auto record = print_record(*printing.value, {}, {}, {"here"}, "2026-10-17T14:05:00");
    REQUIRE(record.sheet);
    CHECK(record.sheet->next_cell == 4); // three of them on the second sheet
    CHECK_FALSE(record.part);            // all of the day
}

TEST_CASE("dots are those of the look, else of the settings, else the usual ones") {
    Settings settings;
    CHECK(labels(on_roll(), settings).value->look.dots_per_inch == service::usual_dots_per_inch);
    settings.labels.dots_per_inch = 203.0;
    CHECK(labels(on_roll(), settings).value->look.dots_per_inch == 203.0);
    auto look = on_roll();
    look.dots_per_inch = 600.0;
    CHECK(labels(look, settings).value->look.dots_per_inch == 600.0);
}

TEST_CASE_FIXTURE(Printed, "bags of the day that have no label yet are said, of labels alone") {
    const auto first = record({.bags = "1-2"});
    CHECK(says(to_text(first.messages), "note: 3 bags of this day have no label as they are "
                                        "described now, besides these: --only-new prints"));
    CHECK(says(to_text(record({.bags = "3,5"}).messages),
               "note: 1 bag of this day has no label as it is "));
    CHECK_FALSE(says(to_text(record({.bags = "4"}).messages), "no label"));
    CHECK_FALSE(says(to_text(record({.bags = "1"}).messages), "no label")); // all have one
    Printed fresh;
    auto trial = on_roll({.bags = "1"});
    trial.is_trial = true;
    CHECK_FALSE(says(to_text(labels(trial, {}, fresh.around).messages), "no label"));
    CHECK_FALSE(says(to_text(labels(on_roll(), {}, fresh.around).messages), "no label"));
}

TEST_CASE_FIXTURE(Printed, "only new ones are those without a label, until there are none") {
    record({.bags = "1-2"});
    CHECK(prints_in(labels(on_roll({.only_new = true}), {}, around)) == 3);
    record({.only_new = true}, "2026-10-17T15:05:00");
    const auto none = labels(on_roll({.only_new = true}), {}, around);
    REQUIRE(none);
    CHECK(none.value->job.prints.empty());
    CHECK(none.value->why_nothing == "each bag has its label");
}

TEST_CASE_FIXTURE(Printed, "without an archive every bag is new") {
    CHECK(prints_in(labels(on_roll({.only_new = true}))) == 5);
}

TEST_CASE("a dish that has no room keeps no other dish from being printed alone") {
    auto day = orchard;
    day.replace(day.find("Plum compote"), 12,
                "Plum compote of the old tree behind the press house, with star anise and bay");
    const auto small = [&](const Part& part) {
        auto around = with_lists();
        around.own_file = [](const std::string&) {
            return std::string{"cell = [\"85 mm\", \"44 mm\"]\nroll = true\n"};
        };
        Look look;
        look.stock = "small.toml";
        look.layout = "wide";
        look.part = part;
        return labels(look, {}, around, day);
    };
    const auto whole = small({});
    CHECK_FALSE(whole);
    CHECK(says(to_text(whole.messages), "\"Plum compote of the old tree"));
    CHECK_FALSE(small({.bags = "1"})); // it is this one that has none
    const auto pear = small({.dishes = "pear", .bags = "2"});
    REQUIRE_MESSAGE(pear, to_text(pear.messages));
    CHECK(prints_in(pear) == 1);
    CHECK(says(words_on(pear, 0), "Pear"));
    CHECK_FALSE(says(words_on(pear, 0), "Plum"));
    CHECK(says(words_on(pear, 0), bags_in(pear.value->days).back().id.substr(0, 3)));
    const auto code = pear.value->laid_out.fitting.prints.front().symbol;
    REQUIRE(code);
    CHECK(says(code->text, "PEAR"));
}

TEST_CASE("of a door list those bags are printed that are named, and rows without any are not") {
    CHECK(says(words_on(door_list({}), 0), "Plum"));
    const auto pear = words_on(door_list({.dishes = "pear"}), 0);
    CHECK(says(pear, "Pear"));
    CHECK_FALSE(says(pear, "Plum"));
    const auto by_number = words_on(door_list({.bags = "2"}), 0);
    CHECK(says(by_number, "Plum"));
    CHECK_FALSE(says(by_number, "Pear"));
    CHECK(prints_in(door_list({.dishes = "pear", .copies = 2})) == 2);
    const auto none = door_list({.dishes = "quince"});
    CHECK_FALSE(none);
    CHECK(says(to_text(none.messages), "no dish has the words \"quince\""));
}

TEST_CASE("a door list without bags is none, and it is said why") {
    const auto empty = door_list({}, {});
    REQUIRE(empty);
    CHECK(empty.value->job.prints.empty());
    CHECK(empty.value->why_nothing == "there is no bag");
    CHECK(door_list({.bags = "1"}, {}).value->why_nothing == "there is no bag");
    const auto no_new = door_list({.only_new = true}); // what is in the freezer has its labels
    REQUIRE(no_new);
    CHECK(no_new.value->why_nothing == "each bag has its label");
}

TEST_CASE("a name that no face has stands on a door list as far as it can be set, and is said") {
    auto odd = rows();
    odd[0].dish = "Plum \U0001F9C5\U0001F9C5 compote";
    odd[1].place = "shed \u4E00";
    odd.push_back(odd[0]);
    const auto printing = door_list({}, odd);
    const auto words = words_on(printing, 0);
    CHECK(says(words, "??"));
    CHECK(says(words, "shed ?"));
    const auto said = to_text(printing.messages);
    CHECK(says(said, "stands on the list as \"Plum ?? compote\"\n"));
    CHECK(says(said, "stands on the list as \"shed ?\"\n"));
    CHECK(said.find("Plum ??") == said.rfind("Plum ??")); // once for both rows
}

TEST_CASE("a trial says so on its sheets, or where they have no margin on each print") {
    const auto tried = [](What what, const std::string& stock) {
        Look look;
        look.stock = stock;
        look.is_trial = true;
        return print({{{"day.toml", orchard}}, {}}, what, look, {}, with_lists());
    };
    const auto usual = [](What what, const std::string& stock) {
        Look look;
        look.stock = stock;
        return print({{{"day.toml", orchard}}, {}}, what, look, {}, with_lists());
    };
    const auto words = style_of(Settings{}).say("standing.trial");
    REQUIRE_FALSE(words.empty());
    const auto first = words.substr(0, words.find(' '));
    CHECK(tried(What::Labels, "a4-2x4-99x68mm").value->laid_out.setup.medium.margin_note == words);
    const auto on_label = tried(What::Labels, "roll");
    CHECK(on_label.value->laid_out.setup.medium.margin_note == "");
    CHECK(says(words_on(on_label, 0), first));
    CHECK(says(words_on(on_label, 4), first));
    CHECK(says(words_on(on_label, 0), "Plum"));
    CHECK_FALSE(says(words_on(usual(What::Labels, "roll"), 0), first));
}

TEST_CASE_FIXTURE(Printed, "what only the cook can know is asked of as many days as there are") {
    record({});
    const auto planned = [](const std::string& text, const std::string& file) {
        return service::plan_days(
            std::vector<service::DayText>{{file, text, {}, "/orchard/" + file}}, {});
    };
    // A second file has a dish of that name and day: the same bags, or others?
    const auto second = planned(
        "[day]\nmade = 2026-10-17\n" + dish("Plum compote", 2, "2027-03-17"), "second.toml");
    const auto asked = service::batch_questions(second, around.ids);
    REQUIRE(asked.size() == 1);
    CHECK(asked[0].dish == "Plum compote");
    CHECK(kitchen::to_iso(asked[0].made) == "2026-10-17");
    REQUIRE(asked[0].known.size() == 1);
    CHECK(asked[0].known[0].bags == 3);
    CHECK(asked[0].known[0].servings == 2);
    CHECK(service::batch_questions(planned(orchard, "day.toml"), around.ids).empty());
    CHECK(service::batch_questions(second, {}).empty()); // nothing is known
    CHECK(service::batch_questions(planned("[day]\nmade = 2026\n", "second.toml"), around.ids)
              .empty());
    // The same in words.
    const auto refused = service::settle(second, around.ids, {});
    CHECK_FALSE(refused);
    const auto said = to_text(refused.messages);
    CHECK(said.starts_with("second.toml:4:"));
    CHECK(says(said, "error: bags of \"Plum compote\", made 2026-10-17, were printed before"));
    CHECK(says(said, "3 bags that serve 2, printed 2026-10-17 from /orchard/day.toml"));
    CHECK(says(said, "--new-batch if they are others: they get ids of their own"));
}

TEST_CASE_FIXTURE(Printed, "who asks for lists, or nothing, is answered as that needs") {
    record({.bags = "1"});
    const auto second = service::plan_days(
        std::vector<service::DayText>{
            {"second.toml", "[day]\nmade = 2026-10-17\n" + dish("Plum compote", 3, "2027-03-17")}},
        {});
    const auto settled = [&](service::Doubts doubts) {
        auto ids = around.ids;
        ids.doubts = doubts;
        return service::settle(second, ids, {});
    };
    const auto for_lists = settled(service::Doubts::AskForLists);
    CHECK_FALSE(for_lists);
    CHECK(says(to_text(for_lists.messages), "print their labels first: thawslip labels"));
    const auto mentioned = settled(service::Doubts::Mention);
    REQUIRE(mentioned);
    const auto said = to_text(mentioned.messages);
    CHECK(said.starts_with("second.toml:4:"));
    CHECK(says(said, ": caution: bags of \"Plum compote\""));
    CHECK(says(said, "hint: thawslip labels --same-batch "));
    CHECK(says(said, "the ids told here are those that others would get"));
    const auto ignored = settled(service::Doubts::Ignore);
    REQUIRE(ignored);
    CHECK(to_text(ignored.messages) == "");
    CHECK(bag_ids(*ignored.value) == bag_ids(*mentioned.value));
}

TEST_CASE_FIXTURE(Printed, "a bag that is named must be of a dish that is described") {
    record({});
    const auto other = service::plan_days(
        std::vector<service::DayText>{
            {"second.toml", "[day]\nmade = 2026-10-17\n" + dish("Medlar paste", 1, "2027-03-17")}},
        {});
    auto ids = around.ids;
    const auto id = bags_in(labels(on_roll(), {}, around).value->days).front().id;
    ids.which = {archive::WhichBatch::Kind::OfBag, {id}};
    const auto refused = service::settle(other, ids, {});
    CHECK_FALSE(refused);
    CHECK(to_text(refused.messages) ==
          "error: bag " + id + " is of no dish that is described here\n");
}

} // namespace part_printing_test
