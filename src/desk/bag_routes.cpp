#include "base/list.h"
#include "base/number_in.h"
#include "base/split.h"
#include "code/read_picture.h"
#include "desk/answers.h"
#include "desk/body.h"
#include "desk/known.h"
#include "desk/route.h"
#include "json/value.h"
#include "json/values.h"
#include "service/read/message_text.h"
#include "service/read/read_bags.h"

#include <array>
#include <mutex>

namespace thawslip::desk {
namespace {

using archive::Mode;
using service::Messages;

/// What is answered of bags that were read, one after the other.
class Answer {
public:
    Answer(Known& known, kitchen::Date today)
        : known_{known}, style_{style_of(known.settings)}, today_{today} {}

    /// \param code the text that it was read from; empty where an id or words were typed
    void add(const service::Readings& readings, const std::string& code) {
        messages_.add(readings.messages);
        for (const auto& reading : readings.bags) {
            const auto* message = std::get_if<code::Message>(&reading);
            auto bag = message != nullptr ? whole(*message)
                                          : words_only(std::get<service::LaterWords>(reading).text);
            if (!code.empty()) {
                bag["code"] = code;
            }
            bags_.push_back(std::move(bag));
        }
    }

    http::Response take() {
        return bags_.empty() ? refusal(messages_)
                             : answer_with({{"bags", std::move(bags_)},
                                            {"today", kitchen::to_iso(today_)},
                                            {"messages", messages_for_page(messages_)}});
    }

private:
    json::Json whole(const code::Message& message) const {
        auto bag = json::message_json(message, today_, style_);
        bag["words"] = lines_in(service::message_text(message, today_, style_));
        const auto known = known_.archive && !message.bag_id.empty()
                               ? known_.archive->bag(message.bag_id)
                               : std::nullopt;
        bag["known"] = known.has_value();
        if (known) {
            bag["state"] = shown_word(known->state);
            bag["changed"] = known->changed;
            bag["place"] = known->place;
        }
        return bag;
    }

    /// A label of a later Thawslip: instructions all the same.
    json::Json words_only(const std::string& text) const {
        auto bag = json::text_json(text);
        bag["words"] = lines_in(text);
        bag["words"].push_back(style_.say("standing.local-rules"));
        bag["known"] = false;
        return bag;
    }

    Known& known_;
    wording::Style style_;
    kitchen::Date today_;
    json::Json bags_ = json::Json::array();
    Messages messages_;
};

http::Response read_codes(Session& session, const std::vector<std::string>& texts) {
    return answer_from(session, Mode::Read, [&](Known& known) {
        auto* archive = known.archive ? &*known.archive : nullptr;
        const auto style = style_of(known.settings);
        Answer answer{known, session.machine.now().today};
        for (const auto& text : texts) {
            answer.add(service::read_texts(archive, {&text, 1}, style), text);
        }
        return answer.take();
    });
}

/// What was typed, each id and the words of each dish for themselves.
std::vector<std::string> each_typed(archive::Archive* archive, const std::string& typed) {
    std::vector<std::string> each;
    for (const auto& part :
         archive != nullptr ? service::parts_of(*archive, {typed}) : std::vector<std::string>{}) {
        const auto named = service::named_bags(*archive, part, archive::Which::All);
        const bool by_id = named && named.value->by_id;
        add_all_once(each,
                     by_id ? mapped(named.value->bags, &archive::Bag::id) : std::vector{part});
    }
    return each.empty() ? std::vector{typed} : each;
}

/// Ids, or words of dishes.
http::Response read_named(Session& session, const std::string& typed) {
    return answer_from(session, Mode::Read, [&](Known& known) {
        auto* archive = known.archive ? &*known.archive : nullptr;
        const auto today = session.machine.now().today;
        Choices choices;
        Answer answer{known, today};
        for (const auto& one : each_typed(archive, typed)) {
            answer.add(service::read_bag(archive, one, style_of(known.settings), choices.collect()),
                       {});
        }
        if (!choices.empty()) {
            auto asked = choices.answer(*archive, known.settings, today);
            asked["bags"] = json::Json::array();
            return answer_with(asked);
        }
        return answer.take();
    });
}

http::Response read_typed(Session& session, const http::Request& request) {
    const auto typed = needed_text(body_of(request), "typed");
    const std::lock_guard lock{session.one_at_a_time};
    return service::is_code_text(typed) ? read_codes(session, service::typed_texts(typed))
                                        : read_named(session, typed);
}

/// May take its time, so others are answered meanwhile.
http::Response read_photo(Session& session, const http::Request& request) {
    const auto texts = session.machine.photo_texts(request.body);
    const std::lock_guard lock{session.one_at_a_time};
    return read_codes(session, needed(texts));
}

int side_of(const http::Request& request, const std::string& key) {
    const auto found = request.query.find(key);
    const auto side = found == request.query.end() ? std::nullopt : number_in<int>(found->second);
    if (side.value_or(0) < 1) {
        throw BadRequest{"\"" + key + "\" is to be a number of pixels"};
    }
    return *side;
}

code::GreyPicture frame_of(const http::Request& request) {
    code::GreyPicture frame{side_of(request, "width"), side_of(request, "height"), {}};
    const auto wanted = std::int64_t{frame.width} * frame.height;
    if (wanted != static_cast<std::int64_t>(request.body.size())) {
        throw BadRequest{"a frame is as many grey bytes as it has pixels"};
    }
    if (wanted > code::largest_frame) {
        throw BadRequest{"this is larger than any frame that is read"};
    }
    frame.pixels.assign(request.body.begin(), request.body.end());
    return frame;
}

http::Response read_frame(Session& session, const http::Request& request) {
    const auto frame = frame_of(request);
    const std::unique_lock looking{session.one_frame,
                                   std::try_to_lock}; // else the next one will do
    const auto texts = looking.owns_lock() ? code::read_quickly(frame) : std::vector<std::string>{};
    if (texts.empty()) {
        return answer_with({{"found", false}});
    }
    const std::lock_guard lock{session.one_at_a_time};
    return read_codes(session, texts);
}

http::Response read(Session& session, const Asked& asked) {
    const auto as = asked.request.query.find("as");
    if (as == asked.request.query.end()) {
        return read_typed(session, asked.request);
    }
    if (as->second == "photo") {
        return read_photo(session, asked.request);
    }
    if (as->second == "frame") {
        return read_frame(session, asked.request);
    }
    throw BadRequest{"\"as\" is to be photo or frame"};
}

} // namespace

std::span<const Route> bag_routes() {
    using http::Method;
    static constexpr std::array routes = {Route{Method::Post, "/api/read", read, false}};
    return routes;
}

} // namespace thawslip::desk
