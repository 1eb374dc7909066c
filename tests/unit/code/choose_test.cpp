#include "code/capacity.h"
#include "code/message.h"
#include "code/symbol.h"
#include "support/random.h"
#include "unit/code/samples.h"

#include <cmath>
#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::code;
using namespace thawslip::literals;
using thawslip::test_support::Random;

namespace {

std::string capitals(std::size_t length) {
    return std::string(length, 'A');
}

Length side_with_quiet_zone(const SizedSymbol& sized) {
    return sized.module * (sized.symbol.side + 2 * quiet_zone_modules);
}

} // namespace

TEST_CASE("the chosen symbol is read back as its text") {
    const auto chosen =
        choose_symbol(texts(thawslip::test_support::squash_stew()), 44_mm, {300}, 0.4_mm);
    REQUIRE(chosen.ok());
    CHECK(chosen.value().text_index == 0);
    CHECK(read_back(chosen.value().symbol) == chosen.value().text);
}

TEST_CASE("version, level and module are chosen together") {
    struct Case {
        const char* name;
        std::size_t characters; ///< capitals: alphanumeric mode
        Length room;
        double dots_per_inch;
        Level level;
        int version;
        int dots;
    };
    const Case cases[] = {
        {"a short text has room for the highest level", 44, 36_mm, 300, Level::High, 4, 10},
        {"half a millimetre is kept before a level is raised", 220, 36_mm, 300, Level::Quartile, 10,
         6},
        {"a level is raised before modules grow beyond half a millimetre", 150, 36_mm, 300,
         Level::High, 10, 6},
        {"level L is passed over although its modules are larger", 400, 36_mm, 300, Level::Quartile,
         15, 5},
        {"level L is taken where nothing else fits", 330, 27_mm, 300, Level::Low, 9, 5},
        {"four dots of a 203 dpi printer are half a millimetre", 150, 36_mm, 203.2, Level::High, 10,
         4},
    };
    for (const Case& each : cases) {
        CAPTURE(each.name);
        const auto chosen =
            choose_symbol({capitals(each.characters)}, each.room, {each.dots_per_inch}, 0.4_mm);
        REQUIRE(chosen.ok());
        CHECK(chosen.value().symbol.level == each.level);
        CHECK(chosen.value().symbol.version == each.version);
        CHECK(chosen.value().dots_per_module == each.dots);
    }
}

TEST_CASE("modules are whole dots, never under the least, and the quiet zone is inside the room") {
    thawslip::test_support::Random random{15};
    for (int i = 0; i < 400; ++i) {
        const Length room = Length::millimetres(random.between(8, 60));
        const Length least = Length::millimetres(random.between(0.2, 0.6));
        const double dpi = std::array{203.2, 300.0, 600.0}.at(random.below(3));
        const std::string text = capitals(1 + random.below(400));
        const auto chosen = choose_symbol({text, "A"}, room, {dpi}, least);
        if (!chosen) {
            CHECK(chosen.fault().needed > room);
            continue;
        }
        const SizedSymbol& sized = chosen.value();
        CHECK(sized.module.in_inches() * dpi == doctest::Approx(sized.dots_per_module));
        CHECK(sized.module.in_points() >= least.in_points() - 1e-9);
        CHECK(side_with_quiet_zone(sized).in_points() <= room.in_points() + 1e-4);
        CHECK(sized.symbol.side == side_of(sized.symbol.version));
        CHECK(sized.symbol.dark.size() == std::size_t{sized.symbol.side} * sized.symbol.side);
    }
}

TEST_CASE("what is said to be needed is just enough") {
    const auto refused = choose_symbol({capitals(300)}, 10_mm, {300}, 0.4_mm);
    REQUIRE(!refused.ok());
    CHECK(refused.fault().available == 10_mm);
    const Length needed = refused.fault().needed;
    CHECK(choose_symbol({capitals(300)}, needed, {300}, 0.4_mm).ok());
    CHECK(!choose_symbol({capitals(300)}, needed - 0.01_mm, {300}, 0.4_mm).ok());
}

TEST_CASE("a text is carried as it should be from its durable side on, and below it gives way") {
    Random random{17};
    for (int i = 0; i < 60; ++i) {
        const std::vector<std::string> forms = {capitals(1 + random.below(900)), "STEW", "S"};
        const Durable durable{random.chance(2) ? Level::Medium : Level::Quartile,
                              random.chance(2) ? 0.5_mm : 0.62_mm};
        const PrinterDots printer{random.chance(2) ? 300.0 : 203.2};
        const auto side = durable_side(forms[0], printer, 0.4_mm, durable);
        REQUIRE(side.has_value());
        CHECK(choose_symbol(forms, *side, printer, 0.4_mm, durable).value().text_index == 0);
        const auto less = choose_symbol(forms, *side - 0.01_mm, printer, 0.4_mm, durable);
        CHECK((forms[0].size() < 5 || !less.ok() || less.value().text_index > 0 ||
               less.value().symbol.level < durable.level ||
               less.value().module < durable.module - 0.001_mm));
    }
    CHECK_FALSE(durable_side(capitals(5000), {300}, 0.4_mm).has_value());
}

TEST_CASE("words leave before a code is made fragile") {
    const std::vector<std::string> forms = {capitals(400), capitals(150), "STEW"};
    const auto chosen = choose_symbol(forms, 30_mm, {300}, 0.4_mm).value();
    CHECK(chosen.text_index == 1); // the first would fit at level M, in smaller modules
    CHECK(chosen.symbol.level != Level::Low);
    CHECK(chosen.module >= 0.5_mm);
    // Where no text is durable, the level counts: what only names the bag comes last above L.
    CHECK(choose_symbol(forms, 22_mm, {300}, 0.4_mm).value().text_index == 1);
    const auto low = choose_symbol(forms, 20_mm, {300}, 0.4_mm).value(); // 150 capitals fit at L
    CHECK(low.text_index == 2);
    CHECK(low.symbol.level != Level::Low);
    CHECK(choose_symbol({forms[1]}, 20_mm, {300}, 0.4_mm).value().symbol.level == Level::Low);
}

TEST_CASE("the fullest text that fits is taken") {
    const std::vector<std::string> forms = {capitals(1200), capitals(300), capitals(30)};
    CHECK(choose_symbol(forms, 60_mm, {300}, 0.4_mm).value().text_index == 0);
    CHECK(choose_symbol(forms, 36_mm, {300}, 0.4_mm).value().text_index == 1);
    CHECK(choose_symbol(forms, 16_mm, {300}, 0.4_mm).value().text_index == 2);
    CHECK(choose_symbol(forms, 36_mm, {300}, 0.4_mm).value().text == forms[1]);
}

TEST_CASE("a text longer than any symbol carries gives way to a shorter one") {
    const std::vector<std::string> forms = {capitals(5000), "STEW"};
    CHECK(choose_symbol(forms, 36_mm, {300}, 0.4_mm).value().text_index == 1);
    CHECK(!choose_symbol({capitals(5000)}, 900_mm, {300}, 0.4_mm).ok());
}

TEST_CASE("without a text, or without room, nothing is chosen") {
    CHECK(!choose_symbol({}, 36_mm, {300}, 0.4_mm).ok());
    CHECK(!choose_symbol({"STEW"}, 0_mm, {300}, 0.4_mm).ok());
    CHECK(!choose_symbol({"STEW"}, -5_mm, {300}, 0.4_mm).ok());
}

TEST_CASE("what a code shall be made of is wanted before words") {
    const std::vector<std::string> forms = {capitals(360), capitals(120), capitals(60), "STEW"};
    const auto text = [&](Durable durable) {
        const auto chosen = choose_symbol(forms, 34_mm, {300}, 0.4_mm, durable);
        REQUIRE(chosen.ok());
        CHECK(chosen.value().symbol.level >= durable.level);
        CHECK(chosen.value().module >= durable.module - 0.001_mm);
        return chosen.value().text_index;
    };
    CHECK(text({Level::Low, 0.4_mm}) == 0);
    CHECK(text({Level::Medium, 0.5_mm}) == 1);
    CHECK(text({Level::High, 0.6_mm}) == 2);
}
