#include "kitchen/bag_id.h"
#include "service/print/part.h"

#include <doctest/doctest.h>

namespace part_test {

using namespace thawslip;
using service::NamedBag;
using service::Part;
using Ids = std::set<std::string>;

namespace {

const kitchen::Date day{std::chrono::year{2026}, std::chrono::October, std::chrono::day{17}};

/// Three dishes of an orchard crew's packing day: bags 1 to 3, 4 to 5, 6 to 9 in order of printing.
std::vector<NamedBag> bags() {
    std::vector<NamedBag> all;
    for (const auto& [dish, count] :
         {std::pair{"Windfall apple chowder", 3}, std::pair{"Crème of parsnip", 2},
          std::pair{"Pickers' barley stew", 4}}) {
        for (int number = 1; number <= count; ++number) {
            all.push_back({dish, kitchen::bag_id({dish, day, number}), number});
        }
    }
    return all;
}

/// The bags at these places, from 1.
Ids at(std::initializer_list<std::size_t> places) {
    Ids ids;
    for (const auto place : places) {
        ids.insert(bags().at(place - 1).id);
    }
    return ids;
}

service::Outcome<Ids> part(const Part& wanted, const service::PartSource& source = {}) {
    return bags_of_part(bags(), wanted, source);
}

std::string refused(const Part& wanted) {
    const auto outcome = part(wanted);
    CHECK(!outcome.value);
    return to_text(outcome.messages);
}

} // namespace

TEST_CASE("dishes are named by the beginnings of their words, several with a comma between") {
    CHECK(*part({.dishes = "barl"}).value == at({6, 7, 8, 9}));
    CHECK(*part({.dishes = "app chow"}).value == at({1, 2, 3}));
    CHECK(*part({.dishes = "CREME"}).value == at({4, 5}));
    CHECK(*part({.dishes = "crème, stew pick"}).value == at({4, 5, 6, 7, 8, 9}));
}

TEST_CASE("a dish's whole name means that dish, and none whose name only begins so") {
    const std::vector<NamedBag> all{
        {"Quince stew", "a", 1}, {"Quince stew, hot", "b", 1}, {"Hot quince stew", "c", 1}};
    const auto meant = [&all](const std::string& dishes) {
        return *bags_of_part(all, {.dishes = dishes}, {}).value;
    };
    CHECK(meant("quince STEW") == Ids{"a"});
    CHECK(meant("Quince stew  hot") == Ids{"b"}); // its own comma would part it
    CHECK(meant("Quince stew, Hot quince stew") == Ids{"a", "c"});
    CHECK(meant("stew quince") == Ids{"a", "b", "c"}); // words, and no name
}

TEST_CASE("a number counts through all bags, or within the dishes that are named") {
    CHECK(*part({.bags = "3-5"}).value == at({3, 4, 5}));
    CHECK(*part({.bags = "9 1"}).value == at({1, 9}));
    CHECK(*part({.dishes = "stew", .bags = "3-4"}).value == at({8, 9}));
    CHECK(*part({.dishes = "stew, chowder", .bags = "3"}).value == at({3, 8}));
    CHECK(*part({.dishes = "stew, parsnip", .bags = "4"}).value == at({9})); // one has no fourth
}

TEST_CASE("ids are taken as people type them, among numbers too") {
    auto typed = bags()[7].id;
    std::erase(typed, '-');
    CHECK(*part({.bags = typed}).value == at({8}));
    CHECK(*part({.bags = bags()[1].id + ", 4-5"}).value == at({2, 4, 5}));
    CHECK(*part({.bags = bags()[1].id + " " + bags()[2].id}).value == at({2, 3}));
}

TEST_CASE("an id that a bag had before leads to it") {
    service::PartSource source;
    source.newest_id = [](const std::string& id) { return id == bags()[0].id ? bags()[5].id : id; };
    CHECK(*part({.bags = bags()[0].id}, source).value == at({6}));
}

TEST_CASE("from a bag on: that one and all behind it") {
    CHECK(*part({.from = "8"}).value == at({8, 9}));
    CHECK(*part({.from = bags()[4].id}).value == at({5, 6, 7, 8, 9}));
    CHECK(*part({.dishes = "stew", .from = "3"}).value == at({8, 9}));
    CHECK(*part({.dishes = "stew", .from = bags()[7].id}).value == at({8, 9}));
    CHECK(*part({.bags = "1-6", .from = "4"}).value == at({4, 5, 6}));
}

TEST_CASE("from a bag on goes through all dishes and sizes that are named, in printing order") {
    CHECK(*part({.dishes = "stew, chowder", .from = "3"}).value == at({3, 6, 7, 8, 9}));
    CHECK(*part({.dishes = "stew, parsnip", .from = "3"}).value == at({8, 9})); // one has no third
    const std::vector<NamedBag> sizes{
        {"Plum stew", "a", 1}, {"Plum stew", "b", 2}, {"Plum stew", "c", 1}, {"Plum stew", "d", 2}};
    CHECK(*bags_of_part(sizes, {.dishes = "plum", .from = "2"}, {}).value == Ids{"b", "c", "d"});
}

TEST_CASE("only new ones: those that are not printed") {
    service::PartSource source;
    source.printed = [] { return at({1, 2, 6}); };
    CHECK(*part({.only_new = true}, source).value == at({3, 4, 5, 7, 8, 9}));
    CHECK(*part({.dishes = "chow", .only_new = true}, source).value == at({3}));
    source.printed = [] { return at({1, 2, 3}); };
    CHECK(part({.dishes = "chow", .only_new = true}, source).value->empty());
}

TEST_CASE("a part of the archive is the ids that it was of") {
    CHECK(*part({.ids = {bags()[3].id, bags()[8].id}}).value == at({4, 9}));
    CHECK(service::is_whole({.copies = 4}));
    CHECK_FALSE(service::is_whole({.ids = {bags()[3].id}}));
}

TEST_CASE("what is not there is said with what comes near") {
    CHECK(refused({.dishes = "barlye"}) == "error: no dish has the words \"barlye\"\n"
                                           "    hint: did you mean \"Pickers' barley stew\"?\n");
    CHECK(refused({.dishes = "quinoa"})
              .starts_with("error: no dish has the words \"quinoa\"\n    hint: the nearest are "));
    CHECK(refused({.dishes = "Cremé of parsnp"}) ==
          "error: no dish has the words \"Cremé of parsnp\"\n"
          "    hint: did you mean \"Crème of parsnip\"?\n");
    CHECK(refused({.dishes = "stew, parsnpi"}).find("\"parsnpi\"") != std::string::npos);
    CHECK(refused({.bags = "10"})
              .starts_with("error: there is no bag 10: they are numbered 1 to 9\n    hint: a "
                           "number counts through"));
    CHECK(refused({.dishes = "stew", .bags = "5"})
              .starts_with("error: there is no bag 5: they are numbered 1 to 4\n    hint: with "
                           "--dish, a number is"));
    CHECK(refused({.from = "5-6"}).starts_with("error: --from takes one bag"));
    CHECK(refused({.bags = "5-3"}).starts_with("error: 5-3 runs backwards"));
    const auto other = kitchen::bag_id({"Quince jam", day, 1});
    CHECK(refused({.bags = other}).starts_with("error: no bag " + other + " is among those"));
    auto wrong = bags()[2].id;
    wrong.back() = wrong.back() == 'Z' ? 'Y' : 'Z';
    CHECK(refused({.bags = wrong}).find("does not match") != std::string::npos);
}

TEST_CASE("bags that all lie before the one from which on is printed are refused") {
    CHECK(refused({.bags = "2", .from = "3"}) == "error: bag 2 is not among those from bag 3 on\n"
                                                 "    hint: --bag alone prints what it names\n");
    CHECK(refused({.bags = "1-2", .from = "3"})
              .starts_with("error: bags 1-2 are not among those from bag 3 on\n"));
    const auto first = bags()[0].id;
    CHECK(refused({.bags = first, .from = "2"})
              .starts_with("error: bag " + first + " is not among those from bag 2 on\n"));
    CHECK(*part({.bags = "2-3", .from = "3"}).value == at({3}));
}

TEST_CASE("commas and blanks alone name no bag, and do not stand for all") {
    for (const std::string nothing : {",", " ", " , ,"}) {
        CAPTURE(nothing);
        const auto said = "error: \"" + nothing + "\" names no bag\n";
        CHECK(refused({.dishes = nothing}) == said);
        CHECK(refused({.bags = nothing}) == said);
        CHECK(refused({.from = nothing}) == said);
    }
}

TEST_CASE("the ends of what there is are there, and what lies beyond is said once") {
    CHECK(*part({.bags = "1,9"}).value == at({1, 9}));
    CHECK(*part({.from = "1"}).value == at({1, 2, 3, 4, 5, 6, 7, 8, 9}));
    CHECK(*part({.from = "9"}).value == at({9}));
    CHECK(*part({.from = bags()[0].id}).value == at({1, 2, 3, 4, 5, 6, 7, 8, 9}));
    CHECK(
        refused({.from = "10"}).starts_with("error: there is no bag 10: they are numbered 1 to 9"));
    const auto several = refused({.bags = "10-12"});
    CHECK(several.find("there is no bag 10") != std::string::npos);
    CHECK(several.find("there is no bag 11") == std::string::npos);
    CHECK(refused({.dishes = "parsnip", .bags = "3"})
              .starts_with("error: there is no bag 3: they are numbered 1 to 2"));
}

TEST_CASE(
    "an id that is not among the bags is told with the one it comes near, or with their ends") {
    const auto other = kitchen::bag_id({"Quince jam", day, 1});
    const auto far = refused({.bags = other});
    CHECK(far.find("they are " + bags().front().id + " to " + bags().back().id) !=
          std::string::npos);
    auto near = bags()[3].id;
    for (const char c : std::string{"0123456789ABCDEFGHJKMNPQRSTVWXYZ"}) {
        near[0] = c;
        for (const char check : std::string{"0123456789ABCDEFGHJKMNPQRSTVWXYZ"}) {
            near.back() = check;
            if (near != bags()[3].id && kitchen::parse_bag_id(near).ok() &&
                part({.bags = near}).messages.have_errors()) {
                CHECK(refused({.bags = near})
                          .find("did you mean " + bags()[3].id + " (Crème of parsnip)?") !=
                      std::string::npos);
                return;
            }
        }
    }
    FAIL("no id comes near");
}

TEST_CASE("numbers of bags are told from ids by their lengths") {
    CHECK(service::are_numbers("3-5, 9"));
    CHECK(service::are_numbers("99999"));
    CHECK_FALSE(service::are_numbers("100000"));
    CHECK_FALSE(service::are_numbers(bags()[0].id));
    CHECK(refused({.bags = "barley"})
              .starts_with("error: \"barley\" is no bag's number and no id: "));
    CHECK(refused({.bags = "3-"}).find("no id") == std::string::npos); // a number with a slip
}

} // namespace part_test
