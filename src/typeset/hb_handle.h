#pragma once

#include <memory>

namespace thawslip::typeset {

/// Owns one reference to a HarfBuzz object.
template <auto destroy>
struct HbRelease {
    template <class T>
    void operator()(T* object) const {
        destroy(object);
    }
};
template <class T, auto destroy>
using HbHandle = std::unique_ptr<T, HbRelease<destroy>>;

} // namespace thawslip::typeset
