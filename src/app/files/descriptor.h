#pragma once

#include <string_view>

namespace thawslip::app {

/// The number of an open file, which is closed with the object, or before; -1: none is open.
class Descriptor {
public:
    explicit Descriptor(int number) : number_{number} {}
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;
    ~Descriptor() { close(); }

    int number() const { return number_; }
    void close();

private:
    int number_;
};

/// Writes all bytes. \returns whether they were taken; errno(3) says why not
bool write_all(int descriptor, std::string_view bytes);

} // namespace thawslip::app
