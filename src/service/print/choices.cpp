#include "service/print/choices.h"

#include "base/list.h"
#include "base/nearest.h"
#include "base/system_failure.h"
#include "layout/files/layout_file.h"
#include "layout/print_size.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::service {
namespace {

/// "there is no stock called x", with the nearest name or the way to see all.
Messages no_such(std::string_view what, const std::string& name,
                 const std::vector<std::string>& names) {
    Messages messages;
    messages.error(fmt::format("there is no {} called \"{}\"", what, name),
                   {near_names(name, names)});
    return messages;
}

Outcome<layout::Layout> read_layout(std::string text, const std::string& file,
                                    const std::string& name) {
    Outcome<layout::Layout> outcome;
    Diagnostics faults;
    const auto document = toml::parse(std::move(text), file, faults);
    outcome.value = layout::read_layout(document, name, faults);
    outcome.messages.add_in_order(faults, document.text());
    return outcome;
}

Outcome<layout::StockReading> outcome_of(layout::StockReading reading) {
    Outcome<layout::StockReading> outcome;
    if (reading.stock) {
        outcome.value = std::move(reading);
    } else {
        outcome.messages.add_in_order(reading.diagnostics, reading.text);
    }
    return outcome;
}

/// The text of a file of the cook's own; nothing, and said in `messages`, where it cannot be had.
std::optional<std::string> own_text(const std::string& file, const Surroundings& around,
                                    OwnFiles& own, Messages& messages) {
    auto text = own.text_of(file, around);
    if (!text) {
        messages.add_in_order({text.fault()}, {});
        return std::nullopt;
    }
    return std::move(text).value();
}

} // namespace

std::vector<layout::Stock> shipped_stocks(const Surroundings& around) {
    auto shelf = around.stocks();
    if (has_errors(shelf.diagnostics)) {
        Messages broken;
        broken.add_in_order(shelf.diagnostics, {});
        throw SystemFailure{to_text(broken)};
    }
    return std::move(shelf.stocks);
}

Outcome<layout::StockReading> choose_stock(const std::string& name_or_file,
                                           const Surroundings& around, OwnFiles& own) {
    Outcome<layout::StockReading> none;
    if (is_file_name(name_or_file)) {
        auto text = own_text(name_or_file, around, own, none.messages);
        return text ? outcome_of(
                          layout::read_stock(*std::move(text), name_or_file, name_in(name_or_file)))
                    : none;
    }
    if (auto reading = around.stock(name_or_file)) {
        return outcome_of(*std::move(reading));
    }
    none.messages =
        no_such("stock", name_or_file, mapped(shipped_stocks(around), &layout::Stock::name));
    return none;
}

std::vector<layout::Layout> shipped_layouts(const std::vector<ShippedText>& texts) {
    std::vector<layout::Layout> layouts;
    for (const auto& shipped : texts) {
        if (shipped.layout) {
            layouts.push_back(*shipped.layout);
            continue;
        }
        auto layout = read_layout(shipped.text, shipped.file, shipped.name);
        if (!layout) {
            throw SystemFailure{to_text(layout.messages)};
        }
        layouts.push_back(std::move(*layout.value));
    }
    return layouts;
}

const layout::Layout* layout_for(wording::Kind kind, const layout::Stock& stock,
                                 const std::vector<layout::Layout>& layouts) {
    const auto cell = layout::cell_of(kind, stock);
    const double ratio = cell.width / cell.height;
    const auto height = cell.height;
    const auto found = std::ranges::find_if(layouts, [&](const layout::Layout& layout) {
        return layout.kind == kind && ratio >= layout.narrowest && ratio <= layout.widest &&
               height >= layout.lowest && height < layout.highest;
    });
    return found == layouts.end() ? nullptr : &*found;
}

Outcome<layout::Layout> choose_layout(const std::string& name_or_file,
                                      const std::vector<layout::Layout>& shipped,
                                      const Surroundings& around, OwnFiles& own) {
    Outcome<layout::Layout> outcome;
    if (is_file_name(name_or_file)) {
        auto text = own_text(name_or_file, around, own, outcome.messages);
        return text ? read_layout(*std::move(text), name_or_file, name_in(name_or_file)) : outcome;
    }
    const auto found = std::ranges::find(shipped, name_or_file, &layout::Layout::name);
    if (found == shipped.end()) {
        outcome.messages = no_such("layout", name_or_file, mapped(shipped, &layout::Layout::name));
    } else {
        outcome.value = *found;
    }
    return outcome;
}

} // namespace thawslip::service
