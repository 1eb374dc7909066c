#include "http/refusal.h"

#include <fmt/format.h>

namespace thawslip::http {

Response refusal(int status, const std::string& words) {
    return {status,
            "application/json",
            fmt::format(R"({{"messages":[{{"severity":"error","text":"{}","hints":[],"key":"",)"
                        R"("line":0,"column":0,"length":0}}]}})",
                        words),
            {}};
}

Response last_refusal(int status, const std::string& words) {
    auto response = refusal(status, words);
    response.headers.emplace_back("Connection", "close");
    return response;
}

} // namespace thawslip::http
