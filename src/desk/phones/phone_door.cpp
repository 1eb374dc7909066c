#include "desk/phones/phone_door.h"

#include "desk/answers.h"
#include "desk/body.h"
#include "desk/phones/phone_rights.h"
#include "json/value.h"

#include <array>
#include <string>

namespace thawslip::desk {
namespace {

constexpr const char* pair_path = "/api/pair";

/// Members of the state that a phone gets; all others say something of files, settings or printers.
constexpr std::array for_phones = {"language",  "words", "today",   "archive",
                                   "allergens", "foods", "changes", "version"};

http::Response not_let_in(NotLetIn why) {
    switch (why) {
    case NotLetIn::NoName:
        return refusal(422, "expected a name for this phone, such as \"Ida's phone\"");
    case NotLetIn::TooMany:
        return refusal(409,
                       "too many phones are let in: lock out one that is gone, at the computer");
    case NotLetIn::TooManyTries: {
        auto response = refusal(429, "too many tries; wait a minute");
        response.headers.emplace_back("Retry-After", "60"); // RFC 6585, section 4
        return response;
    }
    case NotLetIn::WrongCode: break;
    }
    return refusal(403,
                   "this code does not hold: a code lets in one phone, within two minutes; show "
                   "a new one at the computer");
}

} // namespace

http::Guard PhoneDoor::guard() const {
    return {
        {},
        [&phones = phones_](const std::string& key) { return phones.with_key(key).has_value(); },
        {pair_path},
        true};
}

http::Response PhoneDoor::answer(const http::Request& request) const {
    if (!request.path.starts_with("/api/")) {
        return desk_.answer(request);
    }
    if (request.path == pair_path) {
        return pair(request);
    }
    if (!may_phone_ask(request)) {
        return refusal(403, "a phone may not do this; it is done at the computer");
    }
    return request.path == "/api/state" ? state(request) : desk_.answer(request);
}

http::Response PhoneDoor::pair(const http::Request& request) const {
    if (request.method != http::Method::Post) {
        return refusal(405, "this is asked for in another way");
    }
    try {
        const auto body = body_of(request);
        const auto phone = phones_.pair(needed_text(body, "code"), needed_text(body, "name"));
        return phone ? answer_with({{"key", phone.value().key}, {"name", phone.value().name}})
                     : not_let_in(phone.fault());
    } catch (const BadRequest& bad) {
        return refusal(400, bad.what());
    } catch (const std::exception& failure) { // it cannot be kept, so nobody was let in
        return refusal(500, failure.what());
    }
}

http::Response PhoneDoor::state(const http::Request& request) const {
    const auto answer = desk_.answer(request);
    const auto all = json::parsed(answer.body);
    const auto phone = phones_.with_key(http::header_of(request, http::key_header));
    if (answer.status != 200 || !all.is_object() || !phone) {
        return answer.status == 200 ? refusal(401, "this phone was locked out") : answer;
    }
    json::Json state = {{"phone", {{"name", phone->name}}}};
    for (const auto* member : for_phones) {
        if (all.contains(member)) {
            state[member] = all[member];
        }
    }
    return answer_with(state);
}

} // namespace thawslip::desk
