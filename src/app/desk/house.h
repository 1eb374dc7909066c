#pragma once

#include "desk/desk.h"
#include "desk/phones/phones.h"
#include "http/listen.h"

#include <memory>
#include <string>

namespace thawslip::app {

/// The key and certificate that a folder's desk shows phones, made where there is none that serves.
/// Kept in the user's own folder, for nobody else to read. \throws SystemFailure
std::string house_certificate(const http::Place& place, const std::string& folder);

/// The phones that a folder's desk knows from earlier runs, to be asked for at a place. They are
/// kept in the user's own folder, for nobody else to read. \param pem that certificate; empty: what
/// goes over the air is not encrypted \throws SystemFailure
std::shared_ptr<desk::Phones> phones_of_house(const http::Place& place, const std::string& folder,
                                              const std::string& pem);

/// Serves the phones of the house beside the cook's page.
class House {
public:
    /// Both must outlive it. \throws SystemFailure where it cannot listen there
    House(const http::Place& place, const std::string& pem, desk::Desk& desk, desk::Phones& phones);
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
