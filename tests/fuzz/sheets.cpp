#include "fuzz/sheets.h"

#include "code/message.h"
#include "fuzz/target.h"
#include "intake/day_file.h"
#include "intake/storage_file.h"
#include "layout/files/layout_file.h"
#include "layout/files/stock_file.h"
#include "render/dump.h"
#include "support/command.h"
#include "support/shipped_fonts.h"
#include "wording/prints.h"

#include <algorithm>
#include <filesystem>

namespace thawslip::fuzz {
namespace {

namespace fs = std::filesystem;

const std::string source = THAWSLIP_SOURCE_DIR;

std::vector<layout::Layout> shipped_layouts() {
    std::vector<layout::Layout> layouts;
    for (const char* folder : {"label", "card"}) {
        for (const auto& entry : fs::directory_iterator{source + "/layouts/" + folder}) {
            const auto& path = entry.path();
            Diagnostics faults;
            const auto document = toml::parse(test_support::read_file(path), path.string(), faults);
            auto layout = layout::read_layout(document, path.stem().string(), faults);
            hold(layout.has_value(), "every shipped layout can be read");
            layouts.push_back(std::move(*layout));
        }
    }
    std::ranges::sort(layouts, {}, &layout::Layout::name);
    return layouts;
}

} // namespace

const typeset::FontSet& fonts() {
    static const auto set = test_support::shipped_fonts();
    return set;
}

std::string shipped_text(const std::string& path) {
    return test_support::read_file(source + "/" + path);
}

const layout::Layout* layout_for(wording::Kind kind, const layout::Stock& stock) {
    static const auto layouts = shipped_layouts();
    const double ratio = stock.cell.width / stock.cell.height;
    const auto found = std::ranges::find_if(layouts, [&](const layout::Layout& each) {
        return each.kind == kind && ratio >= each.narrowest && ratio <= each.widest &&
               stock.cell.height >= each.lowest && stock.cell.height < each.highest;
    });
    return found == layouts.end() ? nullptr : &*found;
}

layout::Stock shipped_stock(const std::string& name) {
    auto reading = layout::load_stock(source + "/layouts/stock/" + name + ".toml");
    hold(reading.stock.has_value(), "every shipped stock can be read");
    return std::move(*reading.stock);
}

std::vector<Said> prints_of(const kitchen::Plan& plan, const std::string& language) {
    constexpr std::size_t most_packages = 2; // more of the same finds nothing new, slowly
    const auto style = wording::style_for(wording::shipped_language(language), {});
    std::vector<Said> prints;
    for (std::size_t i = 0; i < std::min(plan.packages.size(), most_packages); ++i) {
        const auto& planned = plan.packages[i];
        const auto& bag = planned.bags.front();
        const auto texts = code::texts(code::message_for(planned, bag));
        prints.push_back({wording::bag_label(plan, planned, bag, style), texts});
        prints.push_back({wording::cook_day_card(plan, planned, style), texts});
        if (!planned.finish.empty()) {
            prints.push_back({wording::finishing_card(plan, planned, bag, style), {}});
        }
    }
    return prints;
}

const std::vector<Said>& sample_prints() {
    static const auto prints = [] {
        Diagnostics faults;
        const auto document =
            toml::parse(shipped_text("samples/orchard-day.toml"), "orchard-day.toml", faults);
        const auto reading = intake::read_day(document, faults);
        const auto plan = kitchen::plan(reading.day, intake::built_in_storage(), faults);
        hold(!has_errors(faults), "the sample day has no mistakes");
        return prints_of(plan, "en");
    }();
    return prints;
}

void hold_drawn(const std::vector<Said>& prints, const layout::Layouts& layouts,
                const layout::Stock& stock) {
    std::vector<Said> drawn;
    std::ranges::copy_if(prints, std::back_inserter(drawn), [&layouts](const Said& said) {
        return layouts.contains(said.print.kind);
    });
    const layout::Source wholes{drawn.size(), [&drawn](std::size_t i) { return drawn[i].print; },
                                [&drawn](std::size_t i) { return drawn[i].code_texts; }};
    layout::Medium medium;
    medium.stock = stock;
    const auto fitting = layout::fit(wholes, layouts, medium, fonts());
    if (!fitting) {
        hold(!fitting.fault().empty(), "a refusal says why");
        return;
    }
    for (int sheet = 0; sheet < fitting.value().sheets; ++sheet) {
        const auto frame = layout::draw_sheet(fitting.value(), sheet, layouts, medium, fonts());
        const auto text = render::dump(frame, fonts());
        hold(text.find("nan") == std::string::npos && text.find("inf ") == std::string::npos,
             "everything drawn has a place and a size");
    }
}

} // namespace thawslip::fuzz
