#pragma once

#include <cstdlib>
#include <optional>
#include <string>

namespace thawslip::test_support {

/// A variable of the environment has a value, or none, as long as this lives.
class Variable {
public:
    Variable(const char* name, const std::optional<std::string>& value) : name_{name} {
        if (const char* before = std::getenv(name)) {
            before_ = before;
        }
        set(value);
    }
    Variable(const Variable&) = delete;
    Variable& operator=(const Variable&) = delete;
    ~Variable() { set(before_); }

private:
    void set(const std::optional<std::string>& value) const {
        if (value) {
            ::setenv(name_, value->c_str(), 1);
        } else {
            ::unsetenv(name_);
        }
    }

    const char* name_;
    std::optional<std::string> before_;
};

} // namespace thawslip::test_support
