#include "layout/areas/stack.h"

#include <algorithm>
#include <optional>
#include <utility>

namespace thawslip::layout {
namespace {

/// Whether an entry is the first of a moment: its label heads those that follow without one.
bool opens_group(const PreparedEntry& entry, const TextArea& area) {
    const bool in_column =
        area.labels == LabelPlace::Column && entry.marker == wording::Marker::TickBox;
    return entry.label && entry.cells.empty() && (area.labels == LabelPlace::Rail || in_column);
}

/// The space that stands before an entry, in leadings.
double space_before(const PreparedEntry& entry, const TextArea& area, bool is_first) {
    switch (is_first ? wording::Role::Text : entry.role) {
    case wording::Role::Heading: return area.space + area.heading_space;
    case wording::Role::ColumnHeads: return area.space + heads_rise;
    case wording::Role::Text: break;
    }
    return is_first ? 0.0 : area.space + (opens_group(entry, area) ? group_rise : 0.0);
}

/// The space that a heading's line stands in.
double drop_below(const PreparedEntry& entry, const TextArea& area) {
    const bool ruled = entry.role == wording::Role::Heading && area.heading_rule > Length{};
    return ruled ? heading_drop : 0.0;
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

    StackedEntry add(const PreparedEntry& entry, double space, bool opens) {
        const bool flows = area_.columns_flow && !entry.cells.empty() && entry.below.empty() &&
                           entry.role == wording::Role::Text;
        return flows ? add_flowing(entry, space) : add_across(entry, space, opens);
    }

    double height() const { return *std::ranges::max_element(filled_); }

private:
    /// Across all columns, below whatever is the lowest; beside the label of what is before it
    /// where it has none itself.
    StackedEntry add_across(const PreparedEntry& entry, double space, bool opens) {
        const bool is_beside = entry.cells.empty() && entry.role != wording::Role::Heading &&
                               (!entry.label || entry.label_above);
        StackedEntry placed;
        placed.opens = opens;
        placed.top = (is_beside ? words_end_ : height()) + space;
        placed.bottom = std::max(height(), placed.top + height_of(entry, columns_, opens) +
                                               drop_below(entry, area_));
        placed.cells.assign(entry.cells.size(), placed.top);
        words_end_ = placed.top + words_height_of(entry, columns_) + drop_below(entry, area_);
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
        placed.bottom = words_end_ = height();
        return placed;
    }

    const TextArea& area_;
    const Columns& columns_;
    std::vector<double> filled_;
    double words_end_ = 0.0; ///< where what was set last ends, but for a label in its column
};

Stack in_one_strip(const Content& content, const TextArea& area, const Columns& columns) {
    Stack stack;
    Stacker stacker{area, columns};
    for (const auto& entry : content.entries()) {
        const bool is_first = stack.entries.empty();
        stack.entries.push_back(stacker.add(entry, space_before(entry, area, is_first), is_first));
    }
    stack.height = stacker.height() + space_after(area);
    return stack;
}

/// Pours entries into strips of one height.
class Strips {
public:
    Strips(const Content& content, const TextArea& area, const Columns& columns)
        : entries_{content.entries()}, area_{area}, columns_{columns} {
        for (const auto& entry : entries_) {
            heights_.push_back(height_of(entry, columns, false) + drop_below(entry, area));
        }
    }

    Stack even() const {
        constexpr double much_less_even = 1.15;
        auto anywhere = even(Parts::Anywhere);
        auto at_heads = even(Parts::AtHeads);
        return at_heads.height <= anywhere.height * much_less_even ? at_heads : anywhere;
    }

private:
    static constexpr int halvings = 24; // to a millionth of the whole
    static constexpr double hair = 1e-6;

    /// Where a strip may end.
    enum class Parts { Anywhere, AtHeads };

    Stack even(Parts parts) const {
        double high = height_in_one();
        double low = high / columns_.strips - hair;
        for (int i = 0; i < halvings; ++i) {
            const double middle = (low + high) / 2;
            (pour(middle, parts) ? high : low) = middle;
        }
        return *pour(high, parts);
    }

    bool may_part_before(std::size_t i, Parts parts) const {
        const auto role = entries_[i].role;
        const bool in_rows = role == wording::Role::Text && parts == Parts::Anywhere;
        const bool heads = role == wording::Role::Heading ||
                           (!area_.keep_whole && (role == wording::Role::ColumnHeads || in_rows));
        return entries_[i - 1].role == wording::Role::Text && heads;
    }

    std::size_t end_of_chunk(std::size_t i, Parts parts) const {
        do {
            ++i;
        } while (i < entries_.size() && !may_part_before(i, parts));
        return i;
    }

    /// What heads an entry, the widest head first: of a row the head of its columns and the heading
    /// above that, of such a head its heading.
    std::vector<std::size_t> heads_of(std::size_t i) const {
        std::vector<std::size_t> heads;
        auto role = entries_[i].role;
        for (auto at = i; role != wording::Role::Heading && at-- > 0;) {
            const bool is_wider = entries_[at].role == wording::Role::Heading ||
                                  (entries_[at].role != role && role == wording::Role::Text);
            if (is_wider) {
                role = entries_[at].role;
                heads.insert(heads.begin(), at);
            }
        }
        return heads;
    }

    StackedEntry placed(std::size_t i, double bottom_above, int strip, bool opens) const {
        StackedEntry entry;
        entry.strip = strip;
        entry.opens = opens;
        auto bottom = bottom_above;
        bool is_first = opens;
        const auto place = [&](std::size_t at) {
            return bottom + space_before(entries_[at], area_, std::exchange(is_first, false));
        };
        for (const auto head : opens ? heads_of(i) : std::vector<std::size_t>{}) {
            const auto top = place(head);
            bottom = top + height_of(said_again(entries_[head]), columns_, false) +
                     drop_below(entries_[head], area_);
            entry.heads.push_back({head, top, bottom});
        }
        entry.top = place(i);
        entry.bottom =
            entry.top + (opens ? height_of(entries_[i], columns_) + drop_below(entries_[i], area_)
                               : heights_[i]);
        entry.cells.assign(entries_[i].cells.size(), entry.top);
        return entry;
    }

    /// Where entries from `first` to `end` would end below `above`.
    double bottom_of(std::size_t first, std::size_t end, double above, bool opens) const {
        for (auto i = first; i < end; ++i) {
            above = placed(i, above, 0, opens && i == first).bottom;
        }
        return above;
    }

    double height_in_one() const { return bottom_of(0, entries_.size(), 0.0, true); }

    /// The entries in strips that are no higher than `limit`; nothing where there are too few.
    std::optional<Stack> pour(double limit, Parts parts) const {
        Stack stack;
        int strip = 0;
        double bottom = 0.0;
        bool opens = true;
        for (std::size_t i = 0; i < entries_.size();) {
            const auto end = end_of_chunk(i, parts);
            if (!opens && bottom_of(i, end, bottom, false) > limit) {
                ++strip;
                bottom = 0.0;
                opens = true;
            }
            for (; i < end; ++i, opens = false) {
                stack.entries.push_back(placed(i, bottom, strip, opens));
                bottom = stack.entries.back().bottom;
            }
            if (bottom > limit || strip >= columns_.strips) {
                return std::nullopt;
            }
            stack.height = std::max(stack.height, bottom + space_after(area_));
        }
        return stack;
    }

    const std::vector<PreparedEntry>& entries_;
    const TextArea& area_;
    const Columns& columns_;
    std::vector<double> heights_; ///< of each entry that opens no strip
};

} // namespace

Stack stack(const Content& content, const TextArea& area, const Columns& columns) {
    return columns.strips > 1 ? Strips{content, area, columns}.even()
                              : in_one_strip(content, area, columns);
}

} // namespace thawslip::layout
