#include "layout/files/printer_settings.h"

#include "layout/files/sheet_keys.h"
#include "layout/sheets/calibration.h"
#include "layout/sheets/ruler.h"
#include "layout/sheets/ruler_text.h"
#include "toml/file_table.h"
#include "toml/reader.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/format.h>
#include <optional>

namespace thawslip::layout {
namespace {

const std::array<toml::Key, 4> cross_keys{
    toml::Key{"cross_a", "[\"30.5 mm\", \"29.5 mm\"]"},
    {"cross_b", "[\"180.5 mm\", \"29.5 mm\"]"},
    {"cross_c", "[\"30.5 mm\", \"264.5 mm\"]"},
    {"cross_d", "[\"180.5 mm\", \"264.5 mm\"]"},
};
const toml::Key unprinted_key{"unprinted", "[\"4 mm\", \"4 mm\", \"12 mm\", \"4 mm\"]"};

/// More than this is no margin of a printer but a slip.
constexpr Length widest_margin = Length::millimetres(50);

Correction read_correction(toml::Table& table, const std::optional<Size>& paper) {
    const auto errors = table.reader().errors();
    std::array<std::optional<Size>, 4> printed;
    for (std::size_t i = 0; i < printed.size(); ++i) {
        printed[i] = read_size(table, cross_keys[i]);
    }
    if (!paper || table.reader().errors() != errors) {
        return {};
    }
    std::vector<CrossReading> readings;
    const auto wanted = ruler_crosses(*paper);
    for (std::size_t i = 0; i < printed.size(); ++i) {
        if (printed[i]) {
            readings.push_back({wanted[i], {printed[i]->width, printed[i]->height}});
        }
    }
    if (readings.empty()) {
        return {};
    }
    const auto correction = correction_from(readings);
    if (!correction) {
        table.reader().error(table.path(), in_words(correction.fault()));
        return {};
    }
    return correction.value();
}

Insets read_unprinted(toml::Table& table) {
    const auto sides = read_lengths(table, unprinted_key, 4, "top, right, bottom, left");
    if (!sides) {
        return usual_insets;
    }
    for (std::size_t i = 0; i < sides->size(); ++i) {
        const Length side = (*sides)[i];
        if (!(side >= Length{} && side <= widest_margin)) {
            table.reader().error(table.path_of(unprinted_key).index(i),
                                 fmt::format("the printer leaves {} free, expected 0 to {}",
                                             ruler_text(side, Unit::Millimetre),
                                             ruler_text(widest_margin, Unit::Millimetre)));
            return usual_insets;
        }
    }
    return {(*sides)[0], (*sides)[1], (*sides)[2], (*sides)[3]};
}

std::optional<Printer> read_printer(toml::Table& table) {
    if (!table.has(paper_key) && !table.has(sheet_key)) {
        table.require(paper_key);
    }
    const auto paper = read_paper(table);
    const auto correction = read_correction(table, paper);
    const auto unprinted = read_unprinted(table);
    table.refuse_unknown();
    return paper ? std::optional{Printer{*paper, correction, unprinted}} : std::nullopt;
}

bool is_same_paper(Size a, Size b) {
    constexpr double slack = 0.1; // mm: 4 x 6 in may be written as 101.6 x 152.4 mm
    return std::abs((a.width - b.width).in_millimetres()) < slack &&
           std::abs((a.height - b.height).in_millimetres()) < slack;
}

const Printer* find(std::span<const Printer> printers, Size paper) {
    const auto found = std::ranges::find_if(
        printers, [&](const Printer& one) { return is_same_paper(one.paper, paper); });
    return found == printers.end() ? nullptr : &*found;
}

} // namespace

std::vector<Printer> read_printers(toml::Table& settings) {
    constexpr std::size_t most_papers = 20;
    std::vector<Printer> printers;
    for (auto& table : settings.tables("printer", most_papers)) {
        const auto printer = read_printer(table);
        if (!printer) {
            continue;
        }
        if (find(printers, printer->paper) != nullptr) {
            table.reader().error(table.path(),
                                 fmt::format("paper of {} is measured twice",
                                             ruler_text(printer->paper, unit_of(printer->paper))),
                                 {"leave out the older readings"});
            continue;
        }
        printers.push_back(*printer);
    }
    return printers;
}

Printer printer_for(std::span<const Printer> printers, Size paper) {
    const Printer* printer = find(printers, paper);
    return printer != nullptr ? *printer : Printer{paper, {}, usual_insets};
}

} // namespace thawslip::layout
