#include "desk/phones/pairing_picture.h"

#include "code/symbol.h"

#include <fmt/format.h>

namespace thawslip::desk {
namespace {

/// Each dark module as a square of the path.
std::string path_of(const code::Symbol& symbol) {
    std::string path;
    for (std::size_t at = 0; at < symbol.dark.size(); ++at) {
        if (symbol.dark[at]) {
            path += fmt::format("M{} {}h1v1h-1z", at % symbol.side + code::quiet_zone_modules,
                                at / symbol.side + code::quiet_zone_modules);
        }
    }
    return path;
}

} // namespace

std::string pairing_picture(const std::string& link) {
    // A screen is no label: any size will do, and a module is a whole number of its dots.
    const auto sized =
        code::choose_symbol({link}, Length::millimetres(100), {100}, Length::millimetres(0.5));
    if (!sized) {
        return {};
    }
    const auto& symbol = sized.value().symbol;
    const auto side = symbol.side + 2 * code::quiet_zone_modules;
    return fmt::format(R"(<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {0} {0}" )"
                       R"(width="{1}" height="{1}" shape-rendering="crispEdges">)"
                       R"(<path fill="#fff" d="M0 0h{0}v{0}H0z"/><path d="{2}"/></svg>)",
                       side, side * 8, path_of(symbol));
}

} // namespace thawslip::desk
