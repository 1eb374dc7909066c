#pragma once

#include <atomic>
#include <chrono>
#include <condition_variable>
#include <cstdint>
#include <mutex>
#include <string>

namespace thawslip::desk {

/// That the archive became another, for all who listen; and what whoever watches the archive waits
/// for. All functions may be called from several threads.
class Changes {
public:
    /// How far it has come: after another change it is another.
    struct Mark {
        std::uint64_t count = 0;
        std::string id; ///< of this run of the program alone
    };

    /// \param run what no other run of the program has: letters and digits
    explicit Changes(std::string run = {}) : run_{std::move(run)} {}

    void happened();
    Mark now() const;
    /// Waits until it is another than `seen`, no longer than `patience`.
    Mark wait_past(std::uint64_t seen, std::chrono::milliseconds patience) const;

    /// Somebody who listens, as long as the object is there.
    class Listener {
    public:
        explicit Listener(Changes& changes);
        Listener(const Listener&) = delete;
        Listener& operator=(const Listener&) = delete;
        ~Listener();

    private:
        Changes& changes_;
    };

    /// Says that the desk has changed the archive, or may have: whoever watches is to look.
    void look();

    /// What whoever watches is to do.
    enum class Cause {
        End,    ///< nothing more
        Listen, ///< to look, for somebody listens
        Look,   ///< to look once, for the desk may have changed something, and nobody listens
        Rest,   ///< to hold nothing open: nobody listens any longer
    };
    /// Waits for a cause: none where `look` was called or somebody begins to listen; `between`
    /// where somebody listens, and as long as it takes where nobody does.
    Cause wait_for_cause(std::chrono::milliseconds between);
    /// Ends the waiting for good.
    void end();

    /// Whether all that stations have added at a server is here already, as whoever watches says:
    /// then it need not be asked for again.
    bool is_all_here() const { return all_here_; }
    void have_all_here(bool all_here) { all_here_ = all_here; }

private:
    mutable std::mutex mutex_;
    mutable std::condition_variable changed_; ///< for listeners
    std::condition_variable cause_;           ///< for whoever watches
    const std::string run_;
    std::uint64_t count_ = 0;
    int listeners_ = 0;
    bool is_to_look_ = false;
    bool was_listening_ = false; ///< when there was a cause last
    bool ended_ = false;
    std::atomic<bool> all_here_ = false;
};

} // namespace thawslip::desk
