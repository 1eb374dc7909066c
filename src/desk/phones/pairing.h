#pragma once

#include <chrono>
#include <string>
#include <string_view>

namespace thawslip::desk {

using SteadyTime = std::chrono::steady_clock::time_point;

/// A code that lets one phone in: eight of Crockford's 32 symbols (kitchen/bag_id.h), in fours.
/// \param random hexadecimal digits that nobody can guess, at least 16
std::string pairing_code(std::string_view random);

/// A code as somebody typed it: without dashes and blanks, in capitals, look-alikes read as what
/// they look like (Douglas Crockford, "Base 32", crockford.com/base32: O is 0, I and L are 1).
std::string typed_code(std::string_view text);

/// What a code is worth: it lets in one phone, within two minutes, before five tries were wrong.
class Pairing {
public:
    static constexpr std::chrono::seconds lasts{120};
    static constexpr int most_tries = 5;

    Pairing(std::string code, SteadyTime now);

    const std::string& code() const { return code_; }
    bool is_open(SteadyTime now) const;
    /// Until it ends by itself; none where it has ended.
    std::chrono::seconds left(SteadyTime now) const;
    /// Tries a code: the right one uses it up, a wrong one is a try less.
    /// \returns whether the phone is let in
    bool lets_in(std::string_view typed, SteadyTime now);

private:
    std::string code_;
    SteadyTime until_;
    int tries_left_ = most_tries;
};

/// How often something is tried, by whomever: no more than `most` times within `span`.
class Tries {
public:
    Tries(int most, std::chrono::seconds span) : most_{most}, span_{span} {}
    /// \returns whether one more is allowed, which then counts
    bool allow(SteadyTime now);

private:
    int most_;
    std::chrono::seconds span_;
    SteadyTime since_ = {};
    int count_ = 0;
};

} // namespace thawslip::desk
