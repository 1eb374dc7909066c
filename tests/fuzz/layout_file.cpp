// A layout file, from its text to the sample day's prints drawn by it.

#include "layout/files/layout_file.h"

#include "fuzz/sheets.h"
#include "fuzz/told.h"

#include <algorithm>

using namespace thawslip;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    Diagnostics faults;
    const auto document =
        toml::parse(std::string{fuzz::text_of(data, size)}, "layout.toml", faults);
    const auto layout = layout::read_layout(document, "layout", faults);
    fuzz::hold_told(faults, document.text());
    fuzz::hold(layout.has_value() != has_errors(faults), "a layout, or mistakes, never both");
    if (layout) {
        static const auto labels = fuzz::shipped_stock("letter-2x5-4x2in");
        static const auto cards = fuzz::shipped_stock("a4-cards-a6-cut");
        const bool label = layout->kind == wording::Kind::BagLabel;
        fuzz::hold_drawn(fuzz::sample_prints(), {{layout->kind, *layout}}, label ? labels : cards);
    }
    return 0;
}
