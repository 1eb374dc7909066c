#pragma once

#include "http/message.h"

#include <deque>
#include <string>

namespace thawslip::desk {

/// What was answered to those who print: each under its ticket, so that who asks twice, by a double
/// tap or after a lost connection, gets the first answer again and no second print. The oldest are
/// forgotten: after hundreds of prints, and PDFs after a few.
class Tickets {
public:
    /// Whether a text may be one: from 16 to 64 letters, digits and hyphens.
    static bool is_ticket(const std::string& text);

    /// \returns nothing where the ticket is new
    const http::Response* answer(const std::string& ticket) const;
    /// \pre the ticket is new \param pdf what was not to be paper; empty: nothing
    void keep(const std::string& ticket, http::Response answer, std::string pdf);
    /// \returns nothing where there is none, or none any longer
    const std::string* pdf(const std::string& ticket) const;

private:
    struct Answered {
        std::string ticket;
        http::Response answer;
    };
    struct Pdf {
        std::string ticket;
        std::string bytes;
    };
    std::deque<Answered> answered_; ///< the newest first
    std::deque<Pdf> pdfs_;          ///< the same
};

} // namespace thawslip::desk
