// A day's description, from its text to frames: read, planned, worded, fitted, drawn.

#include "code/message.h"
#include "fuzz/sheets.h"
#include "fuzz/told.h"
#include "intake/day_file.h"
#include "intake/storage_file.h"
#include "kitchen/bag_id.h"

#include <algorithm>

using namespace thawslip;

namespace {

const std::vector<std::string> languages = {"en", "es", "de"};

void hold_codes(const kitchen::Plan& plan) {
    for (const auto& planned : plan.packages) {
        fuzz::hold(!planned.bags.empty(), "every package has a bag");
        for (const auto& text : code::texts(code::message_for(planned, planned.bags.front()))) {
            fuzz::hold(code::parse(text).ok(), "what a code carries can be read back");
        }
    }
}

layout::Layouts layouts_for(const layout::Stock& stock, std::vector<wording::Kind> kinds) {
    layout::Layouts layouts;
    for (const auto kind : kinds) {
        if (const auto* layout = fuzz::layout_for(kind, stock)) {
            layouts.emplace(kind, *layout);
        }
    }
    return layouts;
}

void hold_prints(const kitchen::Plan& plan, const std::string& language) {
    static const auto labels = fuzz::shipped_stock("letter-2x5-4x2in");
    static const auto cards = fuzz::shipped_stock("a4-cards-a6-cut");
    static const auto label_layouts = layouts_for(labels, {wording::Kind::BagLabel});
    static const auto card_layouts =
        layouts_for(cards, {wording::Kind::CookDayCard, wording::Kind::FinishingCard});
    const auto prints = fuzz::prints_of(plan, language);
    fuzz::hold_drawn(prints, label_layouts, labels);
    fuzz::hold_drawn(prints, card_layouts, cards);
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const auto table = intake::built_in_storage();
    const std::string text{fuzz::text_of(data, size)};
    Diagnostics faults;
    const auto document = toml::parse(text, "day.toml", faults);
    const auto reading = intake::read_day(document, faults);
    Diagnostics refusals;
    const auto plan = kitchen::plan(reading.day, table, refusals);
    intake::add_refusals(document, std::move(refusals), faults);
    fuzz::hold_told(faults, document.text());
    fuzz::hold(document.well_formed() || has_errors(faults), "what is no TOML is refused");
    fuzz::hold(std::ranges::all_of(faults,
                                   [&text](const Diagnostic& fault) {
                                       return fault.where.line > 0 ||
                                              fault.severity != Severity::Error ||
                                              text.size() > toml::Limits{}.bytes;
                                   }),
               "every mistake has a place");
    if (reading.whole && !has_errors(faults)) {
        hold_codes(plan);
        hold_prints(plan, languages[kitchen::fnv_1a(text) % languages.size()]);
    }
    return 0;
}
