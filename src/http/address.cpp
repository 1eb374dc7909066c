#include "http/address.h"

#include <algorithm>
#include <arpa/inet.h>
#include <array>
#include <cstdint>
#include <netinet/in.h>
#include <sys/socket.h>

namespace thawslip::http {
namespace {

struct Network {
    std::uint32_t first;
    int bits; ///< that all of its addresses have in common
};

constexpr std::array private_networks = {Network{0x0A'00'00'00, 8},   // 10.0.0.0
                                         Network{0xAC'10'00'00, 12},  // 172.16.0.0
                                         Network{0xC0'A8'00'00, 16},  // 192.168.0.0
                                         Network{0xA9'FE'00'00, 16}}; // 169.254.0.0

} // namespace

bool is_private_address(const std::string& address) {
    in_addr bytes = {};
    if (inet_pton(AF_INET, address.c_str(), &bytes) != 1) {
        return false;
    }
    const auto number = ntohl(bytes.s_addr);
    return std::any_of(private_networks.begin(), private_networks.end(),
                       [&](const Network& network) {
                           return (number ^ network.first) >> (32 - network.bits) == 0;
                       });
}

std::string text_of(const sockaddr* address) {
    if (address == nullptr || address->sa_family != AF_INET) {
        return {};
    }
    std::array<char, INET_ADDRSTRLEN> text{};
    const auto* four = reinterpret_cast<const sockaddr_in*>(address);
    inet_ntop(AF_INET, &four->sin_addr, text.data(), text.size());
    return text.data();
}

} // namespace thawslip::http
