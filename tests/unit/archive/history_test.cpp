// Random histories of two kitchens, each with three files: whatever is printed, edited, merged,
// moved and taken out, every bag is in one place with its own servings, allergens and state.

#include "samples.h"
#include "support/command.h"
#include "support/random.h"

#include <array>
#include <doctest/doctest.h>
#include <fmt/format.h>
#include <map>
#include <set>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

/// What is known of a bag from outside the archive.
struct Facts {
    std::string dish;
    int servings = 0;
    std::vector<std::string> allergens;
    State state = State::Frozen;
    friend bool operator==(const Facts&, const Facts&) = default;
};
using Freezer = std::map<std::string, Facts>; ///< by id

Freezer freezer_of(const Contents& contents) {
    Freezer freezer;
    for (const auto& bag : contents.bags) {
        const auto& package =
            contents.days[bag.day].record.packages[static_cast<std::size_t>(bag.position - 1)];
        const auto [known, is_new] = freezer.emplace(
            bag.ids.front(), Facts{package.dish, package.servings, package.food->allergens,
                                   bag.events.back().state.value_or(State::Frozen)});
        REQUIRE(is_new);
        REQUIRE(bag.ids.size() == 1);
    }
    return freezer;
}

struct Dish {
    std::string name;
    int bags = 1;
    int servings = 1;
    std::vector<std::string> allergens;
};

/// A description as a cook has it on the disk.
struct File {
    std::vector<Dish> dishes;
    bool is_printed = false;
};

struct CooksKitchen {
    std::string name;
    int number = 0;
    std::string station;
    std::array<File, 3> files;
    std::optional<Archive> archive;
};

class History {
public:
    explicit History(std::uint64_t seed) : random_{seed} {
        const bool named = seed % 2 == 0;
        for (std::size_t k = 0; k < 2; ++k) {
            kitchens_[k].name = named ? (k == 0 ? "Orchard house" : "Barn") : "";
            kitchens_[k].number = named ? 0 : static_cast<int>(3 + 4 * k);
            kitchens_[k].station = k == 0 ? "here" : "there";
            kitchens_[k].archive = opened(new_path());
            for (auto& file : kitchens_[k].files) {
                file = new_file();
            }
        }
    }

    void step() {
        minute_ += 1 + static_cast<int>(random_.below(30));
        const auto k = random_.below(2);
        switch (random_.below(6)) {
        case 0: edit_file(kitchens_[k].files[random_.below(3)]); break;
        case 1:
        case 2: print_file(k, random_.below(3)); break;
        case 3: change_state(kitchens_[k]); break;
        case 4: merge(kitchens_[k], kitchens_[1 - k]); break;
        default: move_archive(kitchens_[k]); break;
        }
    }

    void finish() {
        auto& here = kitchens_[0];
        auto& there = kitchens_[1];
        auto one = opened(new_path());
        auto other = opened(new_path());
        one.merge(here.archive->contents());
        one.merge(there.archive->contents());
        other.merge(there.archive->contents());
        other.merge(here.archive->contents());
        REQUIRE(freezer_of(one.contents()) == expected_);
        REQUIRE(freezer_of(other.contents()) == expected_); // in whatever order
        merge(here, there);
        merge(there, here);
        REQUIRE(freezer_of(here.archive->contents()) == expected_);
        REQUIRE(freezer_of(there.archive->contents()) == expected_);
        const auto before = here.archive->contents();
        merge(here, there); // once more is once
        REQUIRE(here.archive->contents() == before);
        for (const auto& [id, facts] : expected_) {
            REQUIRE(here.archive->bag(id).has_value());
        }
        REQUIRE(here.archive->check().empty());
        REQUIRE(there.archive->check().empty());
    }

    std::size_t bags() const { return expected_.size(); }

private:
    std::string new_path() {
        scratches_.push_back(std::make_unique<Scratch>());
        return scratches_.back()->path;
    }

    std::string now() const {
        const auto months = 10 + minute_ / 40'320; // since the first of 2026
        return fmt::format("{}-{:02}-{:02}T{:02}:{:02}:00", 2026 + months / 12, 1 + months % 12,
                           1 + minute_ / 1440 % 28, minute_ / 60 % 24, minute_ % 60);
    }

    std::vector<std::string> allergens() {
        static const std::array<std::string, 3> all = {"celery", "milk", "peanut"};
        return {all[random_.below(3)]};
    }

    File new_file() {
        static const std::array<std::string, 3> names = {"Chili", "Leek soup", "Plum pot"};
        File file;
        const auto first = random_.below(3);
        for (std::size_t i = 0; i <= random_.below(2); ++i) {
            file.dishes.push_back({names[(first + i) % 3], 1, 1, {}});
            edit(file.dishes.back());
        }
        return file;
    }

    void edit_file(File& file) { edit(file.dishes[random_.below(file.dishes.size())]); }

    void edit(Dish& dish) {
        dish.bags = static_cast<int>(1 + random_.below(4));
        dish.servings = static_cast<int>(1 + random_.below(9));
        dish.allergens = allergens();
    }

    DayRecord record_of(const CooksKitchen& kitchen, std::size_t index) const {
        std::vector<PackageRecord> packages;
        std::string text = fmt::format("# {} of {}\n", index, kitchen.name);
        for (const auto& dish : kitchen.files[index].dishes) {
            auto record = package(dish.name, dish.bags);
            record.servings = dish.servings;
            record.food->allergens = dish.allergens;
            record.batch = {kitchen.number, kitchen.name, 1};
            text += fmt::format("{} {} {} {}\n", dish.name, dish.bags, dish.servings,
                                dish.allergens.front());
            packages.push_back(std::move(record));
        }
        auto record = day(packages, fmt::format("/home/cook/{}.toml", index));
        record.kitchen = kitchen.name;
        record.description = text;
        record.station = kitchen.station;
        return record;
    }

    /// Prints, and answers as the cook who knows that each file is a batch of its own.
    void print_file(std::size_t k, std::size_t index) {
        auto& kitchen = kitchens_[k];
        auto record = record_of(kitchen, index);
        WhichBatch which;
        auto settled = kitchen.archive->settle(record, which);
        if (!settled.doubts.empty()) {
            REQUIRE_FALSE(kitchen.files[index].is_printed); // its own file is known
            which.kind = WhichBatch::Kind::New;
            settled = kitchen.archive->settle(record, which);
            REQUIRE(settled.doubts.empty());
        }
        record = with_ids(record, settled.batches);
        auto made = print({record}, now());
        made.station.name = kitchen.station;
        made.which = which;
        kitchen.archive->record(made);
        kitchen.files[index].is_printed = true;
        expect(k, index, record);
        if (random_.chance(3)) { // printed again, as it is
            made.which = {};
            made.at = now() + ".5";
            const auto again = kitchen.archive->record(made);
            REQUIRE(again.new_days + again.revisions + again.new_bags == 0);
        }
    }

    /// What was printed for one file is never printed for another.
    void expect(std::size_t k, std::size_t index, const DayRecord& record) {
        for (const auto& package : record.packages) {
            for (const auto& id : package.bags) {
                const auto [owner, is_new] =
                    owners_.emplace(id, fmt::format("{} {} {}", k, index, package.dish));
                REQUIRE(owner->second == fmt::format("{} {} {}", k, index, package.dish));
                auto& facts = expected_[id];
                facts = {package.dish, package.servings, package.food->allergens, facts.state};
            }
        }
    }

    void change_state(CooksKitchen& kitchen) {
        const auto bags = kitchen.archive->bags(Which::All);
        if (bags.empty()) {
            return;
        }
        const std::vector<std::string> ids = {bags[random_.below(bags.size())].id};
        const auto state = state_words[random_.below(5)].first;
        if (kitchen.archive->set_state(ids, state, now(), {kitchen.station}) == 1) {
            expected_[ids.front()].state = state;
        }
    }

    static void merge(CooksKitchen& into, CooksKitchen& from) {
        REQUIRE(into.archive->merge(from.archive->contents()).clashes.empty());
    }

    /// Exported and imported into a new file.
    void move_archive(CooksKitchen& kitchen) {
        auto moved = opened(new_path());
        moved.merge(kitchen.archive->contents());
        REQUIRE(moved.contents() == kitchen.archive->contents());
        kitchen.archive = std::move(moved);
    }

    std::vector<std::unique_ptr<Scratch>> scratches_;
    int minute_ = 0;
    test_support::Random random_;
    std::array<CooksKitchen, 2> kitchens_;
    Freezer expected_;
    std::map<std::string, std::string> owners_;
};

} // namespace

TEST_CASE("random histories of two kitchens: every bag is in one place, with what is its own") {
    // The decisions are the same code for both; a server takes a hundred times as long over each.
    constexpr std::uint64_t histories = on_server ? 4 : 12;
    std::size_t bags = 0;
    for (std::uint64_t seed = 1; seed <= histories; ++seed) {
        CAPTURE(seed);
        History history{seed};
        for (int step = 0; step < 40; ++step) {
            CAPTURE(step);
            history.step();
        }
        history.finish();
        bags += history.bags();
    }
    CHECK(bags > 8 * histories);
}
