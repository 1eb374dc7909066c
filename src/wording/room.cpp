#include "wording/room.h"

#include "kitchen/texts/text.h"
#include "wording/freezing_plan.h"
#include "wording/list_parts.h"
#include "wording/phrases.h"

#include <cmath>
#include <fmt/format.h>

namespace thawslip::wording {
namespace {

/// The side of a square of that face.
Length side_of(double square_centimetres) {
    return Length::millimetres(std::sqrt(square_centimetres) * 10.0);
}

/// To a tenth below ten, else to a whole one.
double rounded(double value) {
    return value < 10.0 ? std::round(value * 10.0) / 10.0 : std::round(value);
}

std::string amount_text(double value, const Style& style) {
    return kitchen::decimal(rounded(value), 1, style.units.decimal_mark);
}

std::string whole_text(double value) {
    constexpr double hair = 1e-6;
    return fmt::format("{:.0f}", std::ceil(value - hair));
}

std::string say_bags(int bags, const Style& style) {
    return say_bag_count(static_cast<std::size_t>(bags), style);
}

/// "26 × 26 cm (11 × 11 in)".
std::string say_face(double square_centimetres, const Style& style) {
    const auto side = side_of(square_centimetres);
    const auto square = [](const std::string& of) { return of + " × " + of; };
    return kitchen::in_style(square(whole_text(side.in_millimetres() / 10.0)) + " cm",
                             square(whole_text(side.in_inches())) + " in", true, style.units);
}

/// How high a flat stack stands, and what keeps some bags from being counted.
void add_needs(Field& field, const kitchen::Plan& plan, const Style& style) {
    const auto& room = plan.room;
    if (room.unweighed < room.bags) {
        field.paragraphs.push_back(labelled(style.say("room.litres", {say_bags(room.bags, style)}),
                                            say_litres(room.litres, style)));
    }
    if (room.unmeasured < room.bags) {
        field.paragraphs.push_back(
            labelled(style.say("room.stack"),
                     room.largest_face > 0.0
                         ? style.say("room.stack-on", {say_height(room.stack, style),
                                                       say_face(room.largest_face, style)})
                         : say_height(room.stack, style)));
    }
}

void add_uncounted(Field& field, const kitchen::Plan& plan, const Style& style) {
    const auto& room = plan.room;
    for (const auto& [key, bags] : {std::pair{"room.unweighed", room.unweighed},
                                    std::pair{"room.unmeasured", room.unmeasured}}) {
        if (bags > 0) {
            field.paragraphs.push_back(plain(style.say(key, {say_bags(bags, style)})));
        }
    }
}

/// There is no talk of room alone where some of it has to go elsewhere.
const char* key_of_fill(kitchen::Fill fill, const kitchen::Plan& plan) {
    switch (fill) {
    case kitchen::Fill::Fits:
        if (plan.freezer_load && !can_freeze_all(*plan.freezer_load)) {
            return "room.fits-not-in-time";
        }
        return are_all_weighed(plan.room, plan.holds) ? "room.fits" : "room.fits-weighed";
    case kitchen::Fill::Tight: return "room.tight";
    case kitchen::Fill::Over: break;
    }
    return "room.over";
}

/// "9 bags, 12 l", and how many of them the litres leave out.
std::string say_holds(const kitchen::FreezerHolds& holds, const Style& style) {
    if (holds.bags == 0) {
        return style.say("room.holds-none");
    }
    const auto bags = say_bags(holds.bags, style);
    const auto known = holds.unweighed == holds.bags
                           ? bags
                           : style.say("room.count", {bags, say_litres(holds.litres, style)});
    return holds.unweighed == 0
               ? known
               : style.say("room.holds-unweighed", {known, say_bags(holds.unweighed, style)});
}

/// What is in the freezer already, and how full it gets.
void add_holds(Field& field, const kitchen::Plan& plan, const Style& style) {
    const double held = plan.holds ? plan.holds->litres : 0.0;
    if (plan.holds) {
        field.paragraphs.push_back(
            labelled(style.say("room.holds"), say_holds(*plan.holds, style)));
    }
    if (plan.freezer_litres && plan.room.litres > 0.0) {
        const auto fill = kitchen::fill_of(*plan.freezer_litres, plan.room.litres, held);
        field.paragraphs.push_back(
            labelled(style.say("room.together"),
                     style.say("room.of", {say_litres(plan.room.litres + held, style),
                                           say_litres(*plan.freezer_litres, style),
                                           style.say(key_of_fill(fill, plan))})));
    }
}

} // namespace

std::string say_litres(double litres, const Style& style) {
    constexpr double litres_in_cubic_foot = 3.048 * 3.048 * 3.048; // NIST SP 811: 1 ft = 304.8 mm
    const double cubic_feet = litres / litres_in_cubic_foot;
    // No bag takes 0 cubic feet.
    const auto turned = rounded(cubic_feet) > 0.0
                            ? amount_text(cubic_feet, style) + " " + style.say("room.cubic-feet")
                            : std::string{};
    return kitchen::in_style(amount_text(litres, style) + " l", turned, true, style.units);
}

std::string say_height(Length height, const Style& style) {
    return kitchen::in_style(whole_text(height.in_millimetres() / 10.0) + " cm",
                             whole_text(height.in_inches()) + " in", true, style.units);
}

std::string say_in_freezer(const kitchen::PlannedPackage& planned, const Style& style) {
    return planned.in_freezer == 0
               ? std::string{}
               : style.language.say_count("room.have-bag", "room.have-bags",
                                          static_cast<std::size_t>(planned.in_freezer));
}

void add_room(Field& field, const kitchen::Plan& plan, const Style& style) {
    if (plan.room.bags == 0) {
        return;
    }
    field.paragraphs.push_back(heading(style.say("room.title")));
    add_needs(field, plan, style);
    add_uncounted(field, plan, style);
    add_holds(field, plan, style);
    field.paragraphs.push_back(plain(style.say("room.assumed")));
}

} // namespace thawslip::wording
