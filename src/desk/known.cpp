#include "desk/known.h"

#include "base/list.h"
#include "desk/answers.h"
#include "json/value.h"
#include "json/values.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::desk {

http::Response answer_from(Session& session, archive::Mode mode,
                           const std::function<http::Response(Known&)>& answer) {
    Known known{needed(session.machine.settings()), {}};
    known.archive = session.machine.archive(known.settings, mode);
    auto response = answer(known);
    if (mode == archive::Mode::Write) {
        session.machine.changes->look();
    }
    return response;
}

http::Response answer_from_archive(
    Session& session, archive::Mode mode,
    const std::function<http::Response(const service::Settings&, archive::Archive&)>& answer) {
    return answer_from(session, mode, [&answer](Known& known) {
        return known.archive ? answer(known.settings, *known.archive)
                             : refusal(422, "nothing has been printed yet, so no bag is known");
    });
}

json::Json rows_of(archive::Archive& archive, std::vector<archive::Bag> bags,
                   const service::Settings& settings, kitchen::Date today) {
    const auto style = style_of(settings);
    return json::freezer_json(service::found_bags(archive, std::move(bags), {}, *style.allergens),
                              today, style);
}

service::ChooseBags Choices::collect() {
    return [this](std::string_view words, std::span<const archive::Bag> bags) {
        asked_.push_back(fmt::format("\"{}\" fits {} bags; which is meant?", words, bags.size()));
        bags_.insert(bags_.end(), bags.begin(), bags.end());
        return std::vector<std::size_t>{};
    };
}

json::Json Choices::answer(archive::Archive& archive, const service::Settings& settings,
                           kitchen::Date today) const {
    service::Messages messages;
    for (const auto& text : asked_) {
        messages.note(text);
    }
    auto bags = bags_;
    std::ranges::stable_sort(bags, std::ranges::less{}, &archive::Bag::keep_until);
    return {{"choices", rows_of(archive, std::move(bags), settings, today)},
            {"messages", messages_for_page(messages)}};
}

std::vector<std::string> each_its_own(const std::vector<std::string>& texts) {
    return {joined(texts, ", ")};
}

} // namespace thawslip::desk
