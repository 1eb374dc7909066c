#include "desk/route.h"

#include <array>
#include <memory>

namespace thawslip::desk {
namespace {

using std::chrono::milliseconds;

// WHATWG, HTML Living Standard, section 9.2, Server-sent events: 9.2.5 for how a stream is written.
constexpr const char* event_stream = "text/event-stream";
/// How long a page waits before it asks again where the stream has ended.
constexpr const char* come_back_soon = "retry: 1000\n\n";
constexpr const char* come_back_later = "retry: 30000\n\n";
/// Section 9.2.7: a comment about every 15 seconds. By it, both sides notice a line that was cut.
constexpr const char* comment = ":\n\n";
constexpr milliseconds longest_silence{15'000};

/// Data there must be, or the page is not told; there is nothing to be said but that it may ask.
std::string event_at(const Changes::Mark& mark) {
    return "id: " + mark.id + "\nevent: changed\ndata:\n\n";
}

/// What one page hears.
class Hearing {
public:
    Hearing(std::shared_ptr<Changes> changes, std::string last_id)
        : changes_{std::move(changes)}, listener_{*changes_}, last_id_{std::move(last_id)} {}

    std::string next(milliseconds patience) {
        if (!begun_) {
            begun_ = true;
            return begin();
        }
        const auto mark = changes_->wait_past(seen_, patience);
        if (mark.count != seen_) {
            return tell(mark);
        }
        silent_ += patience;
        return silent_ >= longest_silence ? told(comment) : std::string{};
    }

private:
    /// Who was told something else last, or nothing, has missed what came since.
    std::string begin() {
        const auto mark = changes_->now();
        seen_ = mark.count;
        return mark.id == last_id_ ? come_back_soon : come_back_soon + event_at(mark);
    }
    std::string tell(const Changes::Mark& mark) {
        seen_ = mark.count;
        return told(event_at(mark));
    }
    std::string told(std::string piece) {
        silent_ = milliseconds{0};
        return piece;
    }

    std::shared_ptr<Changes> changes_;
    Changes::Listener listener_;
    std::string last_id_;
    std::uint64_t seen_ = 0;
    bool begun_ = false;
    milliseconds silent_{0};
};

http::Response changes(Session& session, const Asked& asked) {
    auto hearing = std::make_shared<Hearing>(session.machine.changes,
                                             http::header_of(asked.request, "last-event-id"));
    return {200, event_stream, come_back_later, {}, [hearing](milliseconds patience) {
                return hearing->next(patience);
            }};
}

} // namespace

std::span<const Route> change_routes() {
    static constexpr std::array routes = {
        Route{http::Method::Get, "/api/changes", changes, false},
    };
    return routes;
}

} // namespace thawslip::desk
