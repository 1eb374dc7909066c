// What a cook is told when a print does not fit.

#include "service/print/fault_text.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::literals;

namespace {

std::string message_of(const layout::Fault& fault) {
    layout::Stock stock;
    stock.name = "a stock";
    return service::to_diagnostic(fault, {}, stock, {}).message;
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
