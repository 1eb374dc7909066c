#include "app/desk/door.h"

#include "app/desk/once_code.h"
#include "desk/answers.h"
#include "desk/body.h"
#include "json/value.h"

#include <string_view>

namespace thawslip::app {
namespace {

constexpr std::string_view key_path = "/api/key";

} // namespace

Door::Door(desk::Desk& desk, std::string key, std::string codes)
    : desk_{desk}, key_{std::move(key)}, codes_{std::move(codes)} {}

http::Guard Door::guard() const {
    return {{}, http::one_key(key_), {std::string{key_path}}};
}

http::Response Door::answer(const http::Request& request) const {
    return request.path == key_path ? key_for(request) : desk_.answer(request);
}

http::Response Door::key_for(const http::Request& request) const {
    if (request.method != http::Method::Post) {
        return desk::refusal(405, "this is asked for in another way");
    }
    try {
        const auto code = desk::needed_text(desk::body_of(request), "once");
        return use_code(codes_, code)
                   ? desk::answer_with({{"key", key_}})
                   : desk::refusal(401, "this link was used already: start the desk again, and it "
                                        "opens its page");
    } catch (const desk::BadRequest& bad) {
        return desk::refusal(400, bad.what());
    }
}

} // namespace thawslip::app
