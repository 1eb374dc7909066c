#pragma once

#include "support/command.h"

#include <memory>
#include <string>

namespace thawslip::test_support {

/// A PostgreSQL server of the test's own, from the system's package, without a network: it listens
/// at a socket in its scratch folder, trusts whoever comes, and is gone when the test is. It never
/// runs as root, who is nobody here.
class PrivateServer {
public:
    /// Nothing where this system has no server's programs.
    static std::unique_ptr<PrivateServer> start();
    PrivateServer(const PrivateServer&) = delete;
    PrivateServer& operator=(const PrivateServer&) = delete;
    ~PrivateServer();

    /// A kitchen with a login that may write to it. \returns the address that opens it
    std::string new_kitchen();
    /// The same kitchen for another login. \param may "packer", "reader"
    std::string address_for(const std::string& kitchen_address, const std::string& may);

    Outcome sql(const std::string& text, const std::string& login = "postgres");
    std::string socket_folder() const { return folder_.path().string(); }
    Outcome control(const std::string& words); ///< as pg_ctl(1): "stop -m immediate"
    void start_again();

private:
    PrivateServer() = default;
    Outcome as_server(const std::string& command);

    ScratchFolder folder_;
    std::string programs_;
    int kitchens_ = 0;
    int logins_ = 0;
};

/// One for all cases of a test program; nullptr where there can be none.
PrivateServer* test_server();

} // namespace thawslip::test_support
