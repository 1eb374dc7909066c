#pragma once

#include "support/command.h"

#include <map>
#include <string>
#include <sys/types.h>

namespace thawslip::test_support {

/// What queues a server has.
enum class Queues {
    KitchenIsUsual, ///< "kitchen", the usual one, and "office", which print; "broken" takes no jobs
    NoneIsUsual,    ///< the same, none of them the usual one
    None
};

/// A CUPS server of our own in a scratch folder, with queues that keep what they are sent.
/// It listens on a socket in that folder alone, needs no rights, and is gone with the object.
class Server {
public:
    /// \param more lines of cupsd.conf(5)
    explicit Server(Queues queues = Queues::KitchenIsUsual, const std::string& more = {});
    Server(const Server&) = delete;
    Server& operator=(const Server&) = delete;
    ~Server();

    /// Whether it answers; where not, its log says why.
    bool answers() const { return answers_; }
    std::string log() const;

    /// What CUPS_SERVER has to be.
    std::string address() const { return folder_ / "socket"; }

    /// What the back-end, which stands where a printer would be, was handed for a job.
    struct Arrived {
        std::string document;
        std::string options; ///< as the back-end's fifth argument has them
        std::string title;
        std::string copies;
    };
    /// Waits until the job is through. \throws std::runtime_error after 20 s
    Arrived arrived(int job) const;

    /// The job's attributes as the server tells them over IPP (RFC 8011, Get-Job-Attributes).
    std::map<std::string, std::string> attributes(int job) const;

private:
    test_support::ScratchFolder folder_;
    pid_t process_ = -1;
    bool answers_ = false;
};

} // namespace thawslip::test_support
