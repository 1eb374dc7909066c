#include "http/message.h"

namespace thawslip::http {

std::string header_of(const Request& request, const std::string& name) {
    const auto found = request.headers.find(name);
    return found == request.headers.end() ? std::string{} : found->second;
}

} // namespace thawslip::http
