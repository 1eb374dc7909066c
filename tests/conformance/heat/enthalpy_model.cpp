#include "conformance/heat/enthalpy_model.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>
#include <vector>

namespace thawslip::oracle {

namespace {

constexpr int table_size = 5000;

/// Rings of a disc (columns) by layers from its upper face (rows): to its middle plane where both
/// faces are alike, else to the face it lies on. A slab is the one ring whose outer edge passes no
/// heat.
class Grid {
public:
    Grid(const Model& model, const Piece& piece, double under_share, int cells)
        : layers_{under_share == 1.0 ? cells : 2 * cells}, rings_{piece.diameter > 0.0 ? cells : 1},
          depth_{piece.thickness / 2.0 / cells}, under_share_{under_share == 1.0 ? 0.0
                                                                                 : under_share},
          width_{piece.diameter > 0.0 ? piece.diameter / 2.0 / cells : 1.0},
          open_rim_{piece.diameter > 0.0}, density_{model.food().density}, model_{model},
          enthalpy_(static_cast<std::size_t>(layers_ * rings_)), state_(enthalpy_.size()) {}

    void fill(double enthalpy_now) { std::fill(enthalpy_.begin(), enthalpy_.end(), enthalpy_now); }

    double longest_step() const {
        const Food& food = model_.food();
        const double spread = 1.0 / (depth_ * depth_) + (open_rim_ ? 2.0 / (width_ * width_) : 0.0);
        return 0.9 * food.density * food.heat_frozen / (2.0 * food.conductivity_frozen * spread);
    }

    void look_up() {
        for (std::size_t i = 0; i < enthalpy_.size(); ++i)
            state_[i] = model_.at(enthalpy_[i]);
    }
    double coldest() const { return *ends().first; }
    double warmest() const { return *ends().second; }

    /// The middle of the upper face, where as much heat arrives from outside as goes inward.
    double face(double medium, double coefficient) const {
        const double inward = 2.0 * state_[0].conductivity / depth_;
        return (coefficient * medium + inward * state_[0].celsius) / (coefficient + inward);
    }

    /// One step: heat through every wall between volumes, then through the open faces.
    void advance(double seconds, double medium, double coefficient) {
        for (int layer = 0; layer < layers_; ++layer) {
            for (int ring = 0; ring < rings_; ++ring) {
                const std::size_t here = index(layer, ring);
                // Per unit of angle: volume and horizontal wall of this ring.
                const double wall = (ring + 0.5) * width_ * width_;
                const double volume = wall * depth_;
                if (layer + 1 < layers_)
                    exchange(here, index(layer + 1, ring), wall / depth_, {volume, volume},
                             seconds);
                if (layer == 0)
                    warm(here, wall, depth_, {medium, coefficient}, seconds / volume);
                if (layer + 1 == layers_ && under_share_ > 0.0)
                    warm(here, wall, depth_, {medium, coefficient * under_share_},
                         seconds / volume);
                const double rim = (ring + 1.0) * width_ * depth_;
                if (ring + 1 < rings_) {
                    const double outer = (ring + 1.5) * width_ * width_ * depth_;
                    exchange(here, index(layer, ring + 1), rim / width_, {volume, outer}, seconds);
                } else if (open_rim_) {
                    warm(here, rim, width_, {medium, coefficient}, seconds / volume);
                }
            }
        }
    }

private:
    struct Volumes {
        double here;
        double there;
    };
    struct Medium {
        double celsius;
        double coefficient;
    };

    /// Coldest and warmest of the axis.
    std::pair<const double*, const double*> ends() const {
        const double* coldest = &state_[0].celsius;
        const double* warmest = coldest;
        for (int layer = 1; layer < layers_; ++layer) {
            const double* here = &state_[index(layer, 0)].celsius;
            coldest = *here < *coldest ? here : coldest;
            warmest = *here > *warmest ? here : warmest;
        }
        return {coldest, warmest};
    }

    std::size_t index(int layer, int ring) const {
        return static_cast<std::size_t>(layer * rings_ + ring);
    }

    void exchange(std::size_t here, std::size_t there, double wall_over_distance, Volumes volumes,
                  double seconds) {
        const double a = state_[here].conductivity;
        const double b = state_[there].conductivity;
        const double heat = 2.0 * a * b / (a + b) * wall_over_distance *
                            (state_[there].celsius - state_[here].celsius) * seconds / density_;
        enthalpy_[here] += heat / volumes.here;
        enthalpy_[there] -= heat / volumes.there;
    }

    void warm(std::size_t here, double wall, double size, Medium medium,
              double seconds_per_volume) {
        const double resistance = 1.0 / medium.coefficient + size / 2.0 / state_[here].conductivity;
        enthalpy_[here] += wall / resistance * (medium.celsius - state_[here].celsius) *
                           seconds_per_volume / density_;
    }

    int layers_;
    int rings_;
    double depth_;
    double under_share_;
    double width_;
    bool open_rim_;
    double density_;
    const Model& model_;
    std::vector<double> enthalpy_;
    std::vector<Model::State> state_;
};

} // namespace

double enthalpy(const Food& food, double celsius) {
    if (celsius >= food.freezing_point)
        return food.heat_unfrozen * celsius;
    const double liquid = food.freezing_point / celsius; // share of the water that is not ice
    const double ice = food.water * 0.95 * (1.0 - liquid) * 333.6e3;
    const double cooling = food.heat_frozen * (food.freezing_point - celsius);
    const double of_the_liquid = (food.heat_unfrozen - food.heat_frozen) * -food.freezing_point *
                                 std::log(celsius / food.freezing_point);
    return food.heat_unfrozen * food.freezing_point - ice - cooling - of_the_liquid;
}

double conductivity(const Food& food, double celsius) {
    if (celsius >= food.freezing_point)
        return food.conductivity_unfrozen;
    return food.conductivity_frozen +
           (food.conductivity_unfrozen - food.conductivity_frozen) * food.freezing_point / celsius;
}

Model::Model(const Food& food)
    : food_{food}, lowest_{enthalpy(food, -45.0)}, step_{(enthalpy(food, 80.0) - lowest_) /
                                                         table_size} {
    double low = -45.0;
    for (int i = 0; i <= table_size; ++i) {
        const double wanted = lowest_ + step_ * i;
        double high = 81.0;
        for (int halving = 0; halving < 45; ++halving) {
            const double middle = (low + high) / 2.0;
            (enthalpy(food, middle) <= wanted ? low : high) = middle;
        }
        states_.push_back({low, conductivity(food, low)});
    }
}

Model::State Model::at(double enthalpy) const {
    const double position = (enthalpy - lowest_) / step_;
    const auto index = std::clamp(static_cast<int>(position), 0, table_size - 1);
    const double share = position - index;
    const State& below = states_[static_cast<std::size_t>(index)];
    const State& above = states_[static_cast<std::size_t>(index) + 1];
    return {below.celsius + share * (above.celsius - below.celsius),
            below.conductivity + share * (above.conductivity - below.conductivity)};
}

double Model::hours_until(const Piece& piece, const Treatment& treatment, int cells) const {
    return course(piece, treatment, cells, treatment.core).whole;
}

Course Model::course(const Piece& piece, const Treatment& treatment, int cells,
                     double limit) const {
    Grid grid{*this, piece, treatment.under_share, cells};
    grid.fill(enthalpy(food_, treatment.start));
    const double step = grid.longest_step();
    const bool warming = treatment.medium > treatment.start;
    double warmer = 0.0;
    for (double seconds = 0.0; seconds < 2000.0 * 3600.0; seconds += step) {
        grid.look_up();
        if (warming ? grid.coldest() >= treatment.core : grid.warmest() <= treatment.core)
            return {seconds / 3600.0, warmer / 3600.0};
        if (grid.face(treatment.medium, treatment.coefficient) > limit)
            warmer += step;
        grid.advance(step, treatment.medium, treatment.coefficient);
    }
    return {std::numeric_limits<double>::infinity(), warmer / 3600.0};
}

} // namespace thawslip::oracle
