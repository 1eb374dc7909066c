// How a server proves who it is, and how a login does: TLS and SCRAM as libpq does them.

#include "samples.h"

#include <netinet/in.h>
#include <sys/socket.h>
#include <unistd.h>

namespace tls_test {

using namespace thawslip;
using namespace thawslip::test_support;
using Kind = ArchiveFault::Kind;

namespace {

/// One that nobody listens at right now.
std::string free_port() {
    const int made = ::socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0);
    sockaddr_in address{};
    address.sin_family = AF_INET;
    address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    socklen_t size = sizeof address;
    ::bind(made, reinterpret_cast<const sockaddr*>(&address), size);
    ::getsockname(made, reinterpret_cast<sockaddr*>(&address), &size);
    ::close(made);
    return std::to_string(ntohs(address.sin_port));
}

/// A certificate that signs itself, for 127.0.0.1, beside the server's data.
bool make_certificate(const std::string& folder, const std::string& name) {
    return run("cd " + shell_word(folder) +
               " && openssl req -x509 -newkey rsa:2048 -nodes -days 2 "
               "-subj /CN=127.0.0.1 -addext subjectAltName=IP:127.0.0.1 -keyout " +
               name + ".key -out " + name + ".crt && chmod 600 " + name +
               ".key && chown --reference=. " + name + ".key " + name + ".crt")
               .status == 0;
}

/// The same server at a port of this machine, where it asks for TLS and a password.
void listen_by_tls(PrivateServer& server) {
    const auto folder = server.socket_folder();
    write_file(folder + "/data/pg_hba.conf", "local all all trust\n"
                                             "hostssl all all 127.0.0.1/32 scram-sha-256\n");
    std::ofstream{folder + "/data/postgresql.conf", std::ios::app}
        << "ssl = on\nssl_cert_file = '" << folder << "/own.crt'\nssl_key_file = '" << folder
        << "/own.key'\nport = 5432\n";
}

} // namespace

TEST_CASE("a server is spoken to where its certificate is known, by a password of ~/.pgpass") {
    const auto server = PrivateServer::start();
    if (server == nullptr) {
        return; // as all cases say
    }
    const auto folder = server->socket_folder();
    const auto port = free_port();
    if (!make_certificate(folder, "own") || !make_certificate(folder, "other")) {
        MESSAGE("not made: this system has no openssl");
        return;
    }
    const auto kitchen = server->new_kitchen();
    server->sql("ALTER ROLE packer_1 PASSWORD 'hunter2'");
    listen_by_tls(*server);
    server->control("stop -m fast");
    const auto started =
        server->control("-l server.log -o " +
                        shell_word("-k " + folder + " -h 127.0.0.1 -F -p " + port) + " start");
    if (started.status != 0) {
        MESSAGE("not made: ", read_file(folder + "/server.log"));
        return;
    }
    const auto address = [&](const std::string& certificate, const std::string& pass) {
        write_file(folder + "/pgpass", "127.0.0.1:" + port + ":thawslip:packer_1:" + pass + "\n");
        run("chmod 600 " + shell_word(folder + "/pgpass"));
        return "postgresql://packer_1@127.0.0.1:" + port +
               "/thawslip?sslmode=verify-full&sslrootcert=" + folder + "/" + certificate +
               "&passfile=" + folder + "/pgpass&channel_binding=require";
    };
    CHECK(
        opened(address("own.crt", "hunter2")).record(print({day({package("Stew", 2)})})).new_bags ==
        2);
    const auto fault_with = [&](const std::string& certificate, const std::string& pass) {
        auto refused = Archive::open(address(certificate, pass), Mode::Read);
        REQUIRE_FALSE(refused.ok());
        CAPTURE(refused.fault().message);
        CHECK(refused.fault().message.find("hunter") == std::string::npos);
        return refused.fault().kind;
    };
    CHECK(fault_with("own.crt", "hunter3") == Kind::CannotOpen);
    CHECK(fault_with("other.crt", "hunter2") == Kind::CannotOpen);
    CHECK(fault_with("none.crt", "hunter2") == Kind::CannotOpen);
    auto elsewhere = address("own.crt", "hunter2");
    elsewhere.replace(elsewhere.find("127.0.0.1"), 9, "localhost"); // no name in its certificate
    CHECK_FALSE(Archive::open(elsewhere, Mode::Read).ok());
    auto plain = address("own.crt", "hunter2");
    plain.replace(plain.find("verify-full"), 11, "disable");
    CHECK_FALSE(Archive::open(plain, Mode::Read).ok());
}

} // namespace tls_test
