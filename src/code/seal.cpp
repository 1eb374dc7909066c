#include "code/seal.h"

namespace thawslip::code {

unsigned crc15(std::string_view text) {
    constexpr unsigned polynomial = 0x4599;
    unsigned crc = 0;
    for (const char c : text) {
        crc ^= static_cast<unsigned>(static_cast<unsigned char>(c)) << 7U;
        for (int bit = 0; bit < 8; ++bit) {
            crc = (crc << 1U) ^ ((crc & 0x4000U) != 0 ? polynomial : 0U);
        }
        crc &= 0x7FFFU;
    }
    return crc;
}

std::string check_characters(std::string_view text) {
    constexpr std::string_view symbols = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
    const unsigned crc = crc15(text);
    return {symbols[crc >> 10U], symbols[(crc >> 5U) & 31U], symbols[crc & 31U]};
}

} // namespace thawslip::code
