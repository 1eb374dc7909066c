#include "app/files/descriptor.h"

#include <cerrno>
#include <cstddef>
#include <unistd.h>

namespace thawslip::app {

void Descriptor::close() {
    if (number_ >= 0) {
        ::close(number_);
    }
    number_ = -1;
}

bool write_all(int descriptor, std::string_view bytes) {
    while (!bytes.empty()) {
        const auto written = ::write(descriptor, bytes.data(), bytes.size());
        if (written < 0 && errno != EINTR) {
            return false;
        }
        bytes.remove_prefix(written > 0 ? static_cast<std::size_t>(written) : 0);
    }
    return true;
}

} // namespace thawslip::app
