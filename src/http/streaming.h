#pragma once

#include "http/guard.h"
#include "http/limits.h"
#include "http/message.h"
#include "http/streams.h"

#include <cstddef>
#include <string>

namespace thawslip::http {

/// An answer that goes on, on its way to one client. Used by the thread of its connection.
class Streaming {
public:
    struct Client {
        const void* connection = nullptr;
        int socket = -1;
        std::string key;
    };

    /// \param streams has counted it: it is closed there with the object \param is_right asked
    /// again and again; both must outlive it
    Streaming(Client client, NextPiece next, Streams& streams, const KeyTest& is_right,
              const Limits& limits);
    Streaming(const Streaming&) = delete;
    Streaming& operator=(const Streaming&) = delete;
    ~Streaming();

    const Client& client() const { return client_; }

    /// Waits for what is to be sent next. \returns how many bytes it has put into `buffer`; none:
    /// it is over, for the client has gone, its key is worth nothing any longer, or all end. Throws
    /// what the next piece throws.
    std::size_t read(char* buffer, std::size_t size);

private:
    bool is_over() const;

    Client client_;
    NextPiece next_;
    Streams& streams_;
    const KeyTest& is_right_;
    std::string left_; ///< of the last piece
};

} // namespace thawslip::http
