#include "http/streams.h"

namespace thawslip::http {
namespace {

/// A client that takes nothing holds nobody up for longer.
constexpr std::chrono::seconds longest_end{1};

} // namespace

bool Streams::opened(const std::string& key) {
    const std::lock_guard lock{mutex_};
    const auto found = of_one_.find(key);
    const auto of_one = found == of_one_.end() ? 0 : found->second;
    if (over_ || count_ >= most_ || of_one >= most_of_one_) {
        return false;
    }
    ++of_one_[key];
    ++count_;
    return true;
}

void Streams::closed(const std::string& key) {
    {
        const std::lock_guard lock{mutex_};
        --count_;
        if (--of_one_[key] == 0) {
            of_one_.erase(key);
        }
    }
    left_.notify_all();
}

bool Streams::are_open() const {
    const std::lock_guard lock{mutex_};
    return count_ > 0;
}

bool Streams::are_over() const {
    const std::lock_guard lock{mutex_};
    return over_;
}

void Streams::end() {
    std::unique_lock lock{mutex_};
    over_ = true;
    left_.wait_for(lock, longest_end, [this] { return count_ == 0; });
}

} // namespace thawslip::http
