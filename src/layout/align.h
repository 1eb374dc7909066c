#pragma once

namespace thawslip::layout {

enum class Align { Left, Centre, Right };
enum class Stand { Top, Middle, Bottom };

/// How much of what is to spare lies before a thing that is aligned so.
constexpr double share_before(Align align) {
    return align == Align::Left ? 0.0 : align == Align::Centre ? 0.5 : 1.0;
}
constexpr double share_before(Stand stand) {
    return stand == Stand::Top ? 0.0 : stand == Stand::Middle ? 0.5 : 1.0;
}

} // namespace thawslip::layout
