// Edits of a text that may be anything: they are refused, or change what they are to change.

#include "fuzz/target.h"
#include "kitchen/bag_id.h"
#include "support/edits.h"

using namespace thawslip;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string text{fuzz::text_of(data, size)};
    if (text.starts_with("\xEF\xBB\xBF")) {
        return 0; // whoever reads a file takes the mark off
    }
    Diagnostics faults;
    const auto document = toml::parse(text, "day.toml", faults);
    test_support::Random random{kitchen::fnv_1a(text)};
    for (int i = 0; i < 4; ++i) {
        const auto edit = test_support::random_edit(document.root(), random);
        const auto result = toml::edit(text, {edit});
        fuzz::hold(!result || document.has_values(), "a lost text is not edited");
        fuzz::hold(!result || test_support::fault_of(text, edit, result.value()).empty(),
                   "an edit changes what it is to change and nothing else");
    }
    return 0;
}
