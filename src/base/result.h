#pragma once

#include <cassert>
#include <utility>
#include <variant>

namespace thawslip {

/// Wraps a fault so that Result<T, E> can tell it from a value, even where T is E.
template <class E>
struct Failure {
    E fault;
};
template <class E>
Failure(E) -> Failure<E>;

/// A value, or why there is none. (std::expected is C++23; the compilers we support lack it.)
template <class T, class E>
class [[nodiscard]] Result {
public:
    Result(T value) : state_{std::in_place_index<0>, std::move(value)} {} // NOLINT: implicit
    Result(Failure<E> failure)                                            // NOLINT: implicit
        : state_{std::in_place_index<1>, std::move(failure.fault)} {}

    bool ok() const { return state_.index() == 0; }
    explicit operator bool() const { return ok(); }

    /// \pre ok()
    const T& value() const& {
        assert(ok() && "value() of a failed Result");
        return std::get<0>(state_);
    }
    T&& value() && {
        assert(ok() && "value() of a failed Result");
        return std::get<0>(std::move(state_));
    }
    /// \pre not ok()
    const E& fault() const& {
        assert(!ok() && "fault() of a Result that has a value");
        return std::get<1>(state_);
    }
    T value_or(T fallback) const { return ok() ? std::get<0>(state_) : std::move(fallback); }

private:
    std::variant<T, E> state_;
};

} // namespace thawslip
