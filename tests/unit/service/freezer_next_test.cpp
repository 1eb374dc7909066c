#include "days.h"
#include "kitchen/figures.h"
#include "service/freezer/freezer_next.h"

#include <doctest/doctest.h>

namespace freezer_next_test {

using namespace thawslip;
using namespace thawslip::test_support;
using namespace std::chrono_literals;

namespace {

constexpr kitchen::Date today = std::chrono::year{2026} / 10 / 17;

/// A freezer that holds all bags of some packages, asked at ten in the morning of the packing day.
struct Freezer {
    std::vector<kitchen::PlannedPackage> packages;
    std::vector<archive::Bag> bags = {};
    std::optional<int> serves = {};
    bool past_too = false;
    std::string without = {};

    explicit Freezer(const std::string& text) : packages{packages_of(text)} {
        for (const auto& planned : packages) {
            for (const auto& bag : planned.bags) {
                archive::Bag frozen;
                frozen.id = bag.id;
                frozen.dish = planned.package.dish;
                frozen.servings = planned.package.servings;
                frozen.weight = planned.package.weight;
                frozen.made = planned.made;
                frozen.keep_until = planned.keep_until.date;
                frozen.classes = planned.package.food;
                bags.push_back(std::move(frozen));
            }
        }
    }

    const kitchen::PlannedPackage* package_of(const archive::Bag& bag) const {
        for (const auto& planned : packages) {
            if (std::ranges::find(planned.bags, bag.id, &kitchen::Bag::id) != planned.bags.end()) {
                return &planned;
            }
        }
        return nullptr;
    }

    service::Menu next(int days) const {
        return service::freezer_next(
            bags, [this](const archive::Bag& bag) { return package_of(bag); },
            {.count = days,
             .at = 18h + 30min,
             .serves = serves,
             .past_too = past_too,
             .without = without.empty() ? std::vector<service::Avoided>{}
                                        : *service::read_avoided(without).value},
            {today, kitchen::Instant{std::chrono::sys_days{today}} + 10h, {}}, {});
    }
};

kitchen::LocalMinute supper(int day) {
    return std::chrono::local_days{std::chrono::year{2026} / 10 / day} + 18h + 30min;
}

} // namespace

TEST_CASE("where the first dish of a day cannot be thawed in time, the next one is proposed") {
    const auto menu = Freezer{stew + gratin}.next(1);
    REQUIRE(menu.proposals.size() == 1);
    CHECK(menu.proposals[0].bags.front().dish == "Celeriac gratin");
    CHECK(menu.proposals[0].eat == supper(18));
    CHECK(menu.proposals[0].method == kitchen::ThawMethod::FromFrozen);
    CHECK_FALSE(menu.proposals[0].thaw_start);
    CHECK(menu.without.empty());
}

TEST_CASE("the soonest date comes first as soon as it can be thawed, with its thaw start") {
    const auto menu = Freezer{stew + gratin}.next(9);
    REQUIRE(menu.proposals.size() == 2);
    const auto& proposal = menu.proposals[1];
    CHECK(proposal.bags.front().dish == "Barley stew");
    REQUIRE(proposal.thaw_start.has_value());
    REQUIRE(proposal.thaw_time.has_value());
    CHECK(*proposal.thaw_start + proposal.thaw_time->high <= proposal.eat);
    CHECK(proposal.cook_within.has_value());
}

namespace {

/// The stew that thaws in these ways.
std::string stew_by(const std::string& ways) {
    const std::string one = R"("refrigerator")";
    auto text = stew;
    return text.replace(text.find(one), one.size(), "[" + ways + "]");
}

} // namespace

TEST_CASE("a bag is proposed by the first way on its label that serves, with that way's times") {
    const Freezer freezer{stew_by(R"("refrigerator", "cold water")")};
    const auto menu = freezer.next(1);
    REQUIRE(menu.proposals.size() == 1);
    CHECK(menu.proposals[0].method == kitchen::ThawMethod::ColdWater);
    CHECK(menu.proposals[0].thaw_time == kitchen::thaw_time(freezer.packages[0].other_thaws.at(0)));
    CHECK_FALSE(menu.proposals[0].cook_within); // the same day
    CHECK(menu.proposals[0].thaw_start > supper(18) - 5h);
}

TEST_CASE("no bag is proposed by a way of which nobody knows how long it cooks") {
    const auto menu = Freezer{stew_by(R"("refrigerator", "from frozen")")}.next(1);
    CHECK(menu.proposals.empty());
    CHECK(menu.without == std::vector{supper(18)});
}

TEST_CASE("a meal that nothing can be thawed for is named") {
    const auto menu = Freezer{stew}.next(1);
    CHECK(menu.proposals.empty());
    CHECK(menu.without == std::vector{supper(18)});
}

TEST_CASE("bags past their date, and bags whose turn comes after it, are counted") {
    Freezer freezer{gratin + "bags = 4\n"};
    for (auto& bag : freezer.bags) {
        bag.keep_until = kitchen::add_days(today, std::chrono::days{1});
    }
    freezer.bags.front().keep_until = kitchen::add_days(today, std::chrono::days{-1});
    const auto menu = freezer.next(5);
    CHECK(menu.past == 1);
    CHECK(menu.proposals.size() == 1);
    CHECK(menu.too_many == 2);
    CHECK(menu.days_left == 4); // no dish twice
}

TEST_CASE("a bag is still good on the day of its date") {
    Freezer freezer{gratin};
    freezer.bags.front().keep_until = today;
    CHECK(freezer.next(1).past == 0);
    CHECK(freezer.next(1).too_many == 1); // but not tomorrow
}

TEST_CASE("where a description cannot be read any longer, its label has to tell") {
    Freezer freezer{stew};
    freezer.packages.clear();
    const auto menu = freezer.next(1);
    REQUIRE(menu.proposals.size() == 1);
    CHECK_FALSE(menu.proposals[0].method);
    CHECK_FALSE(menu.proposals[0].thaw_time);
}

TEST_CASE("an empty freezer proposes nothing and misses no meal") {
    const auto menu = Freezer{stew}.next(0);
    CHECK(menu.proposals.empty());
    CHECK(menu.without.empty());
}

namespace {

std::string dish(const std::string& name, int servings, int bags, const std::string& more = {}) {
    return "[[package]]\ndish = \"" + name + "\"\nservings = " + std::to_string(servings) +
           "\nbags = " + std::to_string(bags) +
           "\nfood = \"soup or stew\"\nuse_by = 2026-12-20\nthaw.method = \"microwave\"\n" + more;
}

} // namespace

TEST_CASE("bags of one dish together serve the table, and no dish comes twice") {
    Freezer freezer{dish("Barley pot", 2, 5) + dish("Leek soup", 4, 2)};
    freezer.serves = 6;
    const auto menu = freezer.next(5);
    REQUIRE(menu.proposals.size() == 2);
    CHECK(menu.proposals[0].bags.size() == 3);
    CHECK(menu.proposals[0].servings() == 6);
    CHECK(menu.proposals[1].bags.size() == 2);
    CHECK(menu.proposals[1].servings() == 8);
    CHECK(menu.days_left == 3);
}

TEST_CASE("what does not serve the table is named and not proposed") {
    Freezer freezer{dish("Barley pot", 2, 2) + dish("Leek soup", 4, 2)};
    freezer.serves = 6;
    const auto menu = freezer.next(2);
    REQUIRE(menu.proposals.size() == 1);
    CHECK(menu.proposals[0].bags.front().dish == "Leek soup");
    CHECK(menu.too_few == std::vector<std::string>{"Barley pot"});
}

TEST_CASE("a child's portion is no dinner") {
    for (const std::string name : {"Kids' noodles", "Nudeln für Kinder", "Kindernudeln",
                                   "Fideos para niños", "Sopa para niñas", "Toddlers' stew"}) {
        CAPTURE(name);
        const auto menu = Freezer{dish(name, 2, 2)}.next(1);
        CHECK(menu.proposals.empty());
        CHECK(menu.small == std::vector{name});
    }
    CHECK(Freezer{dish("Noodles", 2, 2, "weight = \"240 g\"\n")}.next(1).small.size() == 1);
    CHECK(Freezer{dish("Noodles", 2, 2, "weight = \"600 g\"\n")}.next(1).small.empty());
    CHECK(Freezer{dish("Kindred pot", 2, 2)}.next(1).small.empty());
}

TEST_CASE("where most bags are for one, a dinner is for one, and else a bag for one is not alone") {
    CHECK(Freezer{dish("Barley pot", 1, 3)}.next(1).proposals[0].bags.size() == 1);
    const auto menu = Freezer{dish("Barley pot", 1, 2) + dish("Leek soup", 4, 3)}.next(1);
    CHECK(menu.serves == 2);
    CHECK(menu.proposals[0].bags.size() == 2);
}

TEST_CASE("what a guest may not eat, or nobody knows, is named and not proposed") {
    Freezer freezer{dish("Leek soup", 4, 2, "contains = [\"milk\"]\n") + dish("Barley pot", 4, 2) +
                    dish("Quince stew", 4, 1)};
    freezer.packages.pop_back(); // of the stew nothing is known
    freezer.without = "milk";
    const auto menu = freezer.next(3);
    CHECK(menu.avoided == std::vector<std::string>{"Leek soup", "Quince stew"});
    REQUIRE(menu.proposals.size() == 1);
    CHECK(menu.proposals[0].bags.front().dish == "Barley pot");
    freezer.without.clear();
    CHECK(freezer.next(3).avoided.empty());
}

TEST_CASE("bags past a best-by date come on request, those past a use-by date never") {
    Freezer freezer{dish("Barley pot", 4, 1) + dish("Leek soup", 4, 1)};
    for (auto& bag : freezer.bags) {
        bag.keep_until = kitchen::add_days(today, std::chrono::days{-1});
    }
    freezer.bags[0].basis = kitchen::DateBasis::StorageTable;
    CHECK(freezer.next(2).proposals.empty());
    CHECK(freezer.next(2).past == 2);
    freezer.past_too = true;
    const auto menu = freezer.next(2);
    REQUIRE(menu.proposals.size() == 1);
    CHECK(menu.proposals[0].bags.front().dish == "Barley pot");
    CHECK(menu.past == 1);
}

TEST_CASE("a bag whose use-by date comes before the meal is not proposed, whatever is asked for") {
    Freezer freezer{stew};
    freezer.past_too = true;
    for (auto& bag : freezer.bags) {
        bag.keep_until = kitchen::add_days(today, std::chrono::days{1});
    }
    CHECK(freezer.next(9).proposals.empty());
    freezer.bags.front().basis = kitchen::DateBasis::StorageTable;
    CHECK(freezer.next(9).proposals.size() == 1);
}

TEST_CASE("a meal after the date on a label is told apart from one that comes too soon to thaw") {
    Freezer freezer{stew};
    for (auto& bag : freezer.bags) {
        bag.keep_until = kitchen::add_days(today, std::chrono::days{1});
    }
    const auto menu = freezer.next(3);
    CHECK(menu.without == std::vector{supper(18)}); // it may be thawed in a quicker way
    REQUIRE(menu.after_date.size() == 2);
    CHECK(menu.after_date[0].eat == supper(19));
    REQUIRE(menu.after_date[0].bags.size() == 1);
    CHECK(menu.after_date[0].bags.front().dish == "Barley stew");
    CHECK(menu.after_date[1].eat == supper(20));
}

TEST_CASE("of two dishes each has its own reason, and bags that are left must serve the table") {
    Freezer freezer{stew + gratin + "bags = 2\n"};
    freezer.serves = 4;
    freezer.bags[1].keep_until = today; // the gratin that is left serves two
    const auto menu = freezer.next(1);
    CHECK(menu.without == std::vector{supper(18)});
    REQUIRE(menu.after_date.size() == 1);
    CHECK(menu.after_date[0].bags.size() == 1);
    CHECK(menu.after_date[0].bags.front().dish == "Celeriac gratin");
}

namespace {

/// What another day, whose bags have other ids, has beside a freezer's own.
void add(Freezer& freezer, const std::string& text) {
    const Freezer more{text};
    for (auto planned : more.packages) {
        std::ranges::for_each(planned.bags, [](kitchen::Bag& bag) { bag.id += "-2"; });
        freezer.packages.push_back(std::move(planned));
    }
    for (auto bag : more.bags) {
        bag.id += "-2";
        freezer.bags.push_back(std::move(bag));
    }
}

/// \param food of which a dish of one name is
std::string ragout(const std::string& food) {
    auto text = stew;
    return text.replace(text.find("soup or stew"), 12, food);
}

} // namespace

TEST_CASE("raw and cooked bags of one name are two dishes") {
    Freezer freezer{ragout("minced meat")};
    add(freezer, stew);
    freezer.serves = 4;
    const auto menu = freezer.next(9);
    REQUIRE(menu.proposals.size() == 2);
    CHECK(menu.proposals[0].bags.size() == 1);
    CHECK(menu.proposals[0].cook_within != menu.proposals[1].cook_within);
    freezer.serves = 8;
    CHECK(freezer.next(9).proposals.empty());
    CHECK(freezer.next(9).too_few.size() == 2);
}

TEST_CASE("bags that keep thawed for different times are cooked when the first must") {
    Freezer freezer{stew};
    add(freezer, stew);
    freezer.serves = 8;
    auto& later = freezer.packages.back();
    REQUIRE(later.after_thawing.has_value());
    const auto kept = kitchen::cook_within(freezer.packages.front());
    REQUIRE(kept > std::chrono::days{1});
    later.after_thawing->low = later.after_thawing->high = std::chrono::days{1};
    const auto menu = freezer.next(9);
    REQUIRE(menu.proposals.size() == 1);
    CHECK(menu.proposals[0].bags.size() == 2);
    CHECK(menu.proposals[0].cook_within == std::chrono::days{1});
}

} // namespace freezer_next_test
