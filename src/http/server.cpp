#include "http/server.h"

#include "http/address.h"
#include "http/libmicrohttpd.h"
#include "http/refusal.h"
#include "http/streaming.h"
#include "http/streams.h"
#include "http/watch.h"

#include <array>
#include <atomic>
#include <exception>
#include <fmt/format.h>

namespace thawslip::http {
namespace {

using Clock = std::chrono::steady_clock;

/// A request from its first line to the end of its answer.
struct Exchange {
    std::string target;
    std::optional<Incoming> incoming;
};

MHD_Result add_header(void* headers, MHD_ValueKind, const char* name, std::size_t name_size,
                      const char* value, std::size_t value_size) {
    auto& list = *static_cast<std::vector<std::pair<std::string, std::string>>*>(headers);
    list.emplace_back(std::string{name, name_size},
                      value == nullptr ? std::string{} : std::string{value, value_size});
    return MHD_YES;
}

} // namespace

struct Server::Running {
    const LibMicrohttpd& library;
    Terms terms;
    Answer answer;
    Watch watch;
    Streams streams;
    MHD_Daemon* daemon = nullptr;
    int port = 0;
    std::atomic<Clock::time_point> asked_at = Clock::now();

    Running(const LibMicrohttpd& functions, Terms on_terms, Answer by)
        : library{functions}, terms{std::move(on_terms)}, answer{std::move(by)},
          watch{terms.limits}, streams{terms.limits} {}
    Running(const Running&) = delete;
    Running& operator=(const Running&) = delete;
    ~Running() {
        streams.end();
        if (daemon != nullptr) {
            library.MHD_stop_daemon(daemon);
        }
    }

    bool start(int socket, const std::string& pem);
    Way way() const {
        const bool is_open = terms.guard.from_private_network && !terms.guard.is_encrypted;
        return is_open ? Way::Network : Way::ThisComputer;
    }
    Head head_of(MHD_Connection* connection, const char* method, const char* version,
                 std::string target) const;
    MHD_Result begin(MHD_Connection* connection, Exchange& exchange, const Head& head);
    MHD_Result take(Exchange& exchange, std::string_view piece) const;
    MHD_Result finish(MHD_Connection* connection, const Incoming& incoming);
    Response answer_to(const Request& request);
    MHD_Result send(MHD_Connection* connection, const Incoming& incoming, Response response);
    MHD_Response* body_of(MHD_Connection* connection, const Request& request, Response& response);
    MHD_Response* stream(MHD_Connection* connection, std::string key, NextPiece next);

    static void* on_target(void* running, const char* target, MHD_Connection* connection);
    static MHD_Result on_request(void* running, MHD_Connection* connection, const char* url,
                                 const char* method, const char* version, const char* data,
                                 std::size_t* size, void** exchange);
    struct Sending;
    static ssize_t on_piece(void* sending, std::uint64_t at, char* buffer, std::size_t size);
    static void on_stream_end(void* sending);
    static void on_end(void* running, MHD_Connection* connection, void** exchange,
                       MHD_RequestTerminationCode code);
    static void on_connection(void* running, MHD_Connection* connection, void** context,
                              MHD_ConnectionNotificationCode code);
};

/// The library's own limits lie outside of ours: memory for what it makes of a head, and places for
/// those who are to be sent away in words and those who are about to go; whom it has no place for,
/// it hangs up on. Its own time limit counts silence only, so Watch has it.
bool Server::Running::start(int socket, const std::string& pem) {
    const auto memory = 4 * (terms.limits.headers + terms.limits.url);
    constexpr unsigned usual = MHD_USE_INTERNAL_POLLING_THREAD | MHD_USE_THREAD_PER_CONNECTION |
                               MHD_USE_POLL | MHD_USE_ITC;
    // Without TLS the library does not look at these; readers of PEM look for what they need.
    std::array<MHD_OptionItem, 4> tls = {
        {{MHD_OPTION_HTTPS_MEM_KEY, 0, const_cast<char*>(pem.c_str())},
         {MHD_OPTION_HTTPS_MEM_CERT, 0, const_cast<char*>(pem.c_str())},
         {MHD_OPTION_HTTPS_PRIORITIES, 0, const_cast<char*>("NORMAL:-VERS-TLS1.0:-VERS-TLS1.1")},
         {MHD_OPTION_END, 0, nullptr}}};
    daemon = library.MHD_start_daemon(
        pem.empty() ? usual : usual | MHD_USE_TLS, 0, nullptr, nullptr, on_request, this,
        MHD_OPTION_LISTEN_SOCKET, socket, MHD_OPTION_CONNECTION_LIMIT, 8 * terms.limits.connections,
        MHD_OPTION_CONNECTION_MEMORY_LIMIT, memory, MHD_OPTION_STRICT_FOR_CLIENT, 1,
        MHD_OPTION_URI_LOG_CALLBACK, on_target, this, MHD_OPTION_NOTIFY_COMPLETED, on_end, this,
        MHD_OPTION_NOTIFY_CONNECTION, on_connection, this, MHD_OPTION_ARRAY,
        pem.empty() ? &tls.back() : tls.data(), MHD_OPTION_END);
    return daemon != nullptr;
}

void Server::Running::on_connection(void* running, MHD_Connection* connection, void**,
                                    MHD_ConnectionNotificationCode code) {
    auto& self = *static_cast<Running*>(running);
    if (code == MHD_CONNECTION_NOTIFY_CLOSED) {
        self.watch.closed(connection);
        return;
    }
    const auto* info =
        self.library.MHD_get_connection_info(connection, MHD_CONNECTION_INFO_CONNECTION_FD);
    self.watch.opened(connection, info->connect_fd);
}

void* Server::Running::on_target(void* running, const char* target, MHD_Connection* connection) {
    static_cast<Running*>(running)->watch.is_at(connection, At::Head);
    try {
        return new Exchange{target, {}}; // the library carries it until on_end
    } catch (const std::exception&) {
        return nullptr;
    }
}

void Server::Running::on_end(void* running, MHD_Connection* connection, void** exchange,
                             MHD_RequestTerminationCode) {
    delete static_cast<Exchange*>(*exchange);
    *exchange = nullptr;
    static_cast<Running*>(running)->watch.is_at(connection, At::Idle);
}

/// Called for a request's head, for each piece of its body, and at its end with a piece of size 0.
// NOLINTNEXTLINE(readability-function-size): its parameters are libmicrohttpd's
MHD_Result Server::Running::on_request(void* running, MHD_Connection* connection, const char*,
                                       const char* method, const char* version, const char* data,
                                       std::size_t* size, void** exchange) {
    auto& self = *static_cast<Running*>(running);
    auto* one = static_cast<Exchange*>(*exchange);
    if (one == nullptr) {
        return MHD_NO;
    }
    try {
        if (!one->incoming) {
            return self.begin(connection, *one,
                              self.head_of(connection, method, version, one->target));
        }
        if (*size > 0) {
            return self.take(*one, {data, std::exchange(*size, 0)});
        }
        return self.finish(connection, *one->incoming);
    } catch (const std::exception&) { // of memory: this connection ends, the others go on
        return MHD_NO;
    }
}

Head Server::Running::head_of(MHD_Connection* connection, const char* method, const char* version,
                              std::string target) const {
    const auto* info =
        library.MHD_get_connection_info(connection, MHD_CONNECTION_INFO_CLIENT_ADDRESS);
    Head head{method, std::move(target), version, {}, text_of(info->client_addr)};
    library.MHD_get_connection_values_n(connection, MHD_HEADER_KIND, add_header, &head.headers);
    return head;
}

MHD_Result Server::Running::begin(MHD_Connection* connection, Exchange& exchange,
                                  const Head& head) {
    auto& incoming = exchange.incoming.emplace(take_head(head, terms));
    if (!incoming.refused && !watch.has_place(connection)) {
        incoming.refused = last_refusal(503, "too many ask at once; try again");
    }
    if (incoming.is_over) {
        return send(connection, incoming, *incoming.refused);
    }
    watch.is_at(connection, incoming.refused ? At::Refused : At::Body);
    return MHD_YES;
}

MHD_Result Server::Running::take(Exchange& exchange, std::string_view piece) const {
    take_body(*exchange.incoming, piece, terms.limits);
    return exchange.incoming->is_over ? MHD_NO : MHD_YES;
}

MHD_Result Server::Running::finish(MHD_Connection* connection, const Incoming& incoming) {
    if (incoming.refused) {
        return send(connection, incoming, *incoming.refused);
    }
    asked_at = Clock::now();
    watch.is_at(connection, At::Answering);
    auto response = answer_to(incoming.request);
    asked_at = Clock::now();
    return send(connection, incoming, std::move(response));
}

Response Server::Running::answer_to(const Request& request) {
    try {
        return answer(request);
    } catch (...) { // whatever it was, it ends here and not the program
        return refusal(500, "something went wrong here that nobody had foreseen");
    }
}

struct Server::Running::Sending {
    Running& server;
    Streaming stream;
};

/// Asked for more as soon as what it gave before is with the system: so what was given is taken in
/// time, or Watch shuts the connection down. A thread waits here for each stream.
ssize_t Server::Running::on_piece(void* sending, std::uint64_t, char* buffer, std::size_t size) {
    auto& [self, stream] = *static_cast<Sending*>(sending);
    self.watch.is_at(stream.client().connection, At::Streaming);
    try {
        const auto length = stream.read(buffer, size);
        self.watch.is_at(stream.client().connection, At::Sending);
        return length > 0 ? static_cast<ssize_t>(length) : MHD_CONTENT_READER_END_OF_STREAM;
    } catch (...) { // whatever it was, it ends here and not the program
        return MHD_CONTENT_READER_END_WITH_ERROR;
    }
}

void Server::Running::on_stream_end(void* sending) {
    const std::unique_ptr<Sending> over{static_cast<Sending*>(sending)};
    over->server.asked_at = Clock::now(); // until now it was listened to
}

MHD_Response* Server::Running::stream(MHD_Connection* connection, std::string key, NextPiece next) {
    constexpr std::size_t block = 1024;
    const auto* info =
        library.MHD_get_connection_info(connection, MHD_CONNECTION_INFO_CONNECTION_FD);
    auto sending =
        std::unique_ptr<Sending>(new Sending{*this,
                                             {{connection, info->connect_fd, std::move(key)},
                                              std::move(next),
                                              streams,
                                              terms.guard.key,
                                              terms.limits}});
    auto* sent = library.MHD_create_response_from_callback(MHD_SIZE_UNKNOWN, block, on_piece,
                                                           sending.get(), on_stream_end);
    if (sent != nullptr) {
        static_cast<void>(sending.release()); // the library carries it until on_stream_end
    }
    return sent;
}

MHD_Response* Server::Running::body_of(MHD_Connection* connection, const Request& request,
                                       Response& response) {
    auto key = header_of(request, key_header);
    return response.next && streams.opened(key)
               ? stream(connection, std::move(key), std::move(response.next))
               : library.MHD_create_response_from_buffer(response.body.size(), response.body.data(),
                                                         MHD_RESPMEM_MUST_COPY);
}

MHD_Result Server::Running::send(MHD_Connection* connection, const Incoming& incoming,
                                 Response response) {
    response = guarded(std::move(response), incoming.request.path, way());
    auto* sent = body_of(connection, incoming.request, response);
    if (sent == nullptr) {
        return MHD_NO;
    }
    response.headers.emplace_back("Content-Type", response.type);
    bool whole = true;
    for (const auto& [name, value] : response.headers) {
        whole =
            library.MHD_add_response_header(sent, name.c_str(), value.c_str()) == MHD_YES && whole;
    }
    watch.is_at(connection, At::Sending);
    const auto queued =
        whole ? library.MHD_queue_response(connection, static_cast<unsigned>(response.status), sent)
              : MHD_NO; // a line end in a header would be another header
    library.MHD_destroy_response(sent);
    return queued;
}

Server::Server(std::unique_ptr<Running> running) : running_{std::move(running)} {}

Server::~Server() = default;

Result<std::unique_ptr<Server>, std::string> Server::start(const Place& place, Guard guard,
                                                           Answer answer, BodyLimit body_limit,
                                                           const Limits& limits,
                                                           const std::string& pem) {
    const auto* library = libmicrohttpd();
    if (library == nullptr) {
        return Failure{std::string{"the desk needs libmicrohttpd, which is not installed here"}};
    }
    auto listening = Listening::open(place);
    if (!listening) {
        return Failure{listening.fault()};
    }
    auto port = listening.value().port();
    if (guard.host.empty()) {
        guard.host = fmt::format("{}:{}", place.address, port);
    }
    guard.is_encrypted = !pem.empty();
    auto running = std::make_unique<Running>(
        *library, Terms{std::move(guard), limits, std::move(body_limit)}, std::move(answer));
    running->port = port;
    // Whether the library closes a socket that it could not start with, it does not say.
    if (!running->start(std::move(listening).value().take(), pem)) {
        return Failure{std::string{"libmicrohttpd cannot start a server"}};
    }
    return std::unique_ptr<Server>{new Server{std::move(running)}};
}

int Server::port() const {
    return running_->port;
}

std::chrono::steady_clock::time_point Server::last_request() const {
    return running_->streams.are_open() ? Clock::now() : running_->asked_at.load();
}

} // namespace thawslip::http
