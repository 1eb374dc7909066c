#include "app/desk/house.h"

#include "app/clock.h"
#include "app/desk/private_folder.h"
#include "app/desk/random_text.h"
#include "app/files/whole_file.h"
#include "base/system_failure.h"
#include "base/text_file.h"
#include "desk/phones/phone_door.h"
#include "desk/phones/phones_text.h"
#include "http/server.h"
#include "kitchen/bag_id.h"

#include <fmt/format.h>

namespace thawslip::app {
namespace {

std::string phones_file(const std::string& folder) {
    return fmt::format("{}/phones/{:016x}.json", state_folder(), kitchen::fnv_1a(folder));
}

std::vector<desk::Phone> kept_phones(const std::string& file) {
    constexpr std::size_t most = std::size_t{64} << 10U;
    const auto text = read_text_file(file, most);
    if (!text && text.fault().kind != FileFault::Kind::Missing) {
        throw SystemFailure{to_diagnostic(text.fault()).message};
    }
    return text ? desk::read_phones(text.value()) : std::vector<desk::Phone>{};
}

void keep_phones(const std::string& file, const std::vector<desk::Phone>& phones) {
    make_private_folder(file.substr(0, file.rfind('/')));
    write_whole_file(file, desk::phones_text(phones), Readers::OwnerAlone);
}

} // namespace

std::shared_ptr<desk::Phones> phones_of_house(const http::Place& place, const std::string& folder) {
    const auto file = phones_file(folder);
    desk::PhonePlace here;
    here.host = fmt::format("{}:{}", place.address, place.port);
    here.now = [] { return std::chrono::steady_clock::now(); };
    here.moment = now_text;
    here.random_text = random_text;
    here.keep = [file](const std::vector<desk::Phone>& phones) { keep_phones(file, phones); };
    return std::make_shared<desk::Phones>(std::move(here), kept_phones(file));
}

struct House::Serving {
    desk::PhoneDoor door;
    std::unique_ptr<http::Server> server;
};

House::House(const http::Place& place, desk::Desk& desk, desk::Phones& phones)
    : serving_{std::make_unique<Serving>(Serving{desk::PhoneDoor{desk, phones}, nullptr})} {
    auto server = http::Server::start(
        place, serving_->door.guard(),
        [&door = serving_->door](const http::Request& request) { return door.answer(request); },
        desk::body_limit);
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
