#include "kitchen/bag_id.h"

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <string>
#include <vector>

using namespace thawslip::kitchen;
using namespace std::chrono;

namespace {

constexpr std::string_view symbols = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";

/// Ids of many dishes and days, without dashes.
std::vector<std::string> many_ids(int count) {
    std::vector<std::string> ids;
    for (int i = 0; i < count; ++i) {
        const auto dish = fmt::format("Plum and ginger compote {}", i);
        auto id = bag_id({dish, add_days(2026y / 10 / 17, days{i % 400}), i % 9 + 1});
        std::erase(id, '-');
        ids.push_back(id);
    }
    return ids;
}

} // namespace

TEST_CASE("an id is nine letters and digits in threes, none of them I, L, O or U") {
    for (const auto& id : many_ids(2000)) {
        REQUIRE(id.size() == 9);
        REQUIRE(id.find_first_not_of(symbols) == std::string::npos);
    }
    const auto printed = bag_id({"Squash and red lentil stew", 2026y / 10 / 17, 1});
    CHECK(printed.size() == 11);
    CHECK(printed[3] == '-');
    CHECK(printed[7] == '-');
}

TEST_CASE("ids stay as they are from version to version, for labels stick for years") {
    CHECK(bag_id({"Squash and red lentil stew", 2026y / 10 / 17, 1}) == "7C5-8FW-87D");
    CHECK(bag_id({"Squash and red lentil stew", 2026y / 10 / 17, 2}) == "3TX-SZC-87V");
    CHECK(bag_id({"Kürbis-Maroni-Suppe", 2027y / 2 / 28, 1}) == "BHN-5S0-CDX");
}

TEST_CASE("dish, date, number and attempt each change the id") {
    const auto id = bag_id({"Bean and barley pot", 2026y / 10 / 17, 1});
    CHECK(id == bag_id({"Bean and barley pot", 2026y / 10 / 17, 1}));
    CHECK(id != bag_id({"Bean and barley pots", 2026y / 10 / 17, 1}));
    CHECK(id != bag_id({"Bean and barley pot", 2026y / 10 / 18, 1}));
    CHECK(id != bag_id({"Bean and barley pot", 2026y / 10 / 17, 2}));
    CHECK(id != bag_id({"Bean and barley pot", 2026y / 10 / 17, 1}, 1));
}

TEST_CASE("a kitchen with a number has its three symbols before the others") {
    const BagName name{"Squash and red lentil stew", 2026y / 10 / 17, 1, {17, "", 1}};
    const auto id = bag_id(name);
    CHECK(id.size() == 15);
    CHECK(id.starts_with("00H-")); // 17 in Crockford's Base32
    CHECK(parse_bag_id(id).value() == id);
    auto other = name;
    other.batch.kitchen_number = highest_kitchen_number;
    CHECK(bag_id(other).starts_with("ZZZ-"));
    CHECK(bag_id(other).substr(4) != id.substr(4));
    // 000 is no kitchen's: the check does not see leading zeros.
    CHECK(parse_bag_id("000-7C5-8FW-87D").value() == "7C5-8FW-87D");
    std::set<std::string> ids;
    for (int kitchen = 1; kitchen <= highest_kitchen_number; ++kitchen) {
        other.batch.kitchen_number = kitchen;
        ids.insert(bag_id(other));
    }
    CHECK(ids.size() == 32'767);
}

TEST_CASE("batch and kitchen change the id, and stay as they are from version to version") {
    const BagName first{"Squash and red lentil stew", 2026y / 10 / 17, 1};
    CHECK(bag_id({first.dish, first.made, 1, {0, "", 1}}) == "7C5-8FW-87D");
    const auto second = bag_id({first.dish, first.made, 1, {0, "", 2}});
    const auto orchard = bag_id({first.dish, first.made, 1, {0, "Orchard house", 1}});
    const auto barn = bag_id({first.dish, first.made, 1, {0, "Barn", 1}});
    const auto numbered = bag_id({first.dish, first.made, 1, {17, "Barn", 1}});
    CHECK(second == "QPS-F88-87V");
    CHECK(orchard == "C8H-YNW-87N");
    CHECK(barn == "V7H-DHC-87K");
    CHECK(numbered == "00H-FVW-4G0-87Z");
}

TEST_CASE("every single wrong symbol of a long id, and every swap, is caught") {
    for (int kitchen = 1; kitchen < 400; ++kitchen) {
        auto id = bag_id({"Plum pot", 2026y / 10 / 17, 1, {kitchen * 79, "", 1}});
        std::erase(id, '-');
        for (std::size_t i = 0; i < id.size(); ++i) {
            for (const char wrong : symbols) {
                auto typed = id;
                typed[i] = wrong;
                REQUIRE(parse_bag_id(typed).ok() == (wrong == id[i]));
            }
            auto typed = id;
            std::swap(typed[i], typed[i == 0 ? 1 : i - 1]);
            REQUIRE(parse_bag_id(typed).ok() == (typed == id));
        }
    }
}

TEST_CASE("every single wrong symbol is caught, in every place of many ids") {
    for (const auto& id : many_ids(500)) {
        for (std::size_t i = 0; i < id.size(); ++i) {
            for (const char wrong : symbols) {
                auto typed = id;
                typed[i] = wrong;
                REQUIRE(parse_bag_id(typed).ok() == (wrong == id[i]));
            }
        }
    }
}

TEST_CASE("every swap of two different neighbours is caught, the check symbol's too") {
    for (const auto& id : many_ids(20000)) {
        for (std::size_t i = 0; i + 1 < id.size(); ++i) {
            auto typed = id;
            std::swap(typed[i], typed[i + 1]);
            REQUIRE(parse_bag_id(typed).ok() == (typed == id));
        }
    }
}

TEST_CASE("an id is read as people type it") {
    // 10 has the check 32, so it is padded to a payload whose check is a letter or digit.
    std::string payload = "10000001";
    const auto nine = payload + crockford_check(payload);
    const auto printed =
        fmt::format("{}-{}-{}", nine.substr(0, 3), nine.substr(3, 3), nine.substr(6, 3));
    for (const auto& typed : {
             nine,
             printed,
             fmt::format("ioooooo1{}", nine.back()),
             fmt::format("L0 oO0 0o I{}", nine.back()),
             fmt::format("-1-0-0000-0-1--{}- ", nine.back()),
             fmt::format("  l00\t00001{}\r\n", nine.back()),
         }) {
        CAPTURE(typed);
        REQUIRE(parse_bag_id(typed).ok());
        CHECK(parse_bag_id(typed).value() == printed);
    }
    for (auto id : many_ids(200)) {
        const auto as_printed = parse_bag_id(id);
        REQUIRE(as_printed.ok());
        for (auto& c : id) {
            c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        }
        CHECK(parse_bag_id(id).value() == as_printed.value());
    }
}

TEST_CASE("what is wrong with a typed id is said, and where") {
    auto id = many_ids(1).front();
    const char right = id.back();
    id.back() = right == 'Z' ? '0' : 'Z';
    const auto wrong = parse_bag_id(id);
    REQUIRE_FALSE(wrong.ok());
    CHECK(wrong.fault().kind == BagIdFault::Kind::WrongCheck);
    CHECK(wrong.fault().expected_check == right);
    CHECK(wrong.fault().offset == 8);
    CHECK(wrong.fault().message.ends_with(fmt::format("\"{}\" would", right)));

    CHECK(parse_bag_id("").fault().kind == BagIdFault::Kind::WrongLength);
    CHECK(parse_bag_id("K7Q-2M4").fault().message ==
          "6 letters and digits; expected 9, as in K7Q-2M4-9XW, or 12 where the kitchen has a "
          "number");
    CHECK(parse_bag_id("K7Q-2M4-9XU").fault().kind == BagIdFault::Kind::NotASymbol);
    CHECK(parse_bag_id("K7Q-2M4-9XU").fault().offset == 10);
    CHECK(parse_bag_id("K7Q-2Ü4-9XC").fault().message.starts_with("U+00DC"));
    CHECK(parse_bag_id("K7Q-\xFF").fault().kind == BagIdFault::Kind::NotASymbol);
    CHECK(parse_bag_id(std::string(1'000'000, 'A')).fault().kind == BagIdFault::Kind::WrongLength);
}

TEST_CASE("an id that is taken leads to another, always the same one") {
    const BagName name{"Apple and sage pork", 2026y / 10 / 17, 1};
    std::set<std::string> taken;
    CHECK(fresh_bag_id(name, taken) == bag_id(name));
    CHECK(fresh_bag_id(name, taken) == bag_id(name, 1));
    CHECK(fresh_bag_id(name, taken) == bag_id(name, 2));
    CHECK(taken.size() == 3);
}

TEST_CASE("ten years of a community kitchen, 200 000 bags, have no id twice") {
    std::set<std::string> ids;
    int bags = 0;
    for (int day = 0; day < 1000; ++day) {
        const auto made = add_days(2026y / 1 / 1, days{day * 3 + day % 2});
        for (int dish = 0; dish < 10; ++dish) {
            const auto name = fmt::format("Dish {}", dish);
            for (int number = 1; number <= 20; ++number, ++bags) {
                ids.insert(bag_id({name, made, number}));
            }
        }
    }
    CHECK(bags == 200'000);
    CHECK(ids.size() == 200'000);
}
