#pragma once

#include "conformance/heat/enthalpy_model.h"
#include "kitchen/heat/heat_properties.h"

namespace thawslip::test_support {

/// A soup as kitchen::soup() has it, in the model's terms.
inline oracle::Food soup_in_model() {
    const auto food = kitchen::soup();
    return {.density = food.density,
            .water = 0.88,
            .freezing_point = food.freezing_point,
            .heat_unfrozen = food.heat_unfrozen,
            .heat_frozen = food.heat_frozen,
            .conductivity_unfrozen = food.conductivity_unfrozen,
            .conductivity_frozen = food.conductivity_frozen};
}

} // namespace thawslip::test_support
