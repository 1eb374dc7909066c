#include "desk/desk.h"

#include "base/system_failure.h"
#include "desk/answers.h"
#include "desk/asset.h"
#include "desk/body.h"
#include "desk/route.h"

#include <array>
#include <fmt/format.h>
#include <functional>
#include <mutex>
#include <optional>

namespace thawslip::desk {

struct Desk::Inside {
    Session session;
    std::vector<Route> routes = all_routes();
};

namespace {

constexpr int not_found = 404;
constexpr int not_allowed = 405;

/// What of `path` stands for the star of `pattern`; nothing where they do not fit.
std::optional<std::string> part_of(std::string_view path, std::string_view pattern) {
    const auto star = pattern.find('*');
    if (star == std::string_view::npos) {
        return path == pattern ? std::optional{std::string{}} : std::nullopt;
    }
    const auto head = pattern.substr(0, star);
    const auto tail = pattern.substr(star + 1);
    if (path.size() <= head.size() + tail.size() || !path.starts_with(head) ||
        !path.ends_with(tail)) {
        return std::nullopt;
    }
    auto part = std::string{path.substr(star, path.size() - head.size() - tail.size())};
    return part.find('/') == std::string::npos ? std::optional{std::move(part)} : std::nullopt;
}

std::optional<http::Response> asset_for(const http::Request& request) {
    for (const auto& asset : assets()) {
        if (asset.path != request.path) {
            continue;
        }
        if (request.method != http::Method::Get && request.method != http::Method::Head) {
            return refusal(not_allowed, "a file of the page is only read");
        }
        const auto tag = fmt::format("\"{:x}\"", std::hash<std::string_view>{}(asset.bytes));
        if (http::header_of(request, "if-none-match") == tag) {
            return http::Response{304, std::string{asset.type}, {}, {{"ETag", tag}}};
        }
        return http::Response{
            200, std::string{asset.type}, std::string{asset.bytes}, {{"ETag", tag}}};
    }
    return std::nullopt;
}

http::Response answer_by(const Route& route, Session& session, const Asked& asked) {
    try {
        return route.answer(session, asked);
    } catch (const BadRequest& bad) {
        return refusal(400, bad.what());
    } catch (const Refused& refused) {
        return refusal(refused.messages);
    } catch (const std::exception& failure) { // of the system: the page says it, and goes on
        return refusal(500, failure.what());
    }
}

} // namespace

Desk::Desk(Machine machine) : inside_{std::make_unique<Inside>()} {
    inside_->session.machine = std::move(machine);
    if (!inside_->session.machine.changes) {
        inside_->session.machine.changes = std::make_shared<Changes>();
    }
}

Desk::~Desk() = default;

http::Response Desk::answer(const http::Request& request) {
    if (auto asset = asset_for(request)) {
        return *std::move(asset);
    }
    bool is_known = false;
    for (const auto& route : inside_->routes) {
        auto part = part_of(request.path, route.path);
        is_known = is_known || part;
        if (!part || route.method != request.method) {
            continue;
        }
        std::unique_lock lock{inside_->session.one_at_a_time, std::defer_lock};
        if (route.alone) {
            lock.lock();
        }
        return answer_by(route, inside_->session, {request, *std::move(part)});
    }
    return is_known ? refusal(not_allowed, "this is asked for in another way")
                    : refusal(not_found, "there is nothing here");
}

std::vector<Route> all_routes() {
    std::vector<Route> all;
    for (const auto& routes : {page_routes(), day_routes(), check_routes(), print_routes(),
                               bag_routes(), freezer_routes(), plan_routes(), archive_routes(),
                               change_routes(), phone_routes(), setup_routes()}) {
        all.insert(all.end(), routes.begin(), routes.end());
    }
    return all;
}

} // namespace thawslip::desk
