#include "support/postgres.h"

#include "archive/server_sql.h"

#include <algorithm>
#include <filesystem>
#include <unistd.h>
#include <vector>

namespace thawslip::test_support {
namespace {

namespace fs = std::filesystem;

/// Debian keeps a version's programs in a folder of its own.
std::string newest_programs() {
    std::vector<std::string> found;
    std::error_code none;
    for (const auto& version : fs::directory_iterator{"/usr/lib/postgresql", none}) {
        if (fs::exists(version.path() / "bin/initdb")) {
            found.push_back((version.path() / "bin/").string());
        }
    }
    return found.empty() ? std::string{} : *std::ranges::max_element(found);
}

constexpr unsigned nobody = 65534; // Debian Policy, 9.2.2

} // namespace

std::unique_ptr<PrivateServer> PrivateServer::start() {
    std::unique_ptr<PrivateServer> server{new PrivateServer};
    server->programs_ = newest_programs();
    if (server->programs_.empty()) {
        return nullptr;
    }
    if (::geteuid() == 0 && ::chown(server->folder_.path().c_str(), nobody, nobody) != 0) {
        return nullptr;
    }
    const auto made = server->as_server(
        server->programs_ + "initdb -N -A trust -E UTF8 --locale=C -U postgres -D data");
    if (made.status != 0) {
        return nullptr;
    }
    server->start_again();
    server->sql("CREATE DATABASE thawslip");
    const auto script = server->folder_ / "thawslip.sql";
    write_file(script, archive::server_sql());
    const auto set_up = server->sql("\\i " + script);
    return set_up.status == 0 ? std::move(server) : throw std::runtime_error{set_up.err};
}

PrivateServer::~PrivateServer() {
    control("stop -m immediate");
}

Outcome PrivateServer::as_server(const std::string& command) {
    const std::string who =
        ::geteuid() == 0 ? "setpriv --reuid=65534 --regid=65534 --clear-groups " : "";
    return run("cd " + shell_word(folder_.path().string()) + " && " + who + command +
               " </dev/null >>log 2>&1");
}

Outcome PrivateServer::control(const std::string& words) {
    return as_server(programs_ + "pg_ctl -D data -w " + words);
}

void PrivateServer::start_again() {
    // -F: no sync; what a test kills is the program, never the machine.
    const auto started = control(
        "-l server.log -o " + shell_word("-k " + folder_.path().string() + " -h '' -F") + " start");
    if (started.status != 0) {
        throw std::runtime_error{"the server does not start: " + read_file(folder_ / "log") +
                                 read_file(folder_ / "server.log")};
    }
}

Outcome PrivateServer::sql(const std::string& text, const std::string& login) {
    const auto file = folder_ / "asked.sql";
    write_file(file, text + "\n");
    const auto database = text.starts_with("CREATE DATABASE") ? "postgres" : "thawslip";
    return run(programs_ + "psql -XAtq -v ON_ERROR_STOP=1 -h " +
               shell_word(folder_.path().string()) + " -U " + login + " -d " + database + " -f " +
               shell_word(file));
}

std::string PrivateServer::new_kitchen() {
    const auto name = "kitchen " + std::to_string(++kitchens_);
    const auto made = sql("SELECT thawslip.add_kitchen('" + name + "')");
    if (made.status != 0) {
        throw std::runtime_error{made.err};
    }
    return address_for("kitchen=kitchen%20" + std::to_string(kitchens_), "packer");
}

std::string PrivateServer::address_for(const std::string& kitchen_address, const std::string& may) {
    const auto kitchen = kitchen_address.substr(kitchen_address.find("kitchen=") + 8);
    const auto number = kitchen.substr(kitchen.find("%20") + 3);
    const auto login = may + "_" + std::to_string(++logins_);
    const auto made = sql("CREATE ROLE " + login + " LOGIN;\nSELECT thawslip.add_member('kitchen " +
                          number + "', '" + login + "', '" + may + "')");
    if (made.status != 0) {
        throw std::runtime_error{made.err};
    }
    return "postgresql://" + login + "@/thawslip?host=" + folder_.path().string() +
           "&kitchen=" + kitchen;
}

PrivateServer* test_server() {
    static const auto server = PrivateServer::start();
    return server.get();
}

} // namespace thawslip::test_support
