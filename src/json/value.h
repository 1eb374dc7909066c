#pragma once

#include "json/json.h"

#include <functional>
#include <nlohmann/json.hpp>

// Made once, in json.cpp: of what compiles slowly here, most is this class.
extern template class nlohmann::basic_json<nlohmann::ordered_map>;

namespace thawslip::json {

/// A list of what `of` makes of each element, in their order.
template <class Range, class Of>
Json list_of(Range&& range, Of of) {
    auto list = Json::array();
    for (auto&& value : range) {
        list.push_back(std::invoke(of, value));
    }
    return list;
}

} // namespace thawslip::json
