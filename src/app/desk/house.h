#pragma once

#include "desk/desk.h"
#include "desk/phones/phones.h"
#include "http/listen.h"

#include <memory>
#include <string>

namespace thawslip::app {

/// The phones that a folder's desk knows from earlier runs, to be asked for at a place. They are
/// kept in the user's own folder, for nobody else to read. \throws SystemFailure
std::shared_ptr<desk::Phones> phones_of_house(const http::Place& place, const std::string& folder);

/// Serves the phones of the house beside the cook's page.
class House {
public:
    /// Both must outlive it. \throws SystemFailure where it cannot listen there
    House(const http::Place& place, desk::Desk& desk, desk::Phones& phones);
    House(const House&) = delete;
    House& operator=(const House&) = delete;
    ~House();

    /// Since when no phone has asked for anything.
    std::chrono::steady_clock::time_point last_request() const;

private:
    struct Serving;
    std::unique_ptr<Serving> serving_;
};

} // namespace thawslip::app
