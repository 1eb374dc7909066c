#include "app/commands/check_text.h"
#include "base/counted.h"
#include "wording/room.h"

#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

std::string_view words_for(kitchen::Fill fill, const kitchen::Plan& plan) {
    switch (fill) {
    case kitchen::Fill::Fits:
        return plan.freezer_load && !can_freeze_all(*plan.freezer_load)
                   ? "there is room, but not all of it can be frozen in time"
                   : "there is room";
    case kitchen::Fill::Tight: return "tight, for baskets and gaps take about a quarter of it";
    case kitchen::Fill::Over: break;
    }
    return "too much: make room first";
}

/// "; 2 bags have no weight": what the figures leave out.
std::string left_out(int bags, std::string_view what) {
    return bags == 0 ? "" : fmt::format("; {} without a {}", counted(bags, "bag"), what);
}

void show_stack(const kitchen::Room& room, const wording::Style& style, std::ostream& out) {
    if (room.unmeasured < room.bags) {
        out << fmt::format("    in one flat stack {} high{}\n",
                           wording::say_height(room.stack, style),
                           left_out(room.unmeasured, "thickness"));
    }
}

void show_holds(const kitchen::FreezerHolds& holds, const wording::Style& style,
                std::ostream& out) {
    const bool knows_some = holds.unweighed < holds.bags;
    out << fmt::format("    by the archive {} {} in it already{}{}\n",
                       counted(holds.bags, "other bag"), holds.bags == 1 ? "is" : "are",
                       knows_some ? ", about " + wording::say_litres(holds.litres, style) : "",
                       left_out(holds.unweighed, "weight"));
}

} // namespace

void show_room(const kitchen::Plan& plan, const wording::Style& style, std::ostream& out) {
    const auto& room = plan.room;
    if (room.unweighed == room.bags && room.unmeasured == room.bags) {
        return;
    }
    out << fmt::format("the freezer: {} {} about {} of food, bags and gaps not counted{}\n",
                       counted(room.bags, "bag"), room.bags == 1 ? "takes" : "take",
                       wording::say_litres(room.litres, style), left_out(room.unweighed, "weight"));
    show_stack(room, style, out);
    if (plan.holds) {
        show_holds(*plan.holds, style, out);
    }
    if (plan.freezer_litres) {
        const double all = room.litres + (plan.holds ? plan.holds->litres : 0.0);
        out << fmt::format(
            "    together {} of its {}: {}{}\n", wording::say_litres(all, style),
            wording::say_litres(*plan.freezer_litres, style),
            words_for(kitchen::fill_of(*plan.freezer_litres, all, 0.0), plan),
            kitchen::are_all_weighed(room, plan.holds) ? "" : ", as far as weights are known");
    }
}

} // namespace thawslip::app
