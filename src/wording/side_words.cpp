#include "wording/side_words.h"

#include "base/list.h"
#include "wording/phrases.h"
#include "wording/print_fields.h"
#include "wording/typography.h"

namespace thawslip::wording {
namespace {

using kitchen::PlannedPackage;
using kitchen::SideStart;
using kitchen::When;

/// "15 min before serving", "after 20 min", "10 min before the start".
std::string say_start(const SideStart& start, const Style& style) {
    const auto& language = style.language;
    if (start.from == SideStart::From::Serving) {
        return style.say("side.before-serving", {say_duration(start.offset, language)});
    }
    if (start.offset.count() < 0) {
        return style.say("side.before-start", {say_duration(-start.offset, language)});
    }
    return start.offset.count() == 0 ? say_when({When::Anchor::AtStart}, language)
                                     : say_when({When::Anchor::AfterStart, start.offset}, language);
}

/// "5 min before serving", "after 20 min".
std::string say_ready(const When& ready, const Style& style) {
    return ready.anchor == When::Anchor::BeforeEnd
               ? style.say("side.before-serving", {say_duration(ready.offset, style.language)})
               : say_when(ready, style.language);
}

/// "300 g rice (pot, 15 min)", what it is strong.
Paragraph side_line(const kitchen::Side& side, const Style& style) {
    const auto what = typeset_text(say_quantity(side.add, style));
    auto line = as_is(what, Emphasis::Strong);
    const auto all = typeset_text(say_side(side, style));
    line.spans.push_back({all.substr(std::min(what.size(), all.size())), Emphasis::Plain});
    line.marker = Marker::TickBox;
    if (side.ready.anchor != When::Anchor::AtServing) {
        const auto ready = style.say("side.ready-when", {say_ready(side.ready, style)});
        line.spans.push_back({typeset_text(", " + ready), Emphasis::Plain});
    }
    return line;
}

} // namespace

std::vector<Paragraph> side_lines(const SideStart& start, const PlannedPackage& planned,
                                  const Style& style) {
    const auto& side = planned.package.sides[start.side];
    std::vector<Paragraph> lines{side_line(side, style)};
    lines.front().label = capitalised(say_start(start, style));
    for (const auto& step : side.steps) {
        lines.push_back(plain(step));
        lines.back().with_previous = true;
    }
    return lines;
}

Field sides_field(const PlannedPackage& planned, const Style& style) {
    Field field{field_name::sides, {}, planned.package.where.key("side")};
    std::vector<std::string> names;
    for (const auto& start : kitchen::side_starts(planned)) {
        field.paragraphs.push_back(side_lines(start, planned, style).front());
        field.paragraphs.back().marker = Marker::None; // boxes are for what is added
        names.push_back(say_quantity(planned.package.sides[start.side].add, style));
    }
    if (!names.empty()) {
        field.shorter = {{labelled(style.say("side.with-it"), joined(names, between(names)) + ": " +
                                                                  style.say("label.see-card"))}};
    }
    return field;
}

} // namespace thawslip::wording
