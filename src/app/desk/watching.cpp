#include "app/desk/watching.h"

#include "app/archive_place.h"
#include "app/server_archive.h"
#include "archive/address.h"
#include "archive/changes.h"

#include <algorithm>
#include <chrono>
#include <optional>
#include <utility>

namespace thawslip::app {
namespace {

using Clock = std::chrono::steady_clock;
using Cause = desk::Changes::Cause;

constexpr std::chrono::milliseconds between_looks{50};
constexpr int looks_a_settings = 40; ///< so often the settings are read again
constexpr std::chrono::seconds to_reach{3};
constexpr std::chrono::seconds shortest_pause{1}; ///< before a server that was away is asked again
constexpr std::chrono::seconds longest_pause{30};

} // namespace

/// What is known of the archive that the settings name.
struct Watching::Watched {
    explicit Watched(Settings now)
        : settings{std::move(now)}, file{archive_file_if_known(settings)} {}

    Settings settings;
    archive::FileChanges file;
    std::optional<archive::ServerChanges> server = {};
    bool is_due = false; ///< to be brought together with the server
    Clock::time_point not_before = {};
    std::chrono::seconds pause = shortest_pause;
    int looks = 0; ///< since the settings were read

    /// Once the server is reached, what came while nobody listened is missing here.
    void listen() {
        if (server || Clock::now() < not_before) {
            return;
        }
        auto listening = archive::ServerChanges::listen(settings.archive, to_reach);
        if (listening) {
            server.emplace(std::move(listening).value());
            is_due = true;
        } else {
            wait_longer();
        }
    }

    void hear() {
        try {
            is_due = (server && server->hears(std::chrono::milliseconds{0})) || is_due;
        } catch (const archive::ArchiveFailure&) { // the line was lost, and with it some calls
            server.reset();
        }
    }

    void wait_longer() {
        not_before = Clock::now() + pause;
        pause = std::min(2 * pause, longest_pause);
    }
};

Watching::Watching(SettingsNow settings, desk::Changes& changes)
    : settings_{std::move(settings)}, changes_{changes}, thread_{[this] { run(); }} {}

Watching::~Watching() {
    changes_.end();
    thread_.join();
}

void Watching::run() {
    for (auto cause = Cause::Rest; cause != Cause::End; // at first to know what there is
         cause = changes_.wait_for_cause(between_looks)) {
        try {
            look(cause);
        } catch (const std::exception&) { // said where bags are asked for
            changes_.have_all_here(false);
            if (watched_) {
                watched_->wait_longer();
            }
        }
    }
}

/// \returns whether it is known what to watch
bool Watching::find_archive() {
    if (watched_ && ++watched_->looks <= looks_a_settings) {
        return true;
    }
    auto now = settings_();
    if (now && (!watched_ || watched_->settings.archive != now.value->archive)) {
        watched_ = std::make_unique<Watched>(*std::move(now.value));
    }
    if (watched_) {
        watched_->looks = 0;
    }
    return watched_ != nullptr;
}

void Watching::look(Cause cause) {
    if (!find_archive()) {
        return;
    }
    const bool is_new = watched_->file.look();
    if (is_new) {
        changes_.happened();
    }
    if (archive::is_address(watched_->settings.archive)) {
        look_at_server(cause, is_new);
    }
    if (cause != Cause::Listen) {
        watched_->file.let_go();
        watched_->server.reset();
    }
    changes_.have_all_here(watched_->server && !watched_->is_due);
}

void Watching::look_at_server(Cause cause, bool is_new) {
    watched_->is_due = watched_->is_due || is_new || cause == Cause::Look;
    if (cause == Cause::Listen) {
        watched_->listen();
        watched_->hear();
    }
    if (watched_->is_due && Clock::now() >= watched_->not_before) {
        exchange();
    }
}

/// What was taken over is new to the pages here, and so it is looked at once more: whether all of
/// it came from there.
void Watching::exchange() {
    auto& watched = *watched_;
    watched.is_due = false;
    if (!exchange_quietly(watched.settings)) {
        watched.is_due = true;
        watched.wait_longer();
        return;
    }
    watched.pause = shortest_pause;
    if (watched.file.look()) {
        watched.is_due = true;
        changes_.happened();
    }
}

} // namespace thawslip::app
