#include "typeset/kitchen_breaks.h"
#include "typeset/paragraph_text.h"

#include <doctest/doctest.h>

using namespace thawslip::typeset;

namespace {

/// The text with "|" wherever a line may freely end, and "~" where it had better not.
std::string parted(const std::string& text) {
    const auto read = read_text({{text, Weight::Regular}});
    REQUIRE(read);
    std::string marked = read.value().text;
    for (auto b = read.value().breaks.rbegin(); b != read.value().breaks.rend(); ++b) {
        if (b->kind == BreakKind::Free || b->kind == BreakKind::Unwilling) {
            marked.insert(b->at, b->kind == BreakKind::Free ? "|" : "~");
        }
    }
    return marked;
}

} // namespace

TEST_CASE("every rule of the kitchen holds its own examples together") {
    for (const auto& rule : kitchen_rules()) {
        CHECK_FALSE(rule.examples.empty());
        for (const auto example : rule.examples) {
            CAPTURE(std::string{rule.reason});
            CHECK(parted(std::string{example}) == example);
            CHECK(parted("stew (" + std::string{example} + "), then") ==
                  "stew |(" + std::string{example} + "), |then");
        }
    }
}

TEST_CASE("lines end where a cook would end them") {
    const char* const cases[] = {
        "Cook |on |low |for |7–9 h",
        "Add |1 1/2 tsp |salt |and |2 × 400 g |beans",
        "Heat |to |180 °C / |350°F",
        "1 l ~(4¼ cups) |vegetable |stock",
        "Made |17 Oct 2026, |bag 2 of 3",
        "100 % |rye, |2.2 kg |in |all",
        "binnen |2 Tagen |garen",
        "danach |3 Tage |haltbar, |4¼ Tassen |Brühe",
        "cocinar |en |3 días, |4¼ tazas |de |caldo",
        "slow-|cooker |stew",
        "thaw |20–30 min, |then |stir",
        "20 - 30 min",
        "at |180, |C |is |no |scale",
        "Simmer |1 h 30 min |or |more",
        "2 heaping tbsp |of |thyme",
        "−18 °C",
        "200 ml ~(¾ cup ~1½ tbsp) |cream",
        "67 h ~(2 days ~19 h)",
        "1 kg ~(2 lb 3 oz)",
        "2 ~limes, |at |180, |then",
        "Beutel 1 von 46",
        "until |the |core |has |74 °C",
        "50–60 % |full",
        "add |⅓ cup |of |oats, |⅞ tsp |salt |and |¾ l |milk",
    };
    for (const std::string expected : cases) {
        auto text = expected;
        std::erase_if(text, [](char c) { return c == '|' || c == '~'; });
        CHECK(parted(text) == expected);
    }
}

TEST_CASE("a dash between figures ends no line, a dash between words may") {
    for (const std::string held :
         {"20–30", "180°–200°", "50%–60%", "½-1", "2-3", "4—5", "1/2-3/4", "¼–½", "20–30–40"}) {
        CAPTURE(held);
        const bool is_number = held.find('%') == std::string::npos;
        CHECK(parted("bake " + held + " then") ==
              "bake |" + held + (is_number ? " ~then" : " |then"));
        CHECK(parted(held) == held);
    }
    CHECK(parted("half–done") == "half–|done");
    CHECK(parted("x–y is 2–x") == "x–|y |is |2–|x");
}

TEST_CASE("marks at either side of a number part it from what follows") {
    CHECK(parted("add 180. C of") == "add |180. |C |of");
    CHECK(parted("add 2 (cups") == "add |2 ~(cups");
    CHECK(parted("2 heaping (tbsp") == "2 ~heaping |(tbsp");
    CHECK(parted("2, heaping tbsp") == "2, |heaping |tbsp");
    CHECK(parted("1 kg, 2 lb") == "1 kg, |2 lb");
    CHECK(parted("2 kg 3 bags") == "2 kg ~3 ~bags");
    CHECK(parted("2, kg 3 bags") == "2, |kg |3 ~bags");
}

TEST_CASE("no line starts with a closing mark or a mark that separates") {
    CHECK(parted("« plum »") == "« plum »");
    CHECK(parted("plum “ginger ” jam") == "plum |“ginger ” |jam");
    CHECK(parted("stew ; soup") == "stew ; |soup");
    CHECK(parted("Serves 6 · use soon") == "Serves 6 · |use |soon");
    CHECK(parted("stew – thaw first") == "stew – |thaw |first");
    CHECK(parted("stock ( 1 l )") == "stock |( 1 l )");
    CHECK(parted("plum }jam") == "plum }|jam"); // behind the mark it may
    CHECK(parted("plum !jam") == "plum !|jam");
}

TEST_CASE("what is held together, a soft hyphen and a no-break space are places for need") {
    const auto read = read_text({{"7–9 h sal\u00ADsify 2\u00A0l", Weight::Regular}});
    REQUIRE(read);
    CHECK(read.value().text == "7–9 h salsify 2\u00A0l");
    const std::vector<BreakOpportunity> expected = {
        {4, BreakKind::Held},        {6, BreakKind::Held},  {8, BreakKind::Free},
        {11, BreakKind::SoftHyphen}, {16, BreakKind::Free}, {19, BreakKind::Held},
    };
    CHECK(read.value().breaks == expected);
}
