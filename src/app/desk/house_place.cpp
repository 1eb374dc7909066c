#include "app/desk/house_place.h"

#include "base/number_in.h"
#include "base/printable.h"
#include "http/address.h"

#include <algorithm>
#include <fmt/format.h>
#include <ifaddrs.h>
#include <optional>

namespace thawslip::app {
namespace {

std::optional<int> read_port(std::string_view text) {
    constexpr int highest = 65'535;
    const auto port = number_in<int>(text);
    return port && *port > 0 && *port <= highest ? port : std::nullopt;
}

/// The nearest valid choice.
std::string choices(const std::vector<std::string>& own) {
    std::vector<std::string> right;
    std::copy_if(own.begin(), own.end(), std::back_inserter(right), http::is_private_address);
    return right.empty() ? "this computer has none: is it connected to the house's network?"
                         : fmt::format("this computer has {}", fmt::join(right, " and "));
}

} // namespace

Result<http::Place, std::string> house_place(const std::string& text,
                                             const std::vector<std::string>& own) {
    const auto colon = text.find(':');
    const auto port = colon == std::string::npos
                          ? std::optional{usual_house_port}
                          : read_port(std::string_view{text}.substr(colon + 1));
    const auto address = text.substr(0, colon);
    if (!port || !http::is_private_address(address)) {
        return Failure{
            fmt::format("{} is no address of the house's own network, expected one such as "
                        "192.168.1.20 or 192.168.1.20:8123; {}",
                        in_quotes(text), choices(own))};
    }
    if (std::find(own.begin(), own.end(), address) == own.end()) {
        return Failure{fmt::format("{} is no address of this computer; {}", address, choices(own))};
    }
    return http::Place{address, *port};
}

std::vector<std::string> own_addresses() {
    std::vector<std::string> addresses;
    ifaddrs* first = nullptr;
    if (::getifaddrs(&first) != 0) {
        return addresses;
    }
    for (const auto* one = first; one != nullptr; one = one->ifa_next) {
        if (auto text = http::text_of(one->ifa_addr); !text.empty()) {
            addresses.push_back(std::move(text));
        }
    }
    ::freeifaddrs(first);
    return addresses;
}

} // namespace thawslip::app
