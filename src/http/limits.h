#pragma once

#include <chrono>
#include <cstddef>

namespace thawslip::http {

/// What is taken from a client at most. Whoever asks for more is answered, and the connection ends.
struct Limits {
    std::size_t url = 2U << 10U;      ///< bytes of the target as it is sent
    std::size_t headers = 32U << 10U; ///< all of them together
    std::size_t body = 8U << 20U;     ///< of any request; `BodyLimit` may say less of its path
    /// Of a body that nobody wants: so much is read over, so that the refusal arrives.
    std::size_t read_over = 64U << 20U;
    unsigned connections = 32;
    std::chrono::milliseconds headers_in{
        5'000}; ///< from the request's beginning, however it dribbles
    std::chrono::milliseconds body_in{30'000};    ///< from the end of its headers
    std::chrono::milliseconds answer_out{60'000}; ///< from the answer's beginning
    std::chrono::milliseconds idle{10'000};       ///< from an answer to the next request
};

} // namespace thawslip::http
