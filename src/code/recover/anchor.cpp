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

Local settled(const GreyPicture& picture, Local local) {
    double best = likeness(picture, local);
    const double size = std::hypot(local.across.x, local.across.y);
    const auto try_moved = [&](double& value, double by) {
        const double before = value;
        value += by;
        const double now = likeness(picture, local);
        if (now > best) {
            best = now;
            return true;
        }
        value = before;
        return false;
    };
    for (double step = 0.2; step > 0.02; step /= 2.0) {
        for (int round = 0; round < 4; ++round) {
            bool better = false;
            for (Place Local::*part : {&Local::middle, &Local::across, &Local::down}) {
                const double by = step * size * (part == &Local::middle ? 1.0 : 0.25);
                for (double Place::*axis : {&Place::x, &Place::y}) {
                    better = try_moved((local.*part).*axis, by) ||
                             try_moved((local.*part).*axis, -by) || better;
                }
            }
            if (!better) {
                break;
            }
        }
    }
    return local;
}

} // namespace thawslip::code
