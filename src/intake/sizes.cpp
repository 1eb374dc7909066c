#include "intake/sizes.h"

#include "intake/day_file.h"
#include "intake/placing.h"
#include "intake/values.h"
#include "kitchen/measures/proportion.h"
#include "toml/choice.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::intake {
namespace {

using kitchen::Package;
using toml::Key;
using toml::Table;

const Key& size_key() {
    static const Key key{"size"};
    return key;
}

/// Of all sizes together they would say how many there are, and of one that it weighs as much as
/// another.
void refuse_beside_sizes(Table& package) {
    for (const auto& key : {Key{"bags", "3"}, Key{"weight", "\"2.2 kg\""}}) {
        if (package.has(key)) {
            package.reader().error(
                package.path_of(key),
                fmt::format("{} stands beside [[package.size]]; each size has its own", key.name),
                {fmt::format("write it below each [[package.size]]: {} = {}", key.name,
                             key.example)});
        }
    }
}

Length millimetres(double number) {
    return Length::millimetres(number);
}

/// Sizes that serve as many are told apart by their order.
int name_of(const Package& package, const std::vector<Package>& before) {
    constexpr int apart = 1000;
    return package.servings + apart * static_cast<int>(std::ranges::count(before, package.servings,
                                                                          &Package::servings));
}

void set_portions(std::vector<Package>& sizes) {
    int portions = 0;
    for (const auto& size : sizes) {
        portions += size.servings * size.bags;
    }
    for (auto& size : sizes) {
        size.size->portions = portions;
    }
}

/// The least of what the sizes say of themselves; nothing where none does.
template <class Value>
std::optional<Value> least(const std::vector<Package>& sizes,
                           std::optional<Value> Package::*member) {
    std::optional<Value> found;
    for (const auto& size : sizes) {
        const auto& value = size.*member;
        if (value && (!found || *value < *found)) {
            found = value;
        }
    }
    return found;
}

void set_least(std::vector<Package>& sizes) {
    const auto lightest = least(sizes, &Package::weight);
    const auto thinnest = least(sizes, &Package::thickness);
    for (auto& size : sizes) {
        size.size->lightest = lightest;
        size.size->thinnest = thinnest;
    }
}

/// What is added to a bag, for one of another size than it is written for.
void share_out(Package& size, int written_for) {
    const auto factor =
        kitchen::Amount{size.servings, std::max(written_for, 1)}; // 0: not read, and told
    for (auto& finish : size.finish) {
        finish.add = kitchen::in_proportion(finish.add, factor);
    }
    for (auto& side : size.sides) {
        side.add = kitchen::in_proportion(side.add, factor);
    }
}

} // namespace

void read_bag(Table& table, Package& package) {
    const Key servings{"servings", "6"};
    const auto take = [](auto& value, auto given) {
        if (given) {
            value = static_cast<std::decay_t<decltype(value)>>(std::move(*given));
        }
    };
    take(package.servings, table.integer(servings, {1, Limits::servings}));
    take(package.bags, table.integer({"bags", "3"}, {1, Limits::bags}));
    take(package.weight, read_mass(table, {"weight", "\"2.2 kg\""}, Limits::grams));
    take(package.thickness,
         table.length({"thickness", "\"30 mm\""}, {millimetres(Limits::millimetres.least),
                                                   millimetres(Limits::millimetres.most)}));
    take(package.container,
         read_container(table, {"container", "\"20 x 28 cm\""}, Limits::container_millimetres));
    take(package.placing, read_choice(table, {"placing", "\"tray\""}, "a placing", placings()));
    take(package.place, table.line({"place", "\"garage, basket 2\""}, Limits::text_characters));
}

std::vector<Package> in_sizes(Table& table, const Package& package) {
    auto tables = table.tables(size_key(), Limits::sizes);
    const Key servings{"servings", "6"};
    if (tables.empty()) {
        table.require(servings);
        auto alone = package;
        alone.servings = std::max(alone.servings, 1); // where it is missing, that is reported
        return {std::move(alone)};
    }
    refuse_beside_sizes(table);
    std::vector<Package> sizes;
    for (auto& each : tables) {
        auto size = package;
        size.bags = 1;
        size.weight.reset();
        if (!table.has(servings)) {
            each.require(servings);
        }
        read_bag(each, size);
        each.refuse_unknown();
        size.size = {static_cast<int>(sizes.size()), name_of(size, sizes), 0, each.path()};
        sizes.push_back(std::move(size));
    }
    const int written_for = package.servings > 0 ? package.servings : sizes.front().servings;
    for (auto& size : sizes) {
        share_out(size, written_for);
    }
    set_portions(sizes);
    set_least(sizes);
    return sizes;
}

void refuse_twin_sizes(toml::Reader& reader, const kitchen::Day& day) {
    const auto& packages = day.packages;
    for (auto size = packages.begin(); size != packages.end(); ++size) {
        const auto twin = std::find_if(packages.begin(), size, [&](const Package& before) {
            return before.size && before.where == size->where && before.servings == size->servings;
        });
        if (!size->size || size->servings < 1 || twin == size) {
            continue;
        }
        reader.error(size->size->where.key("servings"),
                     fmt::format("another size of this dish serves {} too: expected a number of "
                                 "servings that no other size has, for bags are known by it",
                                 size->servings),
                     {fmt::format("bags that serve as many are of one size: bags = {} in the first "
                                  "[[package.size]] of both",
                                  twin->bags + size->bags)});
    }
}

} // namespace thawslip::intake
