#include "desk/changes.h"

#include <utility>

namespace thawslip::desk {

void Changes::happened() {
    {
        const std::lock_guard lock{mutex_};
        ++count_;
    }
    changed_.notify_all();
}

Changes::Mark Changes::now() const {
    return wait_past(0, {});
}

Changes::Mark Changes::wait_past(std::uint64_t seen, std::chrono::milliseconds patience) const {
    std::unique_lock lock{mutex_};
    changed_.wait_for(lock, patience, [&] { return count_ != seen; });
    return {count_, run_ + "-" + std::to_string(count_)};
}

Changes::Listener::Listener(Changes& changes) : changes_{changes} {
    {
        const std::lock_guard lock{changes_.mutex_};
        ++changes_.listeners_;
        changes_.is_to_look_ = true;
    }
    changes_.cause_.notify_one();
}

Changes::Listener::~Listener() {
    {
        const std::lock_guard lock{changes_.mutex_};
        --changes_.listeners_;
    }
    changes_.cause_.notify_one();
}

void Changes::look() {
    {
        const std::lock_guard lock{mutex_};
        is_to_look_ = true;
    }
    cause_.notify_one();
}

Changes::Cause Changes::wait_for_cause(std::chrono::milliseconds between) {
    std::unique_lock lock{mutex_};
    const auto is_called = [this] {
        return ended_ || is_to_look_ || (was_listening_ && listeners_ == 0);
    };
    cause_.wait(lock, [&] { return is_called() || listeners_ > 0; });
    if (was_listening_) {
        cause_.wait_for(lock, between, is_called);
    }
    const bool is_to_look = std::exchange(is_to_look_, false);
    was_listening_ = listeners_ > 0;
    if (ended_) {
        return Cause::End;
    }
    return was_listening_ ? Cause::Listen : is_to_look ? Cause::Look : Cause::Rest;
}

void Changes::end() {
    {
        const std::lock_guard lock{mutex_};
        ended_ = true;
    }
    cause_.notify_one();
}

} // namespace thawslip::desk
