#include "code/recover/local.h"

#include "code/sample.h"

#include <cmath>

namespace thawslip::code {
namespace {

/// Least squares: sums for the three normal equations of either axis.
class LocalFit {
public:
    LocalFit(const std::vector<Known>& known, Place around, double reach) {
        for (const auto& each : known) {
            const double x = each.module.x - around.x;
            const double y = each.module.y - around.y;
            const double distance = (x * x + y * y) / (2.0 * reach * reach);
            add(x, y, each.seen, each.weight * std::exp(-distance));
        }
    }
    /// Nothing where what is known lies on a line.
    std::optional<Local> local() const {
        const auto x = solved(to_x_);
        const auto y = solved(to_y_);
        if (!x || !y) {
            return std::nullopt;
        }
        return Local{{(*x)[0], (*y)[0]}, {(*x)[1], (*y)[1]}, {(*x)[2], (*y)[2]}};
    }

private:
    using Three = std::array<double, 3>;

    void add(double x, double y, Place seen, double weight) {
        const Three terms{1.0, x, y};
        for (std::size_t i = 0; i < 3; ++i) {
            for (std::size_t j = 0; j < 3; ++j) {
                normal_[i][j] += weight * terms[i] * terms[j];
            }
            to_x_[i] += weight * terms[i] * seen.x;
            to_y_[i] += weight * terms[i] * seen.y;
        }
    }
    static double determinant(const std::array<Three, 3>& m) {
        return m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1]) -
               m[0][1] * (m[1][0] * m[2][2] - m[1][2] * m[2][0]) +
               m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0]);
    }
    std::optional<Three> solved(const Three& right) const {
        const double whole = determinant(normal_);
        if (!(std::abs(whole) > 1e-12)) {
            return std::nullopt;
        }
        Three result{};
        for (std::size_t i = 0; i < 3; ++i) {
            auto replaced = normal_;
            for (std::size_t row = 0; row < 3; ++row) {
                replaced[row][i] = right[row];
            }
            result[i] = determinant(replaced) / whole;
        }
        return result;
    }

    std::array<Three, 3> normal_{};
    Three to_x_{};
    Three to_y_{};
};

} // namespace

Place moved(const Local& from, double across, double down) {
    return {from.middle.x + across * from.across.x + down * from.down.x,
            from.middle.y + across * from.across.y + down * from.down.y};
}

double grey_at(const GreyPicture& picture, Place place) {
    return sample(picture, place.x - 0.5, place.y - 0.5);
}

std::optional<Local> local_fit(const std::vector<Known>& known, Place around, double reach) {
    return LocalFit{known, around, reach}.local();
}

} // namespace thawslip::code
