#include "days.h"
#include "service/freezer/freezer_next.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::test_support;
using namespace std::chrono_literals;

namespace {

constexpr kitchen::Date today = std::chrono::year{2026} / 10 / 17;

/// A freezer that holds all bags of some packages, asked at ten in the morning of the packing day.
struct Freezer {
    std::vector<kitchen::PlannedPackage> packages;
    std::vector<archive::Bag> bags = {};

    explicit Freezer(const std::string& text) : packages{packages_of(text)} {
        for (const auto& planned : packages) {
            for (const auto& bag : planned.bags) {
                archive::Bag frozen;
                frozen.id = bag.id;
                frozen.dish = planned.package.dish;
                frozen.made = planned.made;
                frozen.keep_until = planned.keep_until.date;
                bags.push_back(std::move(frozen));
            }
        }
    }

    const kitchen::PlannedPackage* package_of(const archive::Bag& bag) const {
        for (const auto& planned : packages) {
            if (planned.package.dish == bag.dish) {
                return &planned;
            }
        }
        return nullptr;
    }

    service::Menu next(int days) const {
        return service::freezer_next(
            bags, [this](const archive::Bag& bag) { return package_of(bag); },
            {.count = days, .at = 18h + 30min},
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
    CHECK(menu.proposals[0].bag.dish == "Celeriac gratin");
    CHECK(menu.proposals[0].eat == supper(18));
    CHECK(menu.proposals[0].method == kitchen::ThawMethod::FromFrozen);
    CHECK_FALSE(menu.proposals[0].thaw_start);
    CHECK(menu.without.empty());
}

TEST_CASE("the soonest date comes first as soon as it can be thawed, with its thaw start") {
    const auto menu = Freezer{stew + gratin}.next(9);
    REQUIRE(menu.proposals.size() == 2);
    const auto& proposal = menu.proposals[1];
    CHECK(proposal.bag.dish == "Barley stew");
    REQUIRE(proposal.thaw_start.has_value());
    REQUIRE(proposal.thaw_time.has_value());
    CHECK(*proposal.thaw_start + proposal.thaw_time->high <= proposal.eat);
    CHECK(proposal.cook_within.has_value());
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
    CHECK(menu.without.empty());
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
