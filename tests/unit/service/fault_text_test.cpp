// What a cook is told when a print does not fit.

#include "service/print/fault_text.h"

#include <doctest/doctest.h>

namespace fault_text_test {

using namespace thawslip;
using namespace thawslip::literals;
using service::TypeSize;
using wording::Kind;

namespace {

Diagnostic diagnostic_of(const layout::Fault& fault, Kind kind = Kind::BagLabel,
                         const std::vector<std::string>& stocks = {},
                         TypeSize type = TypeSize::Usual) {
    layout::Stock stock;
    stock.name = "a stock";
    wording::Print print;
    print.kind = kind;
    print.dish = "Stew";
    print.where = KeyPath{"package"};
    return service::to_diagnostic(fault, print, stock, stocks, type);
}

std::string message_of(const layout::Fault& fault) {
    return diagnostic_of(fault).message;
}

const layout::Fault too_high{0, layout::Refusal{"Stew", "", "notes", 1_mm, {}}};

std::string unsettable(typeset::UnsettableCharacter::Reason reason) {
    return message_of({0, layout::ContentFault{"note", {}, {U'\u2603', reason}}});
}

bool says(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

} // namespace

TEST_CASE("a lack of less than a tenth of a millimetre is a lack, not \"0.0 mm\"") {
    const auto words = message_of({0, layout::Refusal{"Stew", "", "notes", 0.01_mm, {}}});
    CHECK(says(words, ": 0.1 mm too much at the smallest type"));
    const code::TooSmall small{.available = 19.96_mm, .needed = 20.04_mm};
    const auto code = message_of({0, layout::CodeRefusal{"Stew", "", small, {}}});
    CHECK(says(code, "it needs 20.1 mm, there are 19.9 mm"));
}

TEST_CASE("each kind of print is called what a cook calls it") {
    for (const auto& [kind, name] : {std::pair{Kind::BagLabel, "label"},
                                     {Kind::FinishingCard, "finishing card"},
                                     {Kind::CookDayCard, "cook-day card"},
                                     {Kind::DoorList, "door list"},
                                     {Kind::DaySheet, "day sheet"},
                                     {Kind::PlanSheet, "plan sheet"}}) {
        CAPTURE(std::string{name});
        CHECK(diagnostic_of(too_high, kind)
                  .message.starts_with(std::string{"the "} + name +
                                       " of \"Stew\" does not fit a stock: 1.0 mm too much"));
    }
}

TEST_CASE(
    "what would do instead is a stock that takes it, a larger one for large print, or words") {
    using Hints = std::vector<std::string>;
    const Hints stocks{"wide", "tall"};
    CHECK(diagnostic_of(too_high).hints ==
          Hints{"shorten the words: no shipped stock would take them"});
    CHECK(diagnostic_of(too_high, Kind::BagLabel, stocks).hints ==
          Hints{"shorten the words, or print on \"wide\" or \"tall\""});
    CHECK(diagnostic_of(too_high, Kind::BagLabel, stocks, TypeSize::Large).hints ==
          Hints{"large print takes a larger stock: print on \"wide\" or \"tall\"",
                "or print without large_print"});
    CHECK(diagnostic_of(too_high, Kind::BagLabel, {}, TypeSize::Large).hints ==
          Hints{"shorten the words: no shipped stock would take them"});
}

TEST_CASE("a character that cannot be printed is named, and why, where it stands") {
    using Reason = typeset::UnsettableCharacter::Reason;
    CHECK(says(unsettable(Reason::NoGlyph), "in note of \"Stew\" cannot be printed: none of the "
                                            "faces has it"));
    CHECK(says(unsettable(Reason::Script), ": right-to-left and joined scripts are not set yet"));
    CHECK(says(unsettable(Reason::Control), ": it is a control character"));
    const auto at = [](const KeyPath& where) {
        return diagnostic_of({0, layout::ContentFault{"note", where, {}}}).key;
    };
    CHECK(at(KeyPath{"note"}) == KeyPath{"note"});
    CHECK(at({}) == KeyPath{"package"}); // where the print is from, if no better place is known
}

TEST_CASE("a code that nobody can read back is never the cook's fault") {
    const auto code = diagnostic_of({0, layout::UnreadableCode{"Stew", "", {}}});
    CHECK(code.severity == Severity::Error);
    CHECK(code.message == "the code of \"Stew\" was drawn but cannot be read back");
    CHECK(says(code.hints.at(0), "a fault of thawslip, not yours"));
}

TEST_CASE("a layout without a place for what may not be left out is told where it is drawn") {
    const auto fault = diagnostic_of(
        {0, layout::Unplaced{{"dish", "limit"}, {"mine.toml", 7, 1, 3}}}, Kind::CookDayCard);
    CHECK(fault.where.file == "mine.toml");
    CHECK(fault.where.line == 7);
    CHECK(fault.message == "this layout has no place for \"dish\" or \"limit\", which no "
                           "cook-day card may lack");
    CHECK(fault.hints ==
          std::vector<std::string>{"draw an area for it, with words = [\"dish\", \"limit\"]"});
}

} // namespace fault_text_test
