#include "layout/paginate.h"

#include "layout/arrange.h"

#include <algorithm>
#include <string>

namespace thawslip::layout {
namespace {

/// Which fields of a print an area of a certain sort takes.
template <class Predicate>
std::vector<std::string> fields_of(const Layout& layout, const Predicate& wanted) {
    std::vector<std::string> names;
    for (const auto& area : layout.areas) {
        if (wanted(area)) {
            names.insert(names.end(), area.words.begin(), area.words.end());
        }
    }
    return names;
}

bool contains(const std::vector<std::string>& names, const std::string& name) {
    return std::ranges::find(names, name) != names.end();
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
          continuing_{fields_of(layout, [](const Area& area) { return area.continues; })},
          repeated_{fields_of(layout, [](const Area& area) { return area.repeats; })} {
        for (const auto& field : print.fields) {
            if (contains(continuing_, field.name)) {
                for (const auto& paragraph : field.paragraphs) {
                    pieces_.push_back({field.name, paragraph});
                }
            }
        }
    }

    std::vector<wording::Print> run() const {
        if (pieces_.size() < 2 || fits(print_, snug)) {
            return {print_};
        }
        std::vector<wording::Print> cards;
        for (std::size_t next = 0; next < pieces_.size();) {
            const auto count = most_that_fit(cards.size(), next);
            cards.push_back(card(cards.size(), next, count, "9"));
            next += count;
        }
        for (std::size_t i = 0; i < cards.size(); ++i) {
            set_page(cards[i], i, std::to_string(cards.size()));
        }
        return cards;
    }

private:
    // One card a little below comfortable is better than two; where it takes two, both are
    // comfortable.
    static constexpr Scale snug{0.5};
    static constexpr Scale comfortable{1.0};

    /// With whatever is optional left out.
    bool fits(const wording::Print& print, Scale scale) const {
        Contents contents;
        for (const auto& area : layout_.areas) {
            auto content = prepare_content(area, print, shaper_);
            if (!content) {
                return true; // the fault is reported where the print is fitted
            }
            contents.push_back(std::move(content).value());
        }
        const Choice choice{scale, optional_areas(layout_, contents)};
        const auto arrangement = arrange(layout_, contents, room_, choice, shaper_.fonts());
        return arrangement.fits() && !arrangement.cuts_words;
    }

    /// How many pieces from `next` on a card takes; at least one, so that there is an end.
    std::size_t most_that_fit(std::size_t number, std::size_t next) const {
        std::size_t low = 1;
        std::size_t high = pieces_.size() - next;
        while (low < high) {
            const auto middle = (low + high + 1) / 2;
            if (fits(card(number, next, middle, "9"), comfortable)) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return low;
    }

    wording::Print card(std::size_t number, std::size_t next, std::size_t count,
                        const std::string& of) const {
        auto card = print_;
        const bool first = number == 0;
        std::erase_if(card.fields, [&](const wording::Field& field) {
            return !first && !contains(continuing_, field.name) && !contains(repeated_, field.name);
        });
        for (auto& field : card.fields) {
            if (contains(continuing_, field.name)) {
                field.paragraphs.clear();
                for (std::size_t i = next; i < next + count; ++i) {
                    if (pieces_[i].field == field.name) {
                        field.paragraphs.push_back(pieces_[i].paragraph);
                    }
                }
            }
        }
        card.has_code = print_.has_code && first;
        set_page(card, number, of);
        return card;
    }

    void set_page(wording::Print& card, std::size_t number, const std::string& of) const {
        std::erase_if(card.fields, [](const auto& field) { return field.name == "page"; });
        wording::Paragraph page;
        page.spans.push_back(
            {wording::fill(print_.page_phrase, {std::to_string(number + 1), of}), {}});
        card.fields.push_back({"page", {std::move(page)}, print_.where});
    }

    const wording::Print& print_;
    const Layout& layout_;
    Size room_;
    Shaper& shaper_;
    std::vector<std::string> continuing_;
    std::vector<std::string> repeated_;
    std::vector<Piece> pieces_;
};

} // namespace

std::vector<wording::Print> paginate(const wording::Print& print, const Layout& layout, Size room,
                                     Shaper& shaper) {
    return Paginator{print, layout, room, shaper}.run();
}

} // namespace thawslip::layout
