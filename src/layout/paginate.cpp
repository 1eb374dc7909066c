#include "layout/paginate.h"

#include "base/fill.h"
#include "layout/arrange.h"
#include "wording/print_fields.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

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

/// A phrase with its values, in each language that it is there in.
std::vector<wording::Paragraph> in_voices(const std::string& first, const std::string& second,
                                          const std::vector<std::string>& values) {
    std::vector<wording::Paragraph> said;
    for (const auto& [phrase, voice] :
         {std::pair{&first, wording::Voice::First}, std::pair{&second, wording::Voice::Second}}) {
        if (!phrase->empty()) {
            auto& words = said.emplace_back();
            words.voice = voice;
            words.spans.push_back({fill(*phrase, values), {}});
        }
    }
    return said;
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
        if (pieces_.size() < 2 || fits(print_, snug_sizing(), room_)) {
            return {print_};
        }
        const auto counts = most_even();
        if (counts.size() == 1) {
            return {print_}; // smaller than snug, and still no reason to number it
        }
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

    /// Where a card may end: where nothing that belongs together is parted; or, better, where a
    /// moment of cooking ends too.
    enum class Ends { Anywhere, AtMoments };

    /// How many pieces each card has, at which size that was found, and for cards of which height.
    struct Pouring {
        std::vector<std::size_t> counts;
        Scale scale;
        Length height;
    };

    Pouring poured(Scale scale, Length height, Ends ends) const {
        Pouring pouring{{}, scale, height};
        for (std::size_t next = 0; next < pieces_.size();) {
            pouring.counts.push_back(
                count_for(pouring.counts.size(), next, scale, {room_.width, height}, ends));
            next += pouring.counts.back();
        }
        return pouring;
    }

    Pouring fewest() const {
        const auto scale = readable_scale();
        auto pouring = poured(scale, room_.height, Ends::Anywhere);
        if (scale.value > snug.value && !layout_.large_print) {
            auto smaller = poured(snug, room_.height, Ends::Anywhere);
            if (smaller.counts.size() < pouring.counts.size()) {
                return smaller;
            }
        }
        return pouring;
    }

    /// As many cards, filled evenly: the last would stand almost empty, and what stands on the
    /// others could be no larger. Of many cards the last matters little. A first card that has room
    /// for some of it is not left without.
    Pouring even(Pouring pouring, Ends ends) const {
        constexpr std::size_t most_cards = 8;
        constexpr int halvings = 6; // to a sixtieth of the height
        const auto cards = pouring.counts.size();
        Length low;
        for (int i = 0; i < halvings && cards > 1 && cards <= most_cards; ++i) {
            const Length middle = (low + pouring.height) / 2;
            auto tried = poured(pouring.scale, middle, ends);
            const bool empties_first = tried.counts.front() == 0 && pouring.counts.front() > 0;
            if (tried.counts.size() <= cards && !empties_first && all_fit(tried)) {
                pouring = std::move(tried);
            } else {
                low = middle;
            }
        }
        return pouring;
    }

    bool all_fit(const Pouring& pouring) const {
        std::size_t next = 0;
        for (std::size_t i = 0; i < pouring.counts.size(); next += pouring.counts[i++]) {
            const auto count = pouring.counts[i];
            if (count > 0 && !fits(card(i, next, count, "9"), pouring.scale, room_)) {
                return false; // a card of which nothing runs on is as it is
            }
        }
        return true;
    }

    /// Parts no moment of cooking, unless that takes more cards or makes them much less even.
    std::vector<std::size_t> most_even() const {
        constexpr double much_less_even = 1.2;
        auto any = even(fewest(), Ends::Anywhere);
        if (layout_.kind != wording::Kind::CookDayCard) {
            return any.counts;
        }
        auto whole = even(poured(any.scale, room_.height, Ends::AtMoments), Ends::AtMoments);
        const bool is_better = whole.counts.size() <= any.counts.size() && all_fit(whole) &&
                               whole.height <= any.height * much_less_even;
        return is_better ? whole.counts : any.counts;
    }

    /// How many pieces from `next` on a card takes that is as high as `room`. The first takes none
    /// where all else that it says leaves no room for one.
    std::size_t count_for(std::size_t number, std::size_t next, Scale scale, Size room,
                          Ends ends) const {
        const auto most = whole_sections(next, most_that_fit(number, next, scale, room), ends);
        const auto count = whole_blocks(next, most, scale);
        const bool is_crowded = number == 0 && !fits(card(0, 0, count, "9"), scale, room) &&
                                fits(card(1, 0, count, "9"), scale, room_);
        return is_crowded ? 0 : count;
    }

    /// The largest scale up to comfortable at which no word or column is too wide for the cell,
    /// were it as high as one likes.
    Scale readable_scale() const {
        const Size endless{room_.width, room_.height * static_cast<double>(pieces_.size() + 1)};
        constexpr int steps = 16;
        for (int step = steps; step > 0; --step) {
            const Scale scale{comfortable.value * step / steps};
            if (fits(print_, scale, endless)) {
                return scale;
            }
        }
        return {0.0};
    }

    /// The sizes at which one card is better than two: what may run on is snug, and the rest, which
    /// is looked up rather than followed, may be smaller where it is sized by itself.
    Sizing snug_sizing() const {
        auto sizing = sizing_at(Scale{0.25}, 0);
        for (const auto& area : layout_.areas) {
            const auto* text = text_of(area);
            if (text != nullptr && text->continues) {
                sizing.scales.at(text->group) = layout_.large_print ? comfortable : snug;
            }
        }
        return sizing;
    }

    bool fits(const wording::Print& print, Scale scale, Size room) const {
        return fits(print, sizing_at(scale, 0), room);
    }

    /// With whatever is optional left out.
    bool fits(const wording::Print& print, Sizing sizing, Size room) const {
        const auto contents = prepare(layout_, print, shaper_);
        if (!contents) {
            return true; // the fault is reported where the print is fitted
        }
        sizing.conceded = static_cast<int>(concessions(layout_, contents.value()).size());
        const auto arrangement = arrange(layout_, contents.value(), room, sizing, shaper_.fonts());
        return fits_whole(arrangement, layout_, contents.value(), room, shaper_.fonts());
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

    /// Whether a card may end before this piece: a heading stays with what it heads, the second
    /// language with the first, and what belongs to the piece before with that.
    bool may_part_before(std::size_t piece) const {
        if (piece == pieces_.size()) {
            return true;
        }
        const auto& next = pieces_[piece].paragraph;
        const bool is_headed = role(piece - 1) == wording::Role::Heading ||
                               role(piece - 1) == wording::Role::ColumnHeads;
        return !is_headed && !next.with_previous && next.voice == wording::Voice::First;
    }

    /// The largest count up to this one after which a card may end; where there is none, the
    /// smallest above it, which is then set smaller.
    std::size_t whole_sections(std::size_t next, std::size_t count, Ends ends) const {
        auto kept = count;
        while (kept > 0 && !may_end_before(next + kept, ends)) {
            --kept;
        }
        while (kept == 0 && !may_end_before(next + count, ends)) {
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

    bool may_end_before(std::size_t piece, Ends ends) const {
        return may_part_before(piece) && (ends == Ends::Anywhere || begins_moment(piece));
    }

    /// Whether a piece is the first of a moment, whose label stands on a rail or in a column; what
    /// has no such labels may end before any piece.
    bool begins_moment(std::size_t piece) const {
        return piece == pieces_.size() || !pieces_[piece].paragraph.label.empty() ||
               !label_before(piece);
    }

    /// The piece before whose label holds for one without a label.
    std::optional<std::size_t> label_before(std::size_t piece) const {
        const auto& field = pieces_[piece].field;
        const auto* area = layout_.area_with(field);
        const auto* text = area == nullptr ? nullptr : text_of(*area);
        if (text == nullptr ||
            (text->labels != LabelPlace::Rail && text->labels != LabelPlace::Column)) {
            return std::nullopt;
        }
        for (auto i = piece; i-- > 0 && pieces_[i].field == field;) {
            if (!pieces_[i].paragraph.label.empty() &&
                pieces_[i].paragraph.voice == wording::Voice::First) {
                return i;
            }
        }
        return std::nullopt;
    }

    bool is_said_twice(std::size_t piece) const {
        return piece + 1 < pieces_.size() &&
               pieces_[piece + 1].paragraph.voice == wording::Voice::Second;
    }

    /// Has a card that begins inside a moment say the moment again, in both languages.
    void say_moment_again(std::vector<wording::Paragraph>& lines, std::size_t piece) const {
        const auto labelled = label_before(piece);
        if (!labelled || !lines.front().label.empty()) {
            return;
        }
        lines.front().label = pieces_[*labelled].paragraph.label;
        if (is_said_twice(*labelled) && !is_said_twice(piece)) {
            auto again = lines.front();
            again.marker = wording::Marker::None;
            again.voice = wording::Voice::Second;
            again.label = pieces_[*labelled + 1].paragraph.label;
            lines.insert(lines.begin() + 1, std::move(again));
        }
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
        if (!again.empty() && wanted == wording::Role::Heading) {
            again.front() = wording::said_again(std::move(again.front()), print_.continued_phrase);
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

    void say_more_follows(std::vector<wording::Paragraph>& lines, std::size_t number) const {
        for (auto& said : in_voices(print_.more_phrase, print_.second_more_phrase,
                                    {std::to_string(number + 2)})) {
            said.spans.front().emphasis = wording::Emphasis::Strong;
            lines.push_back(std::move(said));
        }
    }

    /// \pre count > 0, or it is the first card
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
            const bool goes_on =
                !first && field.paragraphs.empty() && pieces_[next].field == field.name;
            for (std::size_t i = next; i < next + count; ++i) {
                if (pieces_[i].field == field.name) {
                    field.paragraphs.push_back(pieces_[i].paragraph);
                }
            }
            if (goes_on) {
                say_moment_again(field.paragraphs, next);
            }
            const auto last = next + (count > 0 ? count - 1 : 0);
            if (next + count < pieces_.size() && pieces_[last].field == field.name) {
                say_more_follows(field.paragraphs, number);
            }
        }
        card.has_code = print_.has_code && first;
        set_page(card, number, of);
        return card;
    }

    void set_page(wording::Print& card, std::size_t number, const std::string& of) const {
        std::erase_if(card.fields,
                      [](const auto& field) { return field.name == wording::field_name::page; });
        wording::Field page{wording::field_name::page, {}, print_.where};
        page.paragraphs = in_voices(print_.page_phrase, print_.second_page_phrase,
                                    {std::to_string(number + 1), of});
        card.fields.push_back(std::move(page));
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
