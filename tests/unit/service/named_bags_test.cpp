#include "kitchen/bag_id.h"
#include "service/freezer/bags.h"
#include "service/freezer/freezer_state.h"
#include "service/freezer/named_bags.h"
#include "service/freezer/packages_of_bags.h"
#include "service/freezer/renamed_dish.h"
#include "support/command.h"
#include "unicode/ascii.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::test_support;
using archive::State;

namespace {

struct Dish {
    std::string name;
    int bags = 1;
    unsigned day = 17; ///< of October
    std::vector<std::string> allergens = {"celery"};
    std::vector<std::string> classes = {"soup or stew"};
    kitchen::Date use_by = std::chrono::year{2027} / 1 / 17;
};

archive::PackageRecord package(const Dish& dish) {
    archive::PackageRecord record;
    record.dish = dish.name;
    record.words = unicode::fold_for_search(dish.name);
    record.made = std::chrono::year{2026} / 10 / std::chrono::day{dish.day};
    record.keep_until = dish.use_by;
    record.servings = 4;
    record.food = archive::FoodRecord{dish.allergens, dish.classes};
    for (int n = 1; n <= dish.bags; ++n) {
        record.bags.push_back(kitchen::bag_id({dish.name, record.made, n}));
    }
    return record;
}

struct Freezer {
    ScratchFolder folder;
    archive::Archive archive =
        std::move(archive::Archive::open(folder / "archive.db", archive::Mode::Write)).value();

    /// Each dish is described by a file of its own.
    explicit Freezer(const std::vector<Dish>& dishes) {
        for (const auto& dish : dishes) {
            const auto record = package(dish);
            archive.record({"2026-10-17T14:05:00",
                            {"labels", "stock", "", "", ""},
                            {{record.made, "", dish.name + ".toml", dish.name, {record}}}});
        }
    }
    service::Outcome<std::vector<archive::Bag>> chosen(const std::vector<std::string>& typed,
                                                       const service::ChooseBags& choose = {},
                                                       State state = State::Frozen) {
        return service::chosen_bags(archive, {typed, {state}, choose});
    }
    static std::string id(const Dish& dish, int number) {
        return package(dish).bags.at(static_cast<std::size_t>(number) - 1);
    }
};

const Dish galette{"Leek galette", 2, 17};
const Dish older{"Leek galette", 2, 3};
const Dish soup{"Pear, parsnip and ginger soup", 3};
const service::Moment later{"2026-11-01T18:00:00", {.name = "here"}};

} // namespace

TEST_CASE("a comma parts several, unless a dish's name has it") {
    Freezer freezer{{galette, soup}};
    const auto parts = [&freezer](const std::vector<std::string>& typed) {
        return service::parts_of(freezer.archive, typed);
    };
    CHECK(parts({"leek", "galette"}) == std::vector<std::string>{"leek galette"});
    CHECK(parts({"leek,", "pear"}) == std::vector<std::string>{"leek", "pear"});
    CHECK(parts({"leek,pear ,, "}) == std::vector<std::string>{"leek", "pear"});
    CHECK(parts({"Pear, parsnip"}) == std::vector<std::string>{"Pear, parsnip"});
    CHECK(parts({"leek, PEAR, PARSNIP and ginger soup, leek"}) ==
          std::vector<std::string>{"leek", "PEAR, PARSNIP and ginger soup", "leek"});
    CHECK(parts({"leek, leek"}).size() == 2);
    CHECK(parts({}).empty());
}

TEST_CASE("words that fit several bags name them, the oldest first, where nobody can be asked") {
    Freezer freezer{{galette, older}};
    const auto refused = freezer.chosen({"leek"});
    REQUIRE_FALSE(refused);
    const auto text = to_text(refused.messages);
    CHECK(text.starts_with("error: \"leek\" fits 4 bags; which is meant?\n"));
    const auto first = text.find(freezer.id(older, 1));
    const auto last = text.find(freezer.id(galette, 2));
    CHECK(first != std::string::npos);
    CHECK(first < last);
    CHECK(last != std::string::npos);
    CHECK(text.find("--oldest") != std::string::npos);
}

TEST_CASE("of several the oldest is taken where that is said, and another part takes the next") {
    Freezer freezer{{galette, older, soup}};
    const auto bags = freezer.chosen({"leek,", "pear,", "leek"}, service::oldest_of);
    REQUIRE(bags);
    REQUIRE(bags.value->size() == 3);
    CHECK(bags.value->at(0).id == freezer.id(older, 1));
    CHECK(bags.value->at(1).id == freezer.id(soup, 1));
    CHECK(bags.value->at(2).id == freezer.id(older, 2));
    CHECK(freezer.chosen({"leek"}, service::all_of).value->size() == 4);
    const service::ChooseBags second_and_third = [](std::string_view, auto) {
        return std::vector<std::size_t>{1, 2, 1};
    };
    CHECK(freezer.chosen({"leek"}, second_and_third).value->size() == 2);
}

TEST_CASE("an id is one bag whatever the words fit, and a wrong one keeps all from being noted") {
    Freezer freezer{{galette}};
    const auto id = freezer.id(galette, 2);
    CHECK(freezer.chosen({id}).value->front().id == id);
    CHECK(freezer.chosen({id, freezer.id(galette, 1)}).value->size() == 2);
    auto wrong = id;
    wrong[0] = wrong[0] == 'A' ? 'B' : 'A';
    const auto refused = freezer.chosen({id, wrong});
    CHECK_FALSE(refused);
    CHECK(to_text(refused.messages).find("there is " + id) != std::string::npos);
    CHECK(to_text(freezer.chosen({"leak"}).messages).find("did you mean \"Leek galette\"?") !=
          std::string::npos);
}

TEST_CASE("what is out is what was eaten") {
    Freezer freezer{{galette}};
    freezer.archive.set_state(std::vector{freezer.id(galette, 2)}, State::Out, later.at);
    const auto eaten =
        service::chosen_bags(freezer.archive, {{"leek"}, {State::Out, State::Frozen}, {}});
    REQUIRE(eaten);
    CHECK(eaten.value->front().id == freezer.id(galette, 2));
    CHECK_FALSE(freezer.chosen({"leek"}, {}, State::NeverFilled)); // none is
}

TEST_CASE("bags are moved, and a place is one line") {
    Freezer freezer{{galette}};
    const auto moved =
        service::move_bags(freezer.archive, {"leek"}, "cellar, shelf 2", later, service::all_of);
    REQUIRE(moved);
    CHECK(moved.value->front().place.empty()); // as it was before
    CHECK(freezer.archive.bag(freezer.id(galette, 1))->place == "cellar, shelf 2");
    for (const auto& place :
         {std::string{}, std::string{"  "}, std::string{"a\nb"}, std::string(201, 'x')}) {
        CHECK_FALSE(service::move_bags(freezer.archive, {"leek"}, place, later, service::all_of));
    }
    CHECK(service::undo_last(freezer.archive, later).value->size() == 2);
    CHECK(to_text(service::undo_last(freezer.archive, later).messages)
              .starts_with("error: there is nothing to undo"));
}

TEST_CASE("all bags of a dish are those that are out and those that are frozen") {
    Freezer freezer{{soup}};
    const auto note = [&freezer](State state, const service::ChooseBags& choose, int number = 0) {
        const auto named = number == 0 ? std::string{"pear"} : freezer.id(soup, number);
        return service::note_state(freezer.archive, {named}, state, later, choose);
    };
    REQUIRE(note(State::Out, {}, 2));
    CHECK(note(State::Discarded, service::all_of).value->size() == 3);
    REQUIRE(note(State::Frozen, {}, 1));
    REQUIRE(note(State::Out, {}, 1));
    CHECK(note(State::Frozen, service::all_of).value->size() == 1); // what is discarded stays so
    CHECK(freezer.archive.bag(freezer.id(soup, 3))->state == State::Discarded);
}

TEST_CASE("where one bag is asked for, all of them are not offered") {
    Freezer freezer{{galette, older}};
    const auto known = service::known_bag(freezer.archive, "leek");
    CHECK_FALSE(known);
    CHECK(to_text(known.messages).find("--oldest") != std::string::npos);
    CHECK(to_text(known.messages).find("--all") == std::string::npos);
}

TEST_CASE("a dish under two names is one dish, bag by bag") {
    const Dish renamed{"Orchard parcels", 2};
    Freezer freezer{{galette, older, renamed}};
    const auto joined = service::rename_dish(freezer.archive, "leek", "orchard", later);
    CAPTURE(to_text(joined.messages));
    REQUIRE(joined);
    CHECK(joined.value->joined.size() == 2); // those of the other day are none of them
    CHECK(freezer.archive.bag(freezer.id(galette, 1))->id == freezer.id(renamed, 1));
    CHECK(freezer.archive.bags(archive::Which::InFreezer).size() == 4);
    CHECK_FALSE(service::rename_dish(freezer.archive, "orchard", "orchard", later));
}

TEST_CASE("a bag that the new name has none for stays, and is named") {
    const Dish fewer{"Orchard parcels", 1};
    Freezer freezer{{galette, fewer}};
    const auto joined =
        service::rename_dish(freezer.archive, freezer.id(galette, 1), "orchard", later);
    REQUIRE(joined);
    CHECK(joined.value->joined.size() == 1);
    REQUIRE(joined.value->alone.size() == 1);
    CHECK(joined.value->alone[0].number == 2);
}

TEST_CASE("words that are blank name no bag, which is refused") {
    Freezer freezer{{galette}};
    for (const std::string blank : {"", " ", ",", " , "}) {
        CAPTURE(blank);
        const auto chosen = freezer.chosen({blank});
        CHECK_FALSE(chosen);
        CHECK(to_text(chosen.messages).starts_with("error: no bag is named\n"));
    }
}

TEST_CASE("two dishes of one description are two dishes") {
    Freezer freezer{{}};
    const Dish fish{"Fish pot", 2, 17, {"fish"}};
    const Dish rice{"Rice pot", 2, 17, {}};
    freezer.archive.record(
        {"2026-10-17T14:05:00",
         {"labels", "stock", "", "", ""},
         {{package(fish).made, "", "day.toml", "both", {package(fish), package(rice)}}}});
    const auto joined = service::rename_dish(freezer.archive, "fish", "rice", later);
    CHECK_FALSE(joined);
    CHECK(to_text(joined.messages).find("stand side by side in one description") !=
          std::string::npos);
    CHECK(freezer.archive.bags(archive::Which::InFreezer).size() == 4);
}

TEST_CASE("two foods are never joined, and other allergens are said") {
    const Dish raw{"Orchard parcels", 2, 17, {"celery"}, {"raw ground meat"}};
    const Dish other_day{"Orchard rolls", 2, 18};
    const Dish with_nuts{"Orchard rounds", 2, 17, {"celery", "tree nuts (walnut)"}};
    Freezer freezer{{galette, raw, other_day, with_nuts}};
    CHECK(to_text(service::rename_dish(freezer.archive, "leek", "parcels", later).messages)
              .find("these are two foods") != std::string::npos);
    CHECK(to_text(service::rename_dish(freezer.archive, "leek", "rolls", later).messages)
              .find("are of two days") != std::string::npos);
    CHECK_FALSE(service::rename_dish(freezer.archive, "leek", "nothing like it", later));
    CHECK(freezer.archive.bags(archive::Which::InFreezer).size() == 8);
    const auto nuts = service::rename_dish(freezer.archive, "leek", "rounds", later);
    REQUIRE(nuts);
    CHECK(to_text(nuts.messages).find("take the old labels off") != std::string::npos);
}

TEST_CASE("where it is not known which dish is which, none is joined and all are named") {
    const Dish quince{"Bean and quince soup", 2};
    const Dish apple{"Bean and apple soup", 2};
    const Dish orchard{"Orchard pot", 2};
    const Dish garden{"Garden pot", 2};
    Freezer freezer{{quince, apple, orchard, garden}};
    for (const auto& [before, now] : {std::pair<std::string, std::string>{"bean", "pot"},
                                      {"bean", "orchard pot"},
                                      {"quince", "pot"}}) {
        CAPTURE(before + " to " + now);
        const auto joined = service::rename_dish(freezer.archive, before, now, later);
        CHECK_FALSE(joined);
        const auto said = to_text(joined.messages);
        CHECK(said.find("fit several dishes") != std::string::npos);
        CHECK(said.find(freezer.id(quince, 1)) != std::string::npos);
        CHECK(said.find(freezer.id(orchard, 1)) != std::string::npos);
    }
    CHECK(freezer.archive.bags(archive::Which::InFreezer).size() == 8);
    REQUIRE(service::rename_dish(freezer.archive, "quince", "garden", later));
    CHECK(freezer.archive.bag(freezer.id(quince, 2))->dish == "Garden pot");
    CHECK(freezer.archive.bag(freezer.id(apple, 2))->dish == "Bean and apple soup");
}

TEST_CASE("that an old label has a later date to use it by is said, and a sooner one not") {
    Dish sooner{"Orchard parcels"};
    sooner.use_by = std::chrono::year{2026} / 12 / 1;
    Freezer freezer{{galette, sooner}};
    const auto joined = service::rename_dish(freezer.archive, "leek", "parcels", later);
    REQUIRE(joined);
    CHECK(to_text(joined.messages).find("a later date to use it by") != std::string::npos);
    Freezer other{{galette, sooner}};
    CHECK(to_text(service::rename_dish(other.archive, "parcels", "leek", later).messages).empty());
}
