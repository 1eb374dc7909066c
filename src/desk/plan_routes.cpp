#include "desk/answers.h"
#include "desk/body.h"
#include "desk/known.h"
#include "desk/plan_answer.h"
#include "desk/route.h"
#include "json/value.h"
#include "service/dinner/dinner_plan.h"
#include "service/dinner/photographed_bags.h"
#include "service/freezer/packages_of_bags.h"

#include <array>

namespace thawslip::desk {
namespace {

using Packages = service::Outcome<std::vector<kitchen::PlannedPackage>>;

/// What is to be planned: bags of the archive, bags by their codes, or a day's.
struct Wanted {
    std::vector<std::string> bags;
    std::vector<std::string> texts;
    std::optional<int> number;
    kitchen::LocalMinute eat;
    int each = 1;
    std::size_t beside = 3; ///< dishes side by side in a picture
};

Wanted wanted_of(const json::Json& body) {
    constexpr int most_bags = 99'999;
    constexpr int most_beside = 3;
    Wanted wanted{texts_at(body, "bags"), texts_at(body, "texts"), number_at(body, "number"), {}};
    if (wanted.bags.empty() + wanted.texts.empty() + !wanted.number != 2) {
        throw BadRequest{"one of \"bags\", \"texts\" and \"number\" is to be given"};
    }
    const auto eat = kitchen::parse_local_minute(needed_text(body, "eat"));
    if (!eat) {
        throw BadRequest{"\"eat\" is to be a date and time such as 2026-12-03T18:30"};
    }
    wanted.eat = *eat;
    wanted.each = number_at(body, "each").value_or(1);
    if (wanted.each < 1 || wanted.each > most_bags) {
        throw BadRequest{"\"each\" is to be a number of bags"};
    }
    const int beside = number_at(body, "beside").value_or(most_beside);
    if (beside < 1 || beside > most_beside) {
        throw BadRequest{"\"beside\" is to be a number from 1 to 3"};
    }
    wanted.beside = static_cast<std::size_t>(beside);
    return wanted;
}

Packages of_archive(const Wanted& wanted, Known& known) {
    if (!known.archive) {
        Packages none;
        none.messages.error("nothing has been printed yet, so no bag is known");
        return none;
    }
    return service::packages_to_eat(*known.archive, {each_its_own(wanted.bags), wanted.each});
}

Packages of_codes(const Wanted& wanted, Known& known) {
    auto* archive = known.archive ? &*known.archive : nullptr;
    return service::packages_of_codes(archive, wanted.texts);
}

Packages of_day(const Wanted& wanted, const service::Settings& settings, const Session& session) {
    const auto name = session.days.name_of(*wanted.number);
    const auto text = name ? session.machine.days.read(*name) : std::nullopt;
    if (!text) {
        throw BadRequest{"there is no day of that number"};
    }
    const auto days = service::plan_days({service::DayText{*name, *text}}, settings);
    Packages packages;
    packages.messages.add(days.diagnostics, days.documents);
    if (!packages.messages.have_errors()) {
        packages.value = packages_of(days, wanted.each);
    }
    return packages;
}

Packages packages_for(const Wanted& wanted, Known& known, const Session& session) {
    if (wanted.number) {
        return of_day(wanted, known.settings, session);
    }
    return wanted.texts.empty() ? of_archive(wanted, known) : of_codes(wanted, known);
}

service::DinnerQuestion question_of(const Wanted& wanted, const service::Settings& settings,
                                    const Machine& machine) {
    service::DinnerQuestion question{
        {}, wanted.eat, machine.now().instant, {}, settings.kitchen.thaw};
    question.of_each = wanted.number ? wanted.each : 1; // of the archive's bags it is said already
    const auto span = service::clock_span(wanted.eat, question.now);
    question.clock = machine.clock(span.from, span.to);
    return question;
}

http::Response plan(Session& session, const Asked& asked) {
    const auto wanted = wanted_of(body_of(asked.request));
    return answer_from(session, archive::Mode::Read, [&](Known& known) {
        const auto& settings = known.settings;
        auto packages = packages_for(wanted, known, session);
        auto planned = service::dinner_plan(
            needed(packages), question_of(wanted, settings, session.machine), style_of(settings));
        packages.messages.add(planned.messages);
        return planned ? answer_with(plan_answer(
                             *planned.value, wanted.beside, std::move(packages.messages), settings,
                             session.shelf.with(session.machine.surroundings(settings))))
                       : refusal(packages.messages);
    });
}

} // namespace

std::span<const Route> plan_routes() {
    using http::Method;
    static constexpr std::array routes = {Route{Method::Post, "/api/plan", plan}};
    return routes;
}

} // namespace thawslip::desk
