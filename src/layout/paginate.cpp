#include "layout/paginate.h"

#include "base/fill.h"
#include "layout/arrange.h"
#include "wording/print_fields.h"

#include <algorithm>
#include <string>

namespace thawslip::layout {
namespace {

/// Which fields of a print an area of a certain sort takes.
template <class Predicate>
std::vector<std::string> fields_of(const Layout& layout, const Predicate& wanted) {
    std::vector<std::string> names;
    for (const auto& area : layout.areas) {
        if (const auto* text = text_of(area); text != nullptr && wanted(*text)) {
            names.insert(names.end(), text->words.begin(), text->words.end());
        }
    }
    return names;
}

bool contains(const std::vector<std::string>& names, const std::string& name) {
    return std::ranges::find(names, name) != names.end();
}

bool says_something(const wording::Paragraph& cell) {
    return !cell.label.empty() || std::ranges::any_of(cell.spans, [](const wording::Span& span) {
        return !span.text.empty();
    });
}

/// One paragraph of a field that may continue.
struct Piece {
    std::string field;
    wording::Paragraph paragraph;
};

/// The split of one print: what every card repeats, what the first alone has, what runs on.
class Paginator {
public:
    Paginator(const wording::Print& print, const Layout& layout, Size room, Shaper& shaper)
        : print_{print}, layout_{layout}, room_{room}, shaper_{shaper},
          continuing_{fields_of(layout, [](const TextArea& area) { return area.continues; })},
          repeated_{fields_of(layout, [](const TextArea& area) { return area.repeats; })},
          whole_{fields_of(layout, [](const TextArea& area) { return area.keep_whole; })},
          blank_{print} {
        for (auto& field : blank_.fields) {
            if (contains(continuing_, field.name)) {
                for (auto& paragraph : field.paragraphs) {
                    pieces_.push_back({field.name, std::move(paragraph)});
                }
                field.paragraphs.clear();
            }
        }
    }

    std::vector<wording::Print> run() const {
        if (pieces_.size() < 2 || fits(print_, snug, room_)) {
            return {print_};
        }
        const auto counts = even(fewest());
        std::vector<wording::Print> cards;
        std::size_t next = 0;
        for (const auto count : counts) {
            cards.push_back(card(cards.size(), next, count, std::to_string(counts.size())));
            next += count;
        }
        return cards;
    }

private:
    // A card fewer is worth a size a little below comfortable; else all are comfortable.
    static constexpr Scale snug{0.5};
    static constexpr Scale comfortable{1.0};

    /// How many pieces each card has, and at which size that was found.
    struct Pouring {
        std::vector<std::size_t> counts;
        Scale scale;
    };

    Pouring poured(Scale scale, Size room) const {
        Pouring pouring{{}, scale};
        for (std::size_t next = 0; next < pieces_.size();) {
            pouring.counts.push_back(count_for(pouring.counts.size(), next, scale, room));
            next += pouring.counts.back();
        }
        return pouring;
    }

    Pouring fewest() const {
        const auto scale = readable_scale();
        auto pouring = poured(scale, room_);
        if (scale.value > snug.value) {
            auto smaller = poured(snug, room_);
            if (smaller.counts.size() < pouring.counts.size()) {
                return smaller;
            }
        }
        return pouring;
    }

    /// As many cards, filled evenly: the last would stand almost empty, and what stands on the
    /// others could be no larger. Of many cards the last matters little.
    std::vector<std::size_t> even(Pouring pouring) const {
        constexpr std::size_t most_cards = 8;
        constexpr int halvings = 5; // to a thirtieth of the height
        const auto cards = pouring.counts.size();
        Length low;
        Length high = room_.height;
        for (int i = 0; i < halvings && cards > 1 && cards <= most_cards; ++i) {
            const Length middle = (low + high) / 2;
            auto tried = poured(pouring.scale, {room_.width, middle});
            const bool enough = tried.counts.size() == cards;
            (enough ? high : low) = middle;
            if (enough) {
                pouring = std::move(tried);
            }
        }
        return pouring.counts;
    }

    /// How many pieces from `next` on a card takes that is as high as `room`.
    std::size_t count_for(std::size_t number, std::size_t next, Scale scale, Size room) const {
        const auto most = whole_sections(next, most_that_fit(number, next, scale, room));
        return whole_blocks(next, most, scale);
    }

    /// The largest scale up to comfortable at which no word or column is too wide for the cell,
    /// were it as high as one likes.
    Scale readable_scale() const {
        const Size endless{room_.width, room_.height * static_cast<double>(pieces_.size() + 1)};
        for (const auto scale : {comfortable, Scale{0.75}, snug, Scale{0.25}}) {
            if (fits(print_, scale, endless)) {
                return scale;
            }
        }
        return {0.0};
    }

    /// With whatever is optional left out.
    bool fits(const wording::Print& print, Scale scale, Size room) const {
        const auto contents = prepare(layout_, print, shaper_);
        if (!contents) {
            return true; // the fault is reported where the print is fitted
        }
        const auto sizing =
            sizing_at(scale, static_cast<int>(concessions(layout_, contents.value()).size()));
        const auto arrangement = arrange(layout_, contents.value(), room, sizing, shaper_.fonts());
        return arrangement.fits() && !arrangement.cuts_words;
    }

    /// How many pieces from `next` on a card takes; at least one, so that there is an end. Tries
    /// twice as many each time, so that the work grows with the card and not with what is left.
    std::size_t most_that_fit(std::size_t number, std::size_t next, Scale scale, Size room) const {
        const auto left = pieces_.size() - next;
        const auto fit = [&](std::size_t count) {
            return fits(card(number, next, count, "9"), scale, room);
        };
        std::size_t low = 1;
        std::size_t high = std::min<std::size_t>(left, 8);
        while (high < left && fit(high)) {
            low = high;
            high = std::min(left, high * 2);
        }
        while (low < high) {
            const auto middle = (low + high + 1) / 2;
            if (fit(middle)) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return low;
    }

    wording::Role role(std::size_t piece) const { return pieces_[piece].paragraph.role; }

    /// Whether a card may end before this piece: a heading stays with what it heads, and the second
    /// language with the first.
    bool may_part_before(std::size_t piece) const {
        return piece == pieces_.size() || (role(piece - 1) == wording::Role::Text &&
                                           pieces_[piece].paragraph.voice == wording::Voice::First);
    }

    /// The largest count up to this one after which a card may end; where there is none, the
    /// smallest above it, which is then set smaller.
    std::size_t whole_sections(std::size_t next, std::size_t count) const {
        auto kept = count;
        while (kept > 0 && !may_part_before(next + kept)) {
            --kept;
        }
        while (kept == 0 && !may_part_before(next + count)) {
            ++count;
        }
        return kept == 0 ? count : kept;
    }

    bool opens_block(std::size_t piece) const {
        return piece == 0 || role(piece) == wording::Role::Heading ||
               pieces_[piece].field != pieces_[piece - 1].field;
    }

    /// The count nearest to this one that parts no block which is kept whole and fits a card. A
    /// block is a heading with all that follows, to the next one.
    std::size_t whole_blocks(std::size_t next, std::size_t count, Scale scale) const {
        const auto end = next + count;
        if (end == pieces_.size() || opens_block(end) || !contains(whole_, pieces_[end].field)) {
            return count;
        }
        auto begin = end;
        while (begin > next && !opens_block(begin)) {
            --begin;
        }
        auto block_end = end;
        while (block_end < pieces_.size() && !opens_block(block_end)) {
            ++block_end;
        }
        if (!fits(card(1, begin, block_end - begin, "9"), scale, room_)) {
            return count;
        }
        return begin > next ? begin - next : block_end - next;
    }

    /// What a card that begins in the middle of a section says again: its heading, and what heads
    /// the columns.
    std::vector<wording::Paragraph> said_again(std::size_t next) const {
        std::vector<wording::Paragraph> again;
        auto wanted = role(next);
        for (auto i = next; i-- > 0 && wanted != wording::Role::Heading;) {
            if (pieces_[i].field != pieces_[next].field) {
                break;
            }
            if (role(i) == wording::Role::Text || role(i) == wanted) {
                continue;
            }
            again.insert(again.begin(), pieces_[i].paragraph);
            wanted = role(i);
        }
        if (!again.empty() && wanted == wording::Role::Heading &&
            !print_.continued_phrase.empty() && !again.front().spans.empty()) {
            auto& heading = again.front().spans.front().text;
            heading = fill(print_.continued_phrase, {heading});
        }
        return again;
    }

    /// Leaves out the heads of columns that say nothing more among `count` pieces from `next` on.
    void drop_idle_heads(std::vector<wording::Paragraph>& again, std::size_t next,
                         std::size_t count) const {
        if (again.empty() || again.back().role != wording::Role::ColumnHeads ||
            again.back().cells.empty()) {
            return;
        }
        auto& heads = again.back().cells;
        std::vector<bool> idle(heads.size(), true);
        for (auto i = next; i < next + count && role(i) == wording::Role::Text; ++i) {
            const auto& cells = pieces_[i].paragraph.cells;
            for (std::size_t c = 0; c < std::min(cells.size(), idle.size()); ++c) {
                idle[c] = idle[c] && !says_something(cells[c]);
            }
        }
        for (std::size_t c = 0; c < heads.size(); ++c) {
            if (idle[c]) {
                heads[c].spans.clear();
            }
        }
        if (std::ranges::none_of(heads, says_something)) {
            again.pop_back();
        }
    }

    wording::Print card(std::size_t number, std::size_t next, std::size_t count,
                        const std::string& of) const {
        auto card = blank_;
        const bool first = number == 0;
        std::erase_if(card.fields, [&](const wording::Field& field) {
            return !first && !contains(continuing_, field.name) && !contains(repeated_, field.name);
        });
        for (auto& field : card.fields) {
            if (!contains(continuing_, field.name)) {
                continue;
            }
            if (!first && pieces_[next].field == field.name) {
                field.paragraphs = said_again(next);
                drop_idle_heads(field.paragraphs, next, count);
            }
            for (std::size_t i = next; i < next + count; ++i) {
                if (pieces_[i].field == field.name) {
                    field.paragraphs.push_back(pieces_[i].paragraph);
                }
            }
        }
        card.has_code = print_.has_code && first;
        set_page(card, number, of);
        return card;
    }

    void set_page(wording::Print& card, std::size_t number, const std::string& of) const {
        std::erase_if(card.fields,
                      [](const auto& field) { return field.name == wording::field_name::page; });
        wording::Paragraph page;
        page.spans.push_back({fill(print_.page_phrase, {std::to_string(number + 1), of}), {}});
        card.fields.push_back({wording::field_name::page, {std::move(page)}, print_.where});
    }

    const wording::Print& print_;
    const Layout& layout_;
    Size room_;
    Shaper& shaper_;
    std::vector<std::string> continuing_;
    std::vector<std::string> repeated_;
    std::vector<std::string> whole_; ///< whose blocks are not parted
    wording::Print blank_;           ///< the print without what runs on
    std::vector<Piece> pieces_;
};

} // namespace

std::vector<wording::Print> paginate(const wording::Print& print, const Layout& layout, Size room,
                                     Shaper& shaper) {
    return Paginator{print, layout, room, shaper}.run();
}

} // namespace thawslip::layout
