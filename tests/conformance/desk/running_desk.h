#pragma once

#include "json/value.h"
#include "support/command.h"
#include "support/http_client.h"

#include <map>
#include <string>
#include <sys/types.h>
#include <vector>

namespace thawslip::test_support {

/// A user of the computer, with folders of their own, and where the days are.
struct User {
    ScratchFolder home;
    std::map<std::string, std::string> environment; ///< more of it, or other

    User();
    std::string days() const { return home / "days"; }
    std::string day(const std::string& name) const { return days() + "/" + name; }
    std::string archive() const { return home / ".local/share/thawslip/archive.db"; }
    /// Runs the program to its end. \param words of a command, as a shell takes them
    Outcome thawslip(const std::string& words) const;
};

/// What comes with the source, as a day of the user's.
inline const std::string sample_day = THAWSLIP_SOURCE_DIR "/samples/orchard-day.toml";

/// `thawslip desk` as a process of its own. Ends with the object, if it still runs.
class RunningDesk {
public:
    /// \param words   of the command, behind "desk --no-open"
    /// \param ignored a signal that it is to find ignored, as nohup(1) has it; 0: none
    /// \throws std::runtime_error where it does not say its link
    explicit RunningDesk(const User& user, std::vector<std::string> words = {}, int ignored = 0);
    RunningDesk(const RunningDesk&) = delete;
    RunningDesk& operator=(const RunningDesk&) = delete;
    ~RunningDesk();

    int port() const { return port_; }
    const std::string& key() const { return key_; }
    std::string host() const { return "127.0.0.1:" + std::to_string(port_); }
    pid_t process() const { return process_; }
    std::string said() const { return read_file(said_ / "said"); }

    void signal(int number) const;
    /// Waits until it has ended. \returns its exit status; 128 and more: the signal it died of
    int end();

    // What our page asks.
    Reply get(const std::string& path) const;
    Reply post(const std::string& path, const json::Json& body) const;
    Reply put(const std::string& path, const json::Json& body,
              const std::string& if_match = {}) const;
    Reply post_bytes(const std::string& path, const std::string& bytes) const;
    /// A request with these headers and no others, byte by byte.
    Reply send(const std::string& method, const std::string& path,
               const std::map<std::string, std::string>& headers,
               const std::string& body = {}) const;
    /// The headers of our page. \param changes something
    std::map<std::string, std::string> headers(bool changes) const;

    /// The number of a day by its name in the folder; 0 where there is none.
    int number_of(const std::string& day) const;

private:
    ScratchFolder said_;
    pid_t process_ = -1;
    int port_ = 0;
    std::string key_;
};

/// The body of an answer. \throws where it is no JSON
json::Json json_of(const Reply& reply);

} // namespace thawslip::test_support
