#pragma once

#include "base/letters.h"

#include <arpa/inet.h>
#include <cerrno>
#include <cstdint>
#include <map>
#include <netinet/in.h>
#include <optional>
#include <stdexcept>
#include <string>
#include <sys/socket.h>
#include <sys/time.h>
#include <unistd.h>
#include <utility>

namespace thawslip::test_support {

/// An answer as it came over the wire.
struct Reply {
    int status = 0;
    std::map<std::string, std::string> headers = {}; ///< by name in small letters
    std::string body = {};
};

/// A connection to a server on this computer, which sends what it is handed, byte by byte. A server
/// that does not answer at all fails the test after a generous while.
class Client {
public:
    explicit Client(int port) : socket_{::socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0)} {
        const timeval patience{60, 0};
        ::setsockopt(socket_, SOL_SOCKET, SO_RCVTIMEO, &patience, sizeof patience);
        ::setsockopt(socket_, SOL_SOCKET, SO_SNDTIMEO, &patience, sizeof patience);
        sockaddr_in address = {};
        address.sin_family = AF_INET;
        address.sin_port = htons(static_cast<std::uint16_t>(port));
        address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
        if (::connect(socket_, reinterpret_cast<sockaddr*>(&address), sizeof address) != 0) {
            ::close(socket_);
            throw std::runtime_error{"nobody listens there"};
        }
    }
    Client(Client&& other) noexcept
        : socket_{std::exchange(other.socket_, -1)}, read_{std::move(other.read_)} {}
    Client& operator=(Client&&) = delete;
    Client(const Client&) = delete;
    ~Client() {
        if (socket_ >= 0) {
            ::close(socket_);
        }
    }

    /// \returns whether the server still took it
    bool send(const std::string& bytes) const {
        std::size_t sent = 0;
        while (sent < bytes.size()) {
            const auto part =
                ::send(socket_, bytes.data() + sent, bytes.size() - sent, MSG_NOSIGNAL);
            if (part <= 0) {
                return false;
            }
            sent += static_cast<std::size_t>(part);
        }
        return true;
    }

    /// Says that nothing more will be sent, and stays to read.
    void end_sending() const { ::shutdown(socket_, SHUT_WR); }

    enum class Body { Comes, Never };
    /// The next answer; nothing where the server hung up before it was whole.
    /// \param body Never: of HEAD
    std::optional<Reply> reply(Body body = Body::Comes) {
        while (read_.find("\r\n\r\n") == std::string::npos) {
            if (!read_more()) {
                return std::nullopt;
            }
        }
        auto reply = take_head();
        const bool has_none = body == Body::Never || reply.status == 304 || reply.status < 200;
        const auto length = has_none ? 0 : std::stoul("0" + reply.headers["content-length"]);
        while (read_.size() < length) {
            if (!read_more()) {
                return std::nullopt;
            }
        }
        reply.body = read_.substr(0, length);
        read_.erase(0, length);
        return reply;
    }

    /// The next chunk of an answer that goes on (RFC 9112, section 7.1); empty: the last. Nothing
    /// where the server hung up before it was whole.
    std::optional<std::string> chunk() {
        std::size_t end = 0;
        while ((end = read_.find("\r\n")) == std::string::npos) {
            if (!read_more()) {
                return std::nullopt;
            }
        }
        const auto length = std::stoul(read_.substr(0, end), nullptr, 16);
        while (read_.size() < end + 2 + length + 2) {
            if (!read_more()) {
                return std::nullopt;
            }
        }
        auto chunk = read_.substr(end + 2, length);
        read_.erase(0, end + 2 + length + 2);
        return chunk;
    }

    /// Waits until the server has hung up. \returns what it sent before
    std::string rest() {
        while (read_more()) {
        }
        return std::exchange(read_, {});
    }

private:
    bool read_more() {
        char bytes[4096];
        const auto count = ::recv(socket_, bytes, sizeof bytes, 0);
        if (count < 0 && (errno == EAGAIN || errno == EWOULDBLOCK)) {
            throw std::runtime_error{"the server neither answers nor hangs up"};
        }
        read_.append(bytes, count > 0 ? static_cast<std::size_t>(count) : 0);
        return count > 0;
    }

    Reply take_head() {
        const auto end = read_.find("\r\n\r\n");
        const auto head = read_.substr(0, end + 2);
        read_.erase(0, end + 4);
        Reply reply;
        reply.status = std::stoi(head.substr(head.find(' ') + 1, 3));
        for (auto at = head.find("\r\n") + 2; at < head.size();) {
            const auto line = head.substr(at, head.find("\r\n", at) - at);
            const auto colon = line.find(": ");
            reply.headers[lower(line.substr(0, colon))] = line.substr(colon + 2);
            at += line.size() + 2;
        }
        return reply;
    }

    int socket_ = -1;
    std::string read_;
};

/// One request on a connection of its own.
inline std::optional<Reply> ask(int port, const std::string& request) {
    Client client{port};
    client.send(request);
    return client.reply();
}

} // namespace thawslip::test_support
