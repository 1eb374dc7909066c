#include "layout/areas/stack.h"

#include <algorithm>

namespace thawslip::layout {
namespace {

/// The space that stands before an entry, in leadings.
double space_before(const PreparedEntry& entry, const TextArea& area, bool is_first) {
    const bool opens = entry.role == wording::Role::Heading;
    return is_first ? 0.0 : area.space + (opens ? heading_rise : 0.0);
}

/// The space after the last entry: what its line stands in.
double space_after(const TextArea& area) {
    return area.row_rule > Length{} ? area.space : 0.0;
}

/// Keeps how far down each column is filled.
class Stacker {
public:
    Stacker(const TextArea& area, const Columns& columns)
        : area_{area}, columns_{columns}, filled_(std::max<std::size_t>(area.table.size(), 1)) {}

    StackedEntry add(const PreparedEntry& entry, double space) {
        const bool flows =
            area_.columns_flow && !entry.cells.empty() && entry.role == wording::Role::Text;
        return flows ? add_flowing(entry, space) : add_across(entry, space);
    }

    double height() const { return *std::ranges::max_element(filled_); }

private:
    /// Across all columns, below whatever is the lowest.
    StackedEntry add_across(const PreparedEntry& entry, double space) {
        StackedEntry placed;
        placed.top = height() + space;
        placed.bottom = placed.top + height_of(entry, columns_);
        placed.cells.assign(entry.cells.size(), placed.top);
        std::ranges::fill(filled_, placed.bottom);
        return placed;
    }

    StackedEntry add_flowing(const PreparedEntry& entry, double space) {
        StackedEntry placed{height() + space, 0.0};
        for (std::size_t i = 0; i < entry.cells.size(); ++i) {
            placed.cells.push_back(filled_[i] + space);
            if (says_something(entry.cells[i])) {
                filled_[i] += space + height_of_cell(entry, i, columns_);
                placed.top = std::min(placed.top, placed.cells.back());
            }
        }
        placed.bottom = height();
        return placed;
    }

    const TextArea& area_;
    const Columns& columns_;
    std::vector<double> filled_;
};

} // namespace

Stack stack(const Content& content, const TextArea& area, const Columns& columns) {
    Stack stack;
    Stacker stacker{area, columns};
    for (const auto& entry : content.entries()) {
        const bool is_first = stack.entries.empty();
        stack.entries.push_back(stacker.add(entry, space_before(entry, area, is_first)));
    }
    stack.height = stacker.height() + space_after(area);
    return stack;
}

} // namespace thawslip::layout
