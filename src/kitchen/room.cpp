#include "kitchen/room.h"

#include <algorithm>

namespace thawslip::kitchen {
namespace {

constexpr double freezer = -18.0;                          // °C
constexpr double ice_density = 916.89 - 0.13071 * freezer; // kg/m³
constexpr double water_density = 997.2;                    // kg/m³, at 4 °C

/// m³ for each kg of frozen food.
double frozen_volume(Wetness wetness) {
    const auto food = slowest_food(wetness);
    return 1.0 / food.density + ice_at(food, freezer) * (1.0 / ice_density - 1.0 / water_density);
}

} // namespace

Room& Room::operator+=(const Room& more) {
    bags += more.bags;
    litres += more.litres;
    unweighed += more.unweighed;
    stack = stack + more.stack;
    unmeasured += more.unmeasured;
    largest_face = std::max(largest_face, more.largest_face);
    return *this;
}

double frozen_litres(Mass weight, Wetness wetness) {
    return weight.grams * frozen_volume(wetness);
}

Room room_of(const Package& package, Wetness wetness) {
    Room room{.bags = package.bags};
    if (package.weight) {
        room.litres = frozen_litres(*package.weight, wetness) * package.bags;
    } else {
        room.unweighed = package.bags;
    }
    if (package.thickness) {
        room.stack = *package.thickness * static_cast<double>(package.bags);
    } else {
        room.unmeasured = package.bags;
    }
    if (package.weight && package.thickness) {
        const double cubic_centimetres = frozen_litres(*package.weight, wetness) * 1000.0;
        room.largest_face = cubic_centimetres / (package.thickness->in_millimetres() / 10.0);
    }
    return room;
}

bool are_all_weighed(const Room& room, const std::optional<FreezerHolds>& holds) {
    return room.unweighed == 0 && (!holds || holds->unweighed == 0);
}

Fill fill_of(double freezer_litres, double needed, double held) {
    const double all = needed + held;
    if (all > freezer_litres) {
        return Fill::Over;
    }
    return all > freezer_litres * usable_share ? Fill::Tight : Fill::Fits;
}

} // namespace thawslip::kitchen
