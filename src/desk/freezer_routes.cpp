#include "base/list.h"
#include "desk/answers.h"
#include "desk/body.h"
#include "desk/freezer_answers.h"
#include "desk/known.h"
#include "desk/route.h"
#include "json/value.h"
#include "json/values.h"
#include "service/freezer/bags.h"
#include "service/freezer/freezer_list.h"
#include "service/freezer/freezer_state.h"
#include "wording/phrases.h"

#include <array>

namespace thawslip::desk {
namespace {

using archive::Archive;
using archive::Mode;
using service::Messages;
using service::Settings;

/// What a guest may not eat, as it was asked for; refused as `--without` is.
service::Outcome<std::vector<service::Avoided>> avoided_of(const json::Json& body) {
    const auto without = text_at(body, "without");
    return without && !without->empty() ? service::read_avoided(*without)
                                        : service::Outcome<std::vector<service::Avoided>>{{{}}, {}};
}

http::Response list(Session& session, const Asked& asked) {
    const auto body = body_of(asked.request);
    service::FreezerQuestion question{
        texts_at(body, "words"), flag_at(body, "gone"), {}, text_at(body, "place")};
    const auto avoided = avoided_of(body);
    question.without = needed(avoided);
    return answer_from(session, Mode::Read, [&](Known& known) {
        const auto style = style_of(known.settings);
        const auto today = session.machine.now().today;
        const auto found = known.archive
                               ? freezer_list(*known.archive, question, today, *style.allergens)
                               : service::FreezerList{};
        auto answer = freezer_answer(found, today, style);
        answer["places"] = known.archive
                               ? places_answer(known.archive->bags(archive::Which::InFreezer))
                               : json::Json::array();
        answer["messages"] = messages_for_page(avoided.messages);
        return answer_with(answer);
    });
}

/// Bags as they are now, each with what was said of it before.
json::Json changed_rows(Archive& archive, const std::vector<archive::Bag>& before,
                        const Settings& settings, kitchen::Date today) {
    auto now = mapped(
        before, [&archive](const archive::Bag& bag) { return archive.bag(bag.id).value_or(bag); });
    auto rows = rows_of(archive, std::move(now), settings, today);
    for (std::size_t i = 0; i < before.size(); ++i) {
        rows[i]["was"] = {{"state", shown_word(before[i].state)}, {"place", before[i].place}};
    }
    return rows;
}

/// What is to be noted of which bags.
struct Note {
    std::vector<std::string> bags;
    std::optional<archive::State> state;
    std::string place; ///< where there is no state
};

archive::State state_named(const std::string& word) {
    for (const auto& [state, stored] : archive::state_words) {
        if (state != archive::State::Renamed && word == shown_word(state)) {
            return state;
        }
    }
    throw BadRequest{"\"state\" is to be out, frozen, eaten, discarded or never filled"};
}

Note note_of(const json::Json& body) {
    Note note{each_its_own(texts_at(body, "bags")), {}, {}};
    if (note.bags.front().empty()) {
        throw BadRequest{"\"bags\" is to name at least one bag"};
    }
    if (const auto word = text_at(body, "state")) {
        note.state = state_named(*word);
    } else {
        note.place = needed_text(body, "place");
    }
    return note;
}

std::vector<archive::State> states_meant(const Note& note) {
    using enum archive::State;
    return note.state ? service::states_before(*note.state) : std::vector{Frozen, Out};
}

http::Response noted(Archive& archive, const Note& note, const service::Moment& moment,
                     const Settings& settings, kitchen::Date today) {
    const auto last = archive.last_command(moment.station);
    const auto before = note.state ? note_state(archive, note.bags, *note.state, moment)
                                   : move_bags(archive, note.bags, note.place, moment);
    const auto change = archive.last_command(moment.station);
    json::Json answer{{"bags", changed_rows(archive, needed(before), settings, today)},
                      {"messages", messages_for_page(before.messages)}};
    if (change != last) { // else it was so already
        answer["change"] = change;
    }
    return answer_with(answer);
}

http::Response note(Session& session, const Asked& asked) {
    const auto note = note_of(body_of(asked.request));
    return answer_from_archive(
        session, Mode::Write, [&](const Settings& settings, Archive& archive) {
            const auto today = session.machine.now().today;
            Choices choices;
            const auto meant =
                service::chosen_bags(archive, {note.bags, states_meant(note), choices.collect()});
            if (!choices.empty()) {           // before anything is noted of the others
                constexpr int conflict = 409; // RFC 9110, 15.5.10
                return answer_with(choices.answer(archive, settings, today), conflict);
            }
            needed(meant);
            return noted(archive, note, session.machine.moment(), settings, today);
        });
}

/// The change that a page wants taken back; nothing: the last, whichever it is.
std::optional<std::int64_t> change_at(const json::Json& body) {
    const auto change = body.value("change", json::Json{});
    if (!change.is_null() && !change.is_number_integer()) {
        throw BadRequest{"\"change\" is to be a number that a note was answered with"};
    }
    return change.is_null() ? std::nullopt : std::optional{change.get<std::int64_t>()};
}

http::Response undo(Session& session, const Asked& asked) {
    const auto change = change_at(body_of(asked.request));
    return answer_from_archive(
        session, Mode::Write, [&](const Settings& settings, Archive& archive) {
            const auto undone = undo_last(archive, session.machine.moment(), change);
            if (!undone && change) {
                constexpr int conflict = 409; // RFC 9110, 15.5.10
                return refusal(conflict, undone.messages.all().front().what.message);
            }
            const auto before = mapped(needed(undone), &archive::UndoneBag::before);
            return answer_with(
                {{"bags", changed_rows(archive, before, settings, session.machine.now().today)},
                 {"messages", messages_for_page(undone.messages)}});
        });
}

/// Adds what the labels of each proposal say of thawing and of allergens.
void add_labels(json::Json& proposals, Archive& archive, const service::Menu& menu,
                const Settings& settings, kitchen::Date today) {
    const auto style = style_of(settings);
    for (std::size_t i = 0; i < menu.proposals.size(); ++i) {
        const auto& proposal = menu.proposals[i];
        proposals[i]["bags"] = rows_of(archive, proposal.bags, settings, today);
        if (proposal.way) {
            proposals[i]["thaw_words"] = say_thaw(*proposal.way, style.language);
        }
    }
}

http::Response next(Session& session, const Asked& asked) {
    const auto body = body_of(asked.request);
    auto question = next_question(body);
    const auto avoided = avoided_of(body);
    question.without = needed(avoided);
    return answer_from(session, Mode::Read, [&](Known& known) {
        const auto now = session.machine.now();
        service::Menu menu;
        if (known.archive) {
            menu = freezer_next(*known.archive, question, now, known.settings.kitchen.thaw);
        }
        auto answer = menu_answer(menu);
        if (known.archive) {
            add_labels(answer["proposals"], *known.archive, menu, known.settings, now.today);
        }
        answer["messages"] = messages_for_page(avoided.messages);
        return answer_with(answer);
    });
}

http::Response history(Session& session, const Asked& asked) {
    const auto typed = needed_text(body_of(asked.request), "bag");
    return answer_from_archive(session, Mode::Read, [&](const Settings&, Archive& archive) {
        const auto bag = needed(service::bags_by_id(archive, {typed})).front();
        auto answer = json::history_json(bag, archive.history(bag.id));
        return answer_with({{"id", bag.id}, {"dish", bag.dish}, {"events", answer["history"]}});
    });
}

} // namespace

std::span<const Route> freezer_routes() {
    using http::Method;
    static constexpr std::array routes = {
        Route{Method::Post, "/api/freezer", list},
        Route{Method::Post, "/api/freezer/note", note},
        Route{Method::Post, "/api/freezer/undo", undo},
        Route{Method::Post, "/api/freezer/next", next},
        Route{Method::Post, "/api/freezer/history", history},
    };
    return routes;
}

} // namespace thawslip::desk
