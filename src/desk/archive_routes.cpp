#include "desk/answers.h"
#include "desk/body.h"
#include "desk/known.h"
#include "desk/page_hints.h"
#include "desk/route.h"
#include "json/value.h"
#include "service/archive/past_prints.h"

#include <array>

namespace thawslip::desk {
namespace {

json::Json print_json(const service::PastPrint& print) {
    const auto iso = [](kitchen::Date day) { return kitchen::to_iso(day); };
    return {{"at", print.at},
            {"first_at", print.first_at},
            {"times", print.times},
            {"what", print.what},
            {"days", json::list_of(print.days, iso)},
            {"dishes", print.dishes},
            {"bags", print.bags},
            {"stock", print.stock}};
}

http::Response archive_of(Session& session, const Asked&) {
    return answer_from(session, archive::Mode::Read, [](Known& known) {
        const auto prints = known.archive ? service::past_prints(*known.archive)
                                          : std::vector<service::PastPrint>{};
        return answer_with({{"prints", json::list_of(prints, print_json)}});
    });
}

http::Response done(const Delivered& delivered) {
    return answer_with({{"done", delivered.done}, {"said", page_said(delivered.said)}});
}

http::Response back_up(Session& session, const Asked& asked) {
    body_of(asked.request);
    return done(session.machine.back_up());
}

http::Response export_archive(Session& session, const Asked& asked) {
    body_of(asked.request);
    return done(session.machine.export_archive());
}

} // namespace

std::span<const Route> archive_routes() {
    using http::Method;
    static constexpr std::array routes = {
        Route{Method::Get, "/api/archive", archive_of},
        Route{Method::Post, "/api/archive/backup", back_up},
        Route{Method::Post, "/api/archive/export", export_archive},
    };
    return routes;
}

} // namespace thawslip::desk
