#include "desk/answers.h"
#include "desk/body.h"
#include "desk/day_text.h"
#include "desk/look.h"
#include "desk/page_hints.h"
#include "desk/route.h"
#include "json/value.h"
#include "service/record/settle.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <iterator>
#include <string_view>
#include <utility>

namespace thawslip::desk {
namespace {

std::string ticket_at(const json::Json& body) {
    auto ticket = needed_text(body, "ticket");
    if (!Tickets::is_ticket(ticket)) {
        throw BadRequest{"\"ticket\" is to be from 16 to 64 letters, digits and hyphens"};
    }
    return ticket;
}

Destination destination_at(const json::Json& body) {
    return {text_at(body, "printer")};
}

archive::WhichBatch which_at(const json::Json& body) {
    using Kind = archive::WhichBatch::Kind;
    auto same = texts_at(body, "same_batch");
    const auto kind = flag_at(body, "new_batch") ? Kind::New
                      : same.empty()             ? Kind::AsKnown
                                                 : Kind::OfBag;
    return {kind, std::move(same)};
}

json::Json answer_of(const Delivered& delivered, const std::string& ticket) {
    json::Json answer{{"done", delivered.done}, {"said", page_said(delivered.said)}};
    if (!delivered.pdf.empty()) {
        answer["pdf"] = fmt::format("/api/out/{}.pdf", ticket);
    }
    return answer;
}

/// Prints once for a ticket. Also a failure of the system is kept: paper may be out already.
template <class Print>
http::Response once(Session& session, const std::string& ticket, const Print& print) {
    if (const auto* before = session.tickets.answer(ticket)) {
        return *before;
    }
    http::Response answer;
    std::string pdf;
    try {
        auto [delivered, more] = print();
        auto json = answer_of(delivered, ticket);
        json.update(more);
        answer = answer_with(json);
        pdf = std::move(delivered.pdf);
    } catch (const BadRequest&) {
        throw;
    } catch (const std::exception& failure) {
        answer = refusal(500, failure.what());
    }
    session.tickets.keep(ticket, answer, std::move(pdf));
    session.machine.changes->look();
    return answer;
}

/// What came of a print, and what else there is to answer.
struct Printed {
    Delivered delivered;
    json::Json more = json::Json::object();
};

json::Json known_json(const archive::KnownBatch& known) {
    return {{"bag", known.bag},         {"bags", known.bags}, {"servings", known.servings},
            {"kitchen", known.kitchen}, {"file", known.file}, {"printed", known.recorded}};
}

/// The dishes of which a print asks whether their bags are ones that were printed before.
json::Json asks_json(const std::vector<service::BatchQuestion>& questions) {
    return json::list_of(questions, [](const service::BatchQuestion& question) {
        return json::Json{{"dish", question.dish},
                          {"made", kitchen::to_iso(question.made)},
                          {"known", json::list_of(question.known, known_json)}};
    });
}

/// What stands against a print, where that is a question that the page can put.
json::Json asked_of(Session& session, const PrintWish& wish, const std::string& text) {
    const auto settings = session.machine.settings();
    if (!settings || wish.look.is_trial) {
        return json::Json::object();
    }
    const service::DayTexts texts{{{wish.day, text, {}, session.machine.days.place(wish.day)}}, {}};
    const auto days = service::plan_days(texts, *settings.value, service::Ids::Planned);
    auto ids = session.machine.surroundings(*settings.value).ids;
    ids.which = wish.which; // what was answered is not asked again
    const auto asks = ids.which.kind == archive::WhichBatch::Kind::New
                          ? json::Json::array()
                          : asks_json(batch_questions(days, ids));
    return asks.empty() ? json::Json::object() : json::Json{{"asks", asks}};
}

Printed printed(Session& session, const PrintWish& wish, const std::string& text) {
    Printed printed{session.machine.print(wish)};
    if (!printed.delivered.done) {
        printed.more = asked_of(session, wish, text);
    }
    return printed;
}

/// A day is printed as it is saved, and as the page has seen it.
http::Response spool(Session& session, const Asked& asked) {
    const auto body = body_of(asked.request);
    const auto ticket = ticket_at(body);
    if (const auto* before = session.tickets.answer(ticket)) {
        return *before; // whatever became of the day meanwhile
    }
    const auto name = session.days.name_of(needed_number(body, "number"));
    const auto text = name ? session.machine.days.read(*name) : std::nullopt;
    if (!text) {
        return refusal(404, "there is no day of this number");
    }
    if (needed_text(body, "etag") != etag_of(text)) {
        return refusal(409, "the day was changed meanwhile by another program or page: look at it, "
                            "save it, and print then");
    }
    const PrintWish wish{*name, what_at(body), look_at(body), which_at(body), destination_at(body)};
    return once(session, ticket, [&] { return printed(session, wish, *text); });
}

http::Response out(Session& session, const Asked& asked) {
    const auto* pdf = session.tickets.pdf(asked.part);
    if (pdf == nullptr) {
        return refusal(404, "this PDF is no longer kept: make it again");
    }
    return {200,
            "application/pdf",
            *pdf,
            {{"Content-Disposition", "attachment; filename=\"thawslip.pdf\""}}};
}

service::ReprintKind reprint_kind_at(const json::Json& body) {
    using service::ReprintKind;
    static constexpr std::pair<std::string_view, ReprintKind> kinds[] = {
        {"labels", ReprintKind::Labels},
        {"cards", ReprintKind::Cards},
        {"finishing_cards", ReprintKind::FinishingCards},
        {"cook_day_cards", ReprintKind::CookDayCards}};
    const auto word = needed_text(body, "kind");
    const auto* found =
        std::ranges::find(kinds, word, [](const auto& kind) { return std::string{kind.first}; });
    if (found == std::end(kinds)) {
        throw BadRequest{"\"kind\" is to be \"labels\", \"cards\" or one kind of them"};
    }
    return found->second;
}

/// What of a look counts where a print is made again: the rest is as it was printed.
service::ReprintLook reprint_look_at(const json::Json& body, const service::Look& look) {
    const auto asked = body.value("look", json::Json::object());
    const bool has_first = asked.is_object() && asked.contains("first_cell");
    return {look.stock, has_first ? std::optional{look.first_cell} : std::nullopt, look.skip,
            look.part.copies};
}

ReprintWish reprint_wish_at(const json::Json& body) {
    const auto look = look_at(body);
    ReprintWish wish;
    wish.question = {texts_at(body, "bags"), text_at(body, "printed").value_or(""),
                     reprint_kind_at(body), look.part};
    if (wish.question.bags.empty() == wish.question.printed.empty()) {
        throw BadRequest{"expected either \"bags\" or \"printed\""};
    }
    wish.look = reprint_look_at(body, look);
    wish.to = destination_at(body);
    return wish;
}

http::Response reprint(Session& session, const Asked& asked) {
    const auto body = body_of(asked.request);
    const auto wish = reprint_wish_at(body);
    return once(session, ticket_at(body), [&] { return Printed{session.machine.reprint(wish)}; });
}

http::Response door_list(Session& session, const Asked& asked) {
    const auto body = body_of(asked.request);
    const auto look = look_at(body);
    return once(session, ticket_at(body), [&] {
        return Printed{session.machine.print_door_list(look, destination_at(body))};
    });
}

} // namespace

std::span<const Route> print_routes() {
    using http::Method;
    static constexpr std::array routes = {
        Route{Method::Post, "/api/spool", spool},
        Route{Method::Get, "/api/out/*.pdf", out},
        Route{Method::Post, "/api/reprint", reprint},
        Route{Method::Post, "/api/freezer/door-list", door_list},
    };
    return routes;
}

} // namespace thawslip::desk
