#include "layout/printer_settings.h"

#include "layout/calibration.h"
#include "layout/measure.h"
#include "layout/ruler.h"
#include "layout/sheet_keys.h"
#include "toml/reader.h"
#include "toml/table.h"

#include <array>
#include <fmt/format.h>

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

Correction read_correction(toml::Table& table) {
    const auto errors = table.reader().errors();
    const auto page = read_paper(table);
    std::array<std::optional<Size>, 4> printed;
    bool any = false;
    for (std::size_t i = 0; i < printed.size(); ++i) {
        printed[i] = read_size(table, cross_keys[i]);
        any = any || printed[i];
    }
    if (any && !table.has(paper_key) && !table.has(sheet_key)) {
        table.require(paper_key);
    }
    if (!any || !page || table.reader().errors() != errors) {
        return {};
    }
    std::vector<CrossReading> readings;
    const auto wanted = ruler_crosses(*page);
    for (std::size_t i = 0; i < printed.size(); ++i) {
        if (printed[i]) {
            readings.push_back({wanted[i], {printed[i]->width, printed[i]->height}});
        }
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
                                             measured(side, Unit::Millimetre),
                                             measured(widest_margin, Unit::Millimetre)));
            return usual_insets;
        }
    }
    return {(*sides)[0], (*sides)[1], (*sides)[2], (*sides)[3]};
}

} // namespace

Printer read_printer(toml::Table& table) {
    Printer printer{read_correction(table), read_unprinted(table)};
    table.refuse_unknown();
    return printer;
}

} // namespace thawslip::layout
