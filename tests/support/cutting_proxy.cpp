#include "support/cutting_proxy.h"

#include <algorithm>
#include <array>
#include <cstring>
#include <poll.h>
#include <stdexcept>
#include <sys/socket.h>
#include <sys/un.h>
#include <unistd.h>

namespace thawslip::test_support {
namespace {

sockaddr_un named(const std::string& path) {
    sockaddr_un address{};
    address.sun_family = AF_UNIX;
    std::strncpy(address.sun_path, path.c_str(), sizeof address.sun_path - 1);
    return address;
}

template <class Function>
int socket_with(const std::string& path, Function function) {
    const int made = ::socket(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0);
    const auto address = named(path);
    if (made >= 0 &&
        function(made, reinterpret_cast<const sockaddr*>(&address), sizeof address) == 0) {
        return made;
    }
    ::close(made);
    return -1;
}

void send_all(int to, const char* bytes, std::size_t count) {
    while (count > 0) {
        const auto sent = ::send(to, bytes, count, MSG_NOSIGNAL);
        if (sent <= 0) {
            return; // the other end is gone, which its reader will see
        }
        bytes += sent;
        count -= static_cast<std::size_t>(sent);
    }
}

/// Counts ReadyForQuery in what a server sends: each message is a letter and a length in network
/// order, which counts itself (PostgreSQL 15, 55.7, "Message Formats").
class ReadyCount {
public:
    int in(std::string_view bytes) {
        int count = 0;
        for (const char byte : bytes) {
            if (left_ > 0) {
                --left_;
                continue;
            }
            head_ += byte;
            if (head_.size() == 5) {
                count += head_[0] == 'Z' ? 1 : 0;
                for (const char digit : std::string_view{head_}.substr(1)) {
                    left_ = left_ << 8 | static_cast<unsigned char>(digit);
                }
                left_ -= 4;
                head_.clear();
            }
        }
        return count;
    }

private:
    std::string head_;
    std::int64_t left_ = 0; ///< bytes of the message that is being passed over
};

} // namespace

CuttingProxy::CuttingProxy(std::string server, const std::string& place)
    : server_{std::move(server)} {
    listener_ = socket_with(place, ::bind);
    if (listener_ < 0 || ::listen(listener_, 8) != 0) {
        throw std::runtime_error{"no socket at " + place};
    }
    thread_ = std::thread{[this] { serve(); }};
}

CuttingProxy::~CuttingProxy() {
    is_over_ = true;
    thread_.join();
    ::close(listener_);
}

void CuttingProxy::cut(Direction direction, std::int64_t after, How how) {
    direction_ = direction;
    how_ = how;
    after_ = after;
}

std::int64_t CuttingProxy::passed(Direction direction) const {
    return direction == Direction::ToServer ? to_server_ : to_program_;
}

void CuttingProxy::serve() {
    while (!is_over_) {
        pollfd waiting{listener_, POLLIN, 0};
        if (::poll(&waiting, 1, 20) > 0) {
            const int program = ::accept(listener_, nullptr, nullptr);
            pass(program);
            ::close(program);
        }
    }
}

/// One line at a time is enough for a test.
void CuttingProxy::pass(int program) {
    const int server = socket_with(server_, ::connect);
    to_server_ = 0;
    to_program_ = 0;
    round_trips_ = 0;
    ReadyCount ready;
    std::array<pollfd, 2> ends{{{program, POLLIN, 0}, {server, POLLIN, 0}}};
    std::array<char, 4096> block{};
    bool is_cut = false;
    while (server >= 0 && !is_over_) {
        if (::poll(ends.data(), ends.size(), 20) <= 0) {
            if (is_cut && how_ == How::Close) {
                break; // the other direction has had its time
            }
            continue;
        }
        const bool from_program = (ends[0].revents & (POLLIN | POLLHUP)) != 0;
        const auto got = ::read(from_program ? program : server, block.data(), block.size());
        if (got <= 0) {
            break;
        }
        auto& passed = from_program ? to_server_ : to_program_;
        auto count = std::int64_t{got};
        if (after_ >= 0 && from_program == (direction_ == Direction::ToServer)) {
            count = std::clamp<std::int64_t>(after_ - passed, 0, got);
            cuts_ += !is_cut && count < got ? 1 : 0;
            is_cut = is_cut || count < got;
        }
        passed += count;
        if (!from_program) {
            round_trips_ += ready.in({block.data(), static_cast<std::size_t>(count)});
        }
        send_all(from_program ? server : program, block.data(), static_cast<std::size_t>(count));
    }
    ::close(server);
}

} // namespace thawslip::test_support
