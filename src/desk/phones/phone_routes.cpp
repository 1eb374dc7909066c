#include "desk/answers.h"
#include "desk/body.h"
#include "desk/phones/pairing_picture.h"
#include "desk/phones/phones.h"
#include "desk/route.h"
#include "json/value.h"

#include <array>

namespace thawslip::desk {
namespace {

Phones& phones_of(Session& session) {
    if (!session.machine.phones) {
        throw BadRequest{"this desk lets no phones in"};
    }
    return *session.machine.phones;
}

json::Json offer_answer(const Offer& offer) {
    return {{"code", offer.code},
            {"link", offer.link},
            {"svg", pairing_picture(offer.link)},
            {"seconds", offer.left.count()}};
}

/// Without their keys, which are theirs alone.
http::Response list_phones(Session& session, const Asked&) {
    const auto& phones = phones_of(session);
    auto list = json::list_of(phones.all(), [](const Phone& phone) {
        return json::Json{{"number", phone.number}, {"name", phone.name}, {"paired", phone.paired}};
    });
    const auto offer = phones.open_offer();
    return answer_with({{"origin", phones.origin()},
                        {"fingerprint", phones.fingerprint()},
                        {"phones", std::move(list)},
                        {"offer", offer ? offer_answer(*offer) : json::Json{}}});
}

http::Response offer_code(Session& session, const Asked& asked) {
    body_of(asked.request);
    return answer_with(offer_answer(phones_of(session).offer()));
}

http::Response take_offer_back(Session& session, const Asked& asked) {
    body_of(asked.request);
    phones_of(session).take_offer_back();
    return answer_with(json::Json::object());
}

http::Response lock_out(Session& session, const Asked& asked) {
    const auto number = needed_number(body_of(asked.request), "number");
    return phones_of(session).revoke(number)
               ? list_phones(session, asked)
               : refusal(404, "there is no phone of that number any longer");
}

} // namespace

std::span<const Route> phone_routes() {
    using http::Method;
    static constexpr std::array routes = {
        Route{Method::Get, "/api/phones", list_phones},
        Route{Method::Post, "/api/phones/offer", offer_code},
        Route{Method::Post, "/api/phones/take-back", take_offer_back},
        Route{Method::Post, "/api/phones/lock-out", lock_out},
    };
    return routes;
}

} // namespace thawslip::desk
