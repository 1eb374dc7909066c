#include "code/recover/anchor.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace thawslip::code {

double likeness(const GreyPicture& picture, const Local& local) {
    constexpr int reach = 4;
    double dark = 0.0;
    double light = 0.0;
    for (int y = -reach; y <= reach; ++y) {
        for (int x = -reach; x <= reach; ++x) {
            const int ring = std::max(std::abs(x), std::abs(y));
            const double value = grey_at(picture, moved(local, x, y));
            (ring == 2 || ring == 4 ? light : dark) += value;
        }
    }
    constexpr double dark_modules = 33.0; // 9 and 24
    constexpr double light_modules = 48.0;
    return (light / light_modules - dark / dark_modules) / 200.0;
}

namespace {

/// Moves each number of `local` by a step, where the picture is more like an anchor then.
class Settling {
public:
    Settling(const GreyPicture& picture, Local& local) : picture_{picture}, local_{local} {}

    /// \param step in modules \returns whether anything was moved
    bool move_all(double step) {
        bool better = false;
        for (Place Local::*part : {&Local::middle, &Local::across, &Local::down}) {
            const double by = step * size_ * (part == &Local::middle ? 1.0 : 0.25);
            for (double Place::*axis : {&Place::x, &Place::y}) {
                double& value = (local_.*part).*axis;
                better = is_better_moved(value, by) || is_better_moved(value, -by) || better;
            }
        }
        return better;
    }

private:
    bool is_better_moved(double& value, double by) {
        const double before = value;
        value += by;
        const double now = likeness(picture_, local_);
        if (now > best_) {
            best_ = now;
            return true;
        }
        value = before;
        return false;
    }

    const GreyPicture& picture_;
    Local& local_;
    double best_ = likeness(picture_, local_);
    double size_ = std::hypot(local_.across.x, local_.across.y); ///< of a module, in pixels
};

} // namespace

Local settled(const GreyPicture& picture, Local local) {
    Settling settling{picture, local};
    for (const double step : {0.2, 0.1, 0.05, 0.025}) {
        for (int round = 0; round < 4 && settling.move_all(step); ++round) {
        }
    }
    return local;
}

} // namespace thawslip::code
