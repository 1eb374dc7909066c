#pragma once

#include <unistd.h>

namespace thawslip::test_support {

/// As long as it lives, root is nobody, to whom things can be forbidden; anybody else stays.
class AsNobody {
public:
    static constexpr unsigned id = 65534; ///< "nobody" (Debian Policy, 9.2.2)

    AsNobody()
        : was_root_{::geteuid() == 0}, is_forbidden_{!was_root_ || ::setresuid(id, id, 0) == 0} {}
    AsNobody(const AsNobody&) = delete;
    AsNobody& operator=(const AsNobody&) = delete;
    ~AsNobody() {
        if (was_root_ && is_forbidden_ && ::setresuid(0, 0, 0) != 0) {
            ::_exit(127); // nothing after it would mean what it says
        }
    }
    /// Whether the system let root become nobody.
    bool worked() const { return is_forbidden_; }

private:
    bool was_root_;
    bool is_forbidden_;
};

} // namespace thawslip::test_support
