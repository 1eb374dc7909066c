#include "app/desk/house.h"

#include "app/clock.h"
#include "app/desk/private_folder.h"
#include "app/desk/random_text.h"
#include "app/files/text_if_there.h"
#include "app/files/whole_file.h"
#include "base/system_failure.h"
#include "desk/phones/phone_door.h"
#include "desk/phones/phones_text.h"
#include "http/certificate.h"
#include "http/server.h"
#include "kitchen/bag_id.h"

#include <fmt/format.h>

namespace thawslip::app {
namespace {

/// \param ending "json", "pem"
std::string house_file(const std::string& folder, const char* ending) {
    return fmt::format("{}/phones/{:016x}.{}", state_folder(), kitchen::fnv_1a(folder), ending);
}

/// A small file's text; empty where it is not there.
std::string kept_text(const std::string& file) {
    constexpr std::size_t most = std::size_t{64} << 10U;
    return text_if_there(file, most).value_or("");
}

void keep_text(const std::string& file, const std::string& text) {
    make_private_folder(file.substr(0, file.rfind('/')));
    write_whole_file(file, text, Readers::OwnerAlone);
}

} // namespace

std::string house_certificate(const http::Place& place, const std::string& folder) {
    const auto file = house_file(folder, "pem");
    const auto now_is = std::chrono::duration_cast<std::chrono::seconds>(now().time_since_epoch());
    auto kept = kept_text(file);
    if (http::certificate_serves(kept, place.address, now_is.count())) {
        return kept;
    }
    auto made = http::make_certificate(place.address, now_is.count());
    if (!made) {
        throw SystemFailure{made.fault()};
    }
    keep_text(file, made.value());
    return std::move(made).value();
}

std::shared_ptr<desk::Phones> phones_of_house(const http::Place& place, const std::string& folder,
                                              const std::string& pem) {
    const auto file = house_file(folder, "json");
    desk::PhonePlace here;
    here.origin =
        fmt::format("{}://{}:{}", pem.empty() ? "http" : "https", place.address, place.port);
    here.fingerprint = pem.empty() ? "" : http::fingerprint(pem);
    here.now = [] { return std::chrono::steady_clock::now(); };
    here.moment = now_text;
    here.random_text = random_text;
    here.keep = [file](const std::vector<desk::Phone>& phones) {
        keep_text(file, desk::phones_text(phones));
    };
    return std::make_shared<desk::Phones>(std::move(here), desk::read_phones(kept_text(file)));
}

struct House::Serving {
    desk::PhoneDoor door;
    std::unique_ptr<http::Server> server;
};

House::House(const http::Place& place, const std::string& pem, desk::Desk& desk,
             desk::Phones& phones)
    : serving_{std::make_unique<Serving>(Serving{desk::PhoneDoor{desk, phones}, nullptr})} {
    auto server = http::Server::start(
        place, serving_->door.guard(),
        [&door = serving_->door](const http::Request& request) { return door.answer(request); },
        desk::body_limit, http::Limits{}, pem);
    if (!server) {
        throw SystemFailure{server.fault()};
    }
    serving_->server = std::move(server).value();
}

House::~House() = default;

std::chrono::steady_clock::time_point House::last_request() const {
    return serving_->server->last_request();
}

} // namespace thawslip::app
