#include "desk/answers.h"
#include "desk/asset.h"
#include "desk/route.h"
#include "desk/words.h"
#include "json/value.h"

#include <array>
#include <fmt/format.h>

namespace thawslip::desk {
namespace {

http::Response state(Session& session, const Asked&) {
    const auto settings = session.machine.settings();
    if (!settings) {
        return refusal(settings.messages);
    }
    const auto& language = settings.value->language;
    return answer_with({{"language", language}, {"words", page_words(language)}});
}

} // namespace

std::span<const Route> page_routes() {
    using http::Method;
    static constexpr std::array routes = {Route{Method::Get, "/api/state", state}};
    return routes;
}

} // namespace thawslip::desk
