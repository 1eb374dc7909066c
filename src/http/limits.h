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
    /// Of those, so many may be answers that go on: the rest is left to those who ask.
    unsigned streams = 16;
    /// And so many by who has one key: a browser opens six connections to one place, for all of its
    /// windows together, and some of them must be left to it.
    unsigned streams_of_one = 3;
    std::chrono::milliseconds headers_in{
        5'000}; ///< from the request's beginning, however it dribbles
    std::chrono::milliseconds body_in{30'000}; ///< from the end of its headers
    /// From the answer's beginning; of one that goes on, from each piece's.
    std::chrono::milliseconds answer_out{60'000};
    /// Of one that goes on, until the client's computer must have said that it got a piece.
    std::chrono::milliseconds heard_of{20'000};
    std::chrono::milliseconds idle{10'000}; ///< from an answer to the next request
};

} // namespace thawslip::http
