// From what is typed off a label to what is in the bag.

#include "kitchen.h"
#include "service/freezer/packages_of_bags.h"

#include <algorithm>
#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

struct Asked {
    std::optional<service::KnownBag> known;
    std::string err;
};

Asked ask(const Kitchen& kitchen, const std::string& typed) {
    auto archive = archive::Archive::open(kitchen.archive, archive::Mode::Read).value();
    auto outcome = service::known_bag(archive, typed);
    return {std::move(outcome.value), to_text(outcome.messages)};
}

} // namespace

TEST_CASE_FIXTURE(Kitchen, "a typed id leads to the package its bag was filled with") {
    REQUIRE((*this)("labels day.toml -o labels.pdf").status == 0);
    const auto id = first_id("squash");
    auto slipped = id;
    std::erase(slipped, '-');
    std::ranges::transform(slipped, slipped.begin(),
                           [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    std::ranges::replace(slipped, '0', 'o');
    std::ranges::replace(slipped, '1', 'i');
    std::filesystem::remove(folder / "day.toml"); // the archive alone must do
    for (const auto& typed : {id, slipped, " " + id.substr(0, 7) + " " + id.substr(8)}) {
        CAPTURE(typed);
        const auto [known, err] = ask(*this, typed);
        CAPTURE(err);
        REQUIRE(known.has_value());
        CHECK(err.empty());
        CHECK(known->bag.id == id);
        CHECK(known->package.package.dish == "Squash and red lentil stew");
        CHECK(known->package.keep_until.date == known->bag.keep_until);
        CHECK(known->package.finish.size() == 2);
    }
}

TEST_CASE_FIXTURE(Kitchen, "an id that is none is refused with its slip and its neighbours") {
    CHECK(says((*this)("read K7Q-2M4-9XC").err, "nothing has been printed yet"));
    REQUIRE((*this)("labels day.toml -o labels.pdf").status == 0);
    const auto id = first_id("compote");
    auto wrong_check = id;
    wrong_check.back() = id.back() == 'Z' ? 'Y' : 'Z';
    const auto check = ask(*this, wrong_check);
    CHECK_FALSE(check.known.has_value());
    CHECK(says(check.err, std::string{"\""} + id.back() + "\" would"));
    CHECK(says(check.err, "there is " + id + " (Plum and ginger compote)"));
    const auto shorter = ask(*this, id.substr(0, 10));
    CHECK_FALSE(shorter.known.has_value());
    CHECK(says(shorter.err, "there is " + id));
    for (const std::string hopeless : {"", "-", "UUU-UUU-UUU", "\xff\xfe", "K7Q"}) {
        CAPTURE(hopeless);
        const auto none = ask(*this, hopeless);
        CHECK_FALSE(none.known.has_value());
        CHECK(says(none.err, "error: "));
    }
}

TEST_CASE_FIXTURE(Kitchen,
                  "the old label of a dish whose name was mended leads to the mended one") {
    auto text = file("day.toml");
    const std::string right = "Squash and red lentil stew";
    text.replace(text.find(right), right.size(), "Squahs and red lentil stew");
    const auto mended = file("day.toml");
    write_file(folder / "day.toml", text);
    REQUIRE((*this)("labels day.toml -o labels.pdf").status == 0);
    const auto old_id = first_id("squahs");
    write_file(folder / "day.toml", mended);
    REQUIRE((*this)("labels day.toml -o labels.pdf").status == 0);
    const auto [known, err] = ask(*this, old_id);
    REQUIRE(known.has_value());
    CHECK(known->bag.id != old_id);
    CHECK(known->package.package.dish == right);
}
