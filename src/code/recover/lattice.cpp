#include "code/recover/lattice.h"

#include "code/capacity.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace thawslip::code {
namespace {

constexpr int spacing = 4; ///< modules from node to node

/// What is known of modules: 1 dark, -1 light, 0 nothing.
std::vector<int> signs_of(int version) {
    const int side = side_of(version);
    std::vector<int> signs(static_cast<std::size_t>(side * side), 0);
    for (const auto& [at, dark] : known_modules(version)) {
        signs[index_of(at, side)] = dark ? 1 : -1;
    }
    return signs;
}

class Lattice {
public:
    Lattice(const GreyPicture& picture, const std::vector<Anchor>& anchors, int version)
        : picture_{picture}, side_{side_of(version)}, signs_{signs_of(version)} {
        for (const auto& anchor : anchors) {
            add(anchor);
        }
    }

    /// Nothing where it leads out of all bounds.
    bool grow() {
        for (const Module node : in_order()) {
            const Place at{node.x + 0.0, node.y + 0.0};
            const auto foretold = local_fit(known_, at, 1.6 * spacing);
            if (!foretold) {
                return false;
            }
            known_.push_back(felt(*foretold, node, 0.6));
        }
        return true;
    }

    /// Each node again, now that its neighbours are known on all sides.
    void settle() {
        const auto before = known_;
        for (auto& node : known_) {
            const auto foretold = local_fit(before, node.module, 1.2 * spacing);
            if (foretold) {
                node =
                    felt(*foretold,
                         {static_cast<int>(node.module.x), static_cast<int>(node.module.y)}, 0.4);
            }
        }
    }

    std::vector<float> sampled() const {
        std::vector<float> values(signs_.size(), 0.0F);
        for (int top = 0; top < side_; top += spacing) {
            for (int left = 0; left < side_; left += spacing) {
                sample({left, top}, values);
            }
        }
        return values;
    }

private:
    /// Reads the square of modules whose first is `first`, all from one fit at its middle.
    void sample(Module first, std::vector<float>& values) const {
        const Place middle{first.x + (spacing - 1) / 2.0, first.y + (spacing - 1) / 2.0};
        const auto local = local_fit(known_, middle, 0.9 * spacing);
        for (int y = first.y; local && y < std::min(first.y + spacing, side_); ++y) {
            for (int x = first.x; x < std::min(first.x + spacing, side_); ++x) {
                values[index_of({x, y}, side_)] =
                    static_cast<float>(module_grey(*local, x - middle.x, y - middle.y));
            }
        }
    }

    void add(const Anchor& anchor) {
        for (const int y : {-3, 0, 3}) {
            for (const int x : {-3, 0, 3}) {
                known_.push_back({{anchor.at.x + x + 0.0, anchor.at.y + y + 0.0},
                                  moved(anchor.local, x, y),
                                  1.0});
            }
        }
        anchors_.push_back(anchor.at);
    }

    /// Every node, those near an anchor first.
    std::vector<Module> in_order() const {
        std::vector<Module> nodes;
        for (int y = spacing / 2; y < side_; y += spacing) {
            for (int x = spacing / 2; x < side_; x += spacing) {
                nodes.push_back({x, y});
            }
        }
        const auto distance = [&](const Module& node) {
            int least = 2 * side_ * side_;
            for (const Module& anchor : anchors_) {
                const int x = node.x - anchor.x;
                const int y = node.y - anchor.y;
                least = std::min(least, x * x + y * y);
            }
            return least;
        };
        std::ranges::stable_sort(nodes, {}, distance);
        return nodes;
    }

    int sign_at(int x, int y) const {
        return is_inside({x, y}, side_) ? signs_[index_of({x, y}, side_)]
                                        : -1; // around it there is paper
    }

    /// How well the picture parts the modules around a node that is seen there: the mean distance
    /// from middle grey, on the right side of it where that is known.
    double parted(const Local& local, Module node, double middle) const {
        constexpr int reach = 3;
        double sum = 0.0;
        for (int y = -reach; y <= reach; ++y) {
            for (int x = -reach; x <= reach; ++x) {
                const double dark = middle - grey_at(picture_, moved(local, x, y));
                const int sign = sign_at(node.x + x, node.y + y);
                sum += sign == 0 ? std::abs(dark) : sign * dark;
            }
        }
        return sum / ((2 * reach + 1) * (2 * reach + 1));
    }

    double middle_around(const Local& local) const {
        constexpr int reach = 4;
        double least = 255.0;
        double most = 0.0;
        for (int y = -reach; y <= reach; ++y) {
            for (int x = -reach; x <= reach; ++x) {
                const double value = grey_at(picture_, moved(local, x, y));
                least = std::min(least, value);
                most = std::max(most, value);
            }
        }
        return (least + most) / 2.0;
    }

    /// The node where the picture parts it best, not far from where it was foretold.
    Known felt(const Local& foretold, Module node, double reach) const {
        constexpr double step = 0.2;
        constexpr double pull = 12.0; ///< grey levels that a module's way off costs
        const double middle = middle_around(foretold);
        const int steps = static_cast<int>(std::lround(reach / step));
        Local best = foretold;
        double best_score = -1e9;
        double best_parted = 0.0;
        for (int y = -steps; y <= steps; ++y) {
            for (int x = -steps; x <= steps; ++x) {
                Local tried = foretold;
                tried.middle = moved(foretold, x * step, y * step);
                const double seen = parted(tried, node, middle);
                const double score = seen - pull * step * step * (x * x + y * y);
                if (score > best_score) {
                    best_score = score;
                    best_parted = seen;
                    best = tried;
                }
            }
        }
        constexpr double clear = 40.0;
        const double weight = std::clamp(best_parted / clear, 0.05, 1.0);
        return {{node.x + 0.0, node.y + 0.0}, best.middle, weight * weight};
    }

    double module_grey(const Local& local, double x, double y) const {
        constexpr double off = 0.22;
        double sum = 0.0;
        for (const double dy : {-off, 0.0, off}) {
            for (const double dx : {-off, 0.0, off}) {
                sum += grey_at(picture_, moved(local, x + dx, y + dy));
            }
        }
        return sum / 9.0;
    }

    const GreyPicture& picture_;
    int side_;
    std::vector<int> signs_;
    std::vector<Known> known_;
    std::vector<Module> anchors_;
};

/// The greys of the modules around one, and its own.
std::vector<float> greys_around(const std::vector<float>& greys, Module at, int side) {
    constexpr int reach = 4;
    std::vector<float> around;
    for (int y = std::max(at.y - reach, 0); y <= std::min(at.y + reach, side - 1); ++y) {
        for (int x = std::max(at.x - reach, 0); x <= std::min(at.x + reach, side - 1); ++x) {
            around.push_back(greys[index_of({x, y}, side)]);
        }
    }
    return around;
}

/// Half way between the mean of those that are lighter than their mean and that of the others.
float middle_grey(const std::vector<float>& greys) {
    float mean = 0.0F;
    for (const float value : greys) {
        mean += value / static_cast<float>(greys.size());
    }
    std::array<float, 2> sums{};
    std::array<float, 2> counts{1e-3F, 1e-3F};
    for (const float value : greys) {
        sums.at(value > mean ? 1 : 0) += value;
        counts.at(value > mean ? 1 : 0) += 1.0F;
    }
    return (sums[0] / counts[0] + sums[1] / counts[1]) / 2.0F;
}

/// Darkness against the middle grey of the modules around.
std::vector<float> darkness_of(const std::vector<float>& greys, int side) {
    std::vector<float> darkness;
    darkness.reserve(greys.size());
    for (int y = 0; y < side; ++y) {
        for (int x = 0; x < side; ++x) {
            darkness.push_back(middle_grey(greys_around(greys, {x, y}, side)) -
                               greys[index_of({x, y}, side)]);
        }
    }
    return darkness;
}

/// From 1, where all that is known of the symbol is seen, to -1.
double agreement(const SeenModules& seen) {
    const int side = side_of(seen.version);
    double agrees = 0.0;
    double all = 1e-9;
    for (const auto& [at, dark] : known_modules(seen.version)) {
        const double darkness = seen.darkness[index_of(at, side)];
        agrees += dark ? darkness : -darkness;
        all += std::abs(darkness);
    }
    return agrees / all;
}

} // namespace

std::optional<SeenModules> seen_from(const GreyPicture& picture, const std::vector<Anchor>& anchors,
                                     int version) {
    Lattice lattice{picture, anchors, version};
    if (!lattice.grow()) {
        return std::nullopt;
    }
    lattice.settle();
    SeenModules seen{version, darkness_of(lattice.sampled(), side_of(version))};
    constexpr double least = 0.45;
    return agreement(seen) > least ? std::optional{std::move(seen)} : std::nullopt;
}

} // namespace thawslip::code
