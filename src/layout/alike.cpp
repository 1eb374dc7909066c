#include "layout/alike.h"

#include "code/instructions.h"
#include "layout/paginate.h"
#include "layout/print_size.h"

#include <algorithm>
#include <span>

namespace thawslip::layout {
namespace {

using Fields = std::vector<wording::Field>;

/// The layout's code and what it needs to say what is added and how it is cooked: with every step
/// first, then without.
struct CodeNeed {
    std::size_t area = 0;
    std::vector<Length> sides;
};

/// Nothing where a print has no code, or says and asks for the same whatever its code has room for.
std::optional<CodeNeed> code_need(const Source& source, std::size_t first,
                                  const wording::Print& print, const Layout& layout,
                                  const Medium& medium) {
    const auto is_code = [](const Area& area) {
        return std::holds_alternative<CodeArea>(area.kind);
    };
    const auto found = std::ranges::find_if(layout.areas, is_code);
    if (!print.has_code || found == layout.areas.end()) {
        return std::nullopt;
    }
    const auto& area = std::get<CodeArea>(found->kind);
    if (print.if_code_is_cut.empty() && area.shorten.empty()) {
        return std::nullopt;
    }
    CodeNeed need{static_cast<std::size_t>(found - layout.areas.begin()), {}};
    const auto texts = source.code_texts(first);
    for (const auto place : code::shortest_with_instructions(texts)) {
        const auto side =
            code::durable_side(texts[place], medium.printer, medium.least_module, area.durable);
        // What no symbol carries needs more than any sheet has.
        need.sides.push_back(side.value_or(Length::millimetres(9999)) + dot(medium.printer));
    }
    return need;
}

/// Whether the code that was fitted has room for every step.
bool has_room(const CodeNeed& need, const FittedPrint& fitted, const Layout& layout, Size room,
              const typeset::FontSet& fonts) {
    const auto arrangement = arrange(layout, fitted.contents, room, fitted.sizing, fonts);
    const Length side = arrangement.areas[need.area].place.size.height + Length::points(1e-6);
    return need.sides.empty() || need.sides.front() <= side;
}

Result<FittedPrint, Why> fit_one(const wording::Print& print, const std::optional<CodeNeed>& need,
                                 const Layout& layout, Size room, Shaper& shaper) {
    auto prepared = prepare(layout, print, shaper);
    if (!prepared) {
        return Failure{Why{prepared.fault()}};
    }
    auto contents = std::move(prepared).value();
    if (need && print.has_code) {
        contents[need->area] =
            content_for(std::get<CodeArea>(layout.areas[need->area].kind), need->sides);
    }
    const auto sizes = solve(layout, contents, room, shaper.fonts());
    if (!sizes) {
        return Failure{Why{explain(layout, contents, room, print, shaper.fonts())}};
    }
    return FittedPrint{0, print.kind, std::move(contents), *sizes, std::nullopt};
}

/// The cards that one print takes: itself, or its parts where its layout lets it run on.
std::vector<wording::Print> cards_of(wording::Print print, const Layout& layout, Size room,
                                     Shaper& shaper) {
    const auto continues = [](const Area& area) {
        const auto* text = text_of(area);
        return text != nullptr && text->continues;
    };
    if (std::ranges::any_of(layout.areas, continues)) {
        return paginate(print, layout, room, shaper);
    }
    std::vector<wording::Print> one;
    one.push_back(std::move(print));
    return one;
}

/// Has `print` say `own` in the fields of those names, where it has them.
void say_instead(wording::Print& print, const Fields& own) {
    for (const auto& field : own) {
        const auto place = std::ranges::find(print.fields, field.name, &wording::Field::name);
        if (place != print.fields.end()) {
            place->paragraphs = field.paragraphs;
            place->shorter = field.shorter;
        }
    }
}

/// Where its code has no room for them, the print says where the steps stand.
Result<FittedPrint, Why> fit_with_code(wording::Print& print, const std::optional<CodeNeed>& need,
                                       const Layout& layout, Size room, Shaper& shaper) {
    auto fitted = fit_one(print, need, layout, room, shaper);
    if (!need || !fitted || print.if_code_is_cut.empty() ||
        has_room(*need, fitted.value(), layout, room, shaper.fonts())) {
        return fitted;
    }
    say_instead(print, print.if_code_is_cut);
    return fit_one(print, need, layout, room, shaper);
}

bool says_any(const Area& area, std::span<const wording::Field> fields) {
    const auto* text = text_of(area);
    return text != nullptr && std::ranges::any_of(fields, [text](const wording::Field& field) {
               return takes(*text, field.name);
           });
}

/// How wide a field stands in an area on one line, in sizes of its type; 0 where it cannot be set:
/// whoever shapes it says so.
double width_in(const Area& area, const wording::Field& field, Shaper& shaper) {
    wording::Print print;
    print.fields = {field};
    const auto content = prepare(area, print, shaper);
    constexpr TypeSize one_point{Length::points(1), Length::points(1)};
    return content ? natural_width(content.value(), area, one_point).in_points() : 0.0;
}

double width_of(const wording::Field& field, const Layout& layout, Shaper& shaper) {
    double widest = 0.0;
    for (const auto& area : layout.areas) {
        if (says_any(area, {&field, 1})) {
            widest = std::max(widest, width_in(area, field, shaper));
        }
    }
    return widest;
}

/// Of each own field the widest there is.
Fields widest_of(const std::vector<Fields>& own, const Layout& layout, Shaper& shaper) {
    auto widest = own.front();
    for (std::size_t f = 0; f < widest.size(); ++f) {
        double width = width_of(widest[f], layout, shaper);
        for (const auto& fields : own) {
            if (const double other = width_of(fields[f], layout, shaper); other > width) {
                width = other;
                widest[f] = fields[f];
            }
        }
    }
    return widest;
}

/// A card of one of the prints: its own fields shaped again, all else as in the widest.
Result<FittedPrint, Why> card_with(const Fields& own, const FittedPrint& widest,
                                   wording::Print& words, const Layout& layout, Shaper& shaper) {
    auto fitted = widest;
    say_instead(words, own);
    for (std::size_t a = 0; a < layout.areas.size(); ++a) {
        if (!says_any(layout.areas[a], own)) {
            continue;
        }
        auto content = prepare(layout.areas[a], words, shaper);
        if (!content) {
            return Failure{Why{content.fault()}};
        }
        fitted.contents[a] = std::move(content).value();
    }
    return fitted;
}

/// Whether a card has part of what runs on, and not only the line that says where to find it.
bool has_part(const wording::Print& card, const Layout& layout) {
    const auto lines_more = static_cast<std::size_t>(!card.more_phrase.empty()) +
                            static_cast<std::size_t>(!card.second_more_phrase.empty());
    return std::ranges::any_of(card.fields, [&](const wording::Field& field) {
        const auto* area = layout.area_with(field.name);
        const auto* text = area == nullptr ? nullptr : text_of(*area);
        return text != nullptr && text->continues && field.paragraphs.size() > lines_more;
    });
}

/// The cards that what runs on stands on have it in one size.
void agree_where_it_runs_on(std::vector<FittedPrint>& fitted,
                            const std::vector<wording::Print>& cards, const Layout& layout,
                            Size room, const typeset::FontSet& fonts) {
    std::vector<SizedPrint> sized;
    for (std::size_t i = 0; i < cards.size() && cards.size() > 1; ++i) {
        fitted[i].runs_on = has_part(cards[i], layout);
        if (fitted[i].runs_on) {
            sized.push_back({layout, fitted[i].contents, room, fitted[i].sizing});
        }
    }
    agree_on_one(sized, fonts);
}

std::vector<Fields> own_fields(const Source& source, std::size_t first, std::size_t count) {
    std::vector<Fields> own(count);
    for (std::size_t i = 0; source.own_fields && i < count; ++i) {
        own[i] = source.own_fields(first + i);
    }
    return own;
}

} // namespace

Result<AlikeFit, Why> fit_alike(const Source& source, const Alike& alike, const Layouts& layouts,
                                const Medium& medium, Shaper& shaper) {
    AlikeFit fit;
    auto print = source.print(alike.first);
    const auto& layout = layouts.at(print.kind);
    if (auto names = unplaced(print, layout); !names.empty()) {
        return Failure{Why{Unplaced{std::move(names), layout.picture}}};
    }
    const auto room = room_of(print.kind, medium.stock);
    const auto need = code_need(source, alike.first, print, layout, medium);
    const auto own = own_fields(source, alike.first, alike.count);
    say_instead(print, widest_of(own, layout, shaper));
    auto cards = cards_of(std::move(print), layout, room, shaper);
    for (auto& card : cards) {
        auto fitted = fit_with_code(card, need, layout, room, shaper);
        if (!fitted) {
            return Failure{fitted.fault()};
        }
        fit.widest.push_back(std::move(fitted).value());
    }
    agree_where_it_runs_on(fit.widest, cards, layout, room, shaper.fonts());
    for (std::size_t i = 0; i < alike.wanted; ++i) {
        for (std::size_t c = 0; c < cards.size(); ++c) {
            auto fitted = card_with(own[i], fit.widest[c], cards[c], layout, shaper);
            if (!fitted) {
                return Failure{fitted.fault()};
            }
            fit.prints.push_back(std::move(fitted).value());
            fit.prints.back().print = alike.first + i;
        }
    }
    return fit;
}

} // namespace thawslip::layout
