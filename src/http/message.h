#pragma once

#include <chrono>
#include <functional>
#include <map>
#include <string>
#include <utility>
#include <vector>

namespace thawslip::http {

/// What a request asks to be done (RFC 9110, section 9). `Other` is whatever else was sent.
enum class Method { Get, Head, Post, Put, Other };

/// A request as it came, whole: nothing of it has been believed yet.
struct Request {
    Method method = Method::Get;
    std::string path = {};                           ///< decoded, without the query: "/api/day/3"
    std::map<std::string, std::string> query = {};   ///< decoded; of a name given twice the last
    std::map<std::string, std::string> headers = {}; ///< by name in small letters
    std::string body = {};
    std::string peer = {}; ///< the address that it came from: "192.168.1.31"
};

/// A header's value; empty where there is none. \param name in small letters
std::string header_of(const Request& request, const std::string& name);

/// The next piece of an answer that goes on: waits for it no longer than `patience`, and is empty
/// where none has come. Called from one thread, again and again for as long as the client listens.
using NextPiece = std::function<std::string(std::chrono::milliseconds patience)>;

/// What is sent back.
struct Response {
    int status = 200; ///< RFC 9110, section 15
    std::string type = "application/json";
    /// Where the answer goes on, what is sent in its stead to who may not listen: too many do.
    std::string body = {};
    std::vector<std::pair<std::string, std::string>> headers = {};
    NextPiece next = {}; ///< of an answer that goes on; empty: it is whole
};

} // namespace thawslip::http
