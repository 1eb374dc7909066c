#include "intake/placing.h"

namespace thawslip::intake {

std::span<const toml::Choice<kitchen::Placing>> placings() {
    using kitchen::Placing;
    static const toml::Choice<Placing> all[] = {
        {Placing::Rack, {"rack", {"on a rack", "wire rack", "wire shelf"}}},
        {Placing::Tray, {"tray", {"on a tray", "plate", "on a plate", "glass shelf"}}},
        {Placing::Stacked, {"stacked", {"in a stack", "stack", "pile"}}}};
    return all;
}

} // namespace thawslip::intake
