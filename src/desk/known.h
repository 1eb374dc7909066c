#pragma once

#include "archive/archive.h"
#include "desk/session.h"
#include "http/message.h"
#include "json/json.h"
#include "service/freezer/named_bags.h"
#include "service/settings.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace thawslip::desk {

/// What a route about bags works with.
struct Known {
    service::Settings settings;
    std::optional<archive::Archive> archive; ///< nothing: nothing has been printed yet
};

/// Answers by the settings and what the archive knows; refused where the settings cannot be read.
http::Response answer_from(Session& session, archive::Mode mode,
                           const std::function<http::Response(Known&)>& answer);

/// The same where a question makes no sense before anything was printed: then that is said.
http::Response answer_from_archive(
    Session& session, archive::Mode mode,
    const std::function<http::Response(const service::Settings&, archive::Archive&)>& answer);

/// Bags as the list of the freezer has them (`freezer list --json`).
json::Json rows_of(archive::Archive& archive, std::vector<archive::Bag> bags,
                   const service::Settings& settings, kitchen::Date today);

/// Words that fit several bags, to be asked about: none of them is meant before the cook has said
/// which.
class Choices {
public:
    /// To be handed to a use case; valid as long as this object.
    service::ChooseBags collect();

    bool empty() const { return asked_.empty(); }
    /// `{"choices": […], "messages"}`: all bags that fit, the soonest date first.
    json::Json answer(archive::Archive& archive, const service::Settings& settings,
                      kitchen::Date today) const;

private:
    std::vector<std::string> asked_; ///< what is to be said of each of the words
    std::vector<archive::Bag> bags_;
};

/// Texts of a list, each meaning bags of its own, as use cases take them.
std::vector<std::string> each_its_own(const std::vector<std::string>& texts);

} // namespace thawslip::desk
