#pragma once

#include <vector>

/// A numerical model of freezing and thawing that shares no code and no formula with src/: the
/// heat equation in enthalpy form, in finite volumes, stepped explicitly. It knows nothing of
/// Plank, Pham or Cleland, so what it says of them is evidence.
namespace thawslip::oracle {

/// Water 75 %, freezing point −1.5 °C, 95 % of the water freezable.
struct Food {
    double density = 1050.0;
    double water = 0.75;
    double freezing_point = -1.5;
    double heat_unfrozen = 3500.0;
    double heat_frozen = 2000.0;
    double conductivity_unfrozen = 0.5;
    double conductivity_frozen = 1.5;
};

double enthalpy(const Food& food, double celsius);     ///< J/kg, 0 at 0 °C
double conductivity(const Food& food, double celsius); ///< W/(m K)

/// A flat piece between two faces. Without a diameter it is endless sideways.
struct Piece {
    double thickness = 0.0; ///< m
    double diameter = 0.0;  ///< m; 0 for a slab
};

/// How it is warmed or cooled: all over, from `start` °C until the last of its axis passes `core`
/// °C. The face it lies on may get only a share of the coefficient: 0 on an insulator.
struct Treatment {
    double start = 0.0;
    double medium = 0.0;
    double coefficient = 0.0; ///< W/(m² K)
    double core = 0.0;
    double under_share = 1.0;
};

/// What a course took, in hours.
struct Course {
    double whole = 0.0;       ///< until the last of the axis is there
    double face_warmer = 0.0; ///< of these, how long the upper face was warmer than asked
};

class Model {
public:
    explicit Model(const Food& food = {});

    /// Hours until the middle reaches `core`; gives up, with infinity, after 2000 h.
    /// \param cells number of volumes from a face to the middle plane, and to the rim of a disc
    double hours_until(const Piece& piece, const Treatment& treatment, int cells) const;

    /// The same, and how long the middle of the upper face was warmer than `limit` °C meanwhile.
    Course course(const Piece& piece, const Treatment& treatment, int cells, double limit) const;

    struct State {
        double celsius;
        double conductivity;
    };
    State at(double enthalpy) const; ///< the inverse of `enthalpy`, −45 to 80 °C

    const Food& food() const { return food_; }

private:
    Food food_;
    double lowest_;
    double step_;
    std::vector<State> states_; ///< evenly over the enthalpy
};

} // namespace thawslip::oracle
