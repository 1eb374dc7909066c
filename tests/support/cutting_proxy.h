#pragma once

#include <atomic>
#include <cstdint>
#include <string>
#include <thread>

namespace thawslip::test_support {

/// Stands between a program and a server's socket, and cuts the line where it is asked to: after so
/// many bytes of one direction, while the other is still passed on. What was sent into the cut
/// direction is lost, as in a network that goes away.
class CuttingProxy {
public:
    enum class Direction { ToServer, ToProgram };
    enum class How { Close, Hold }; ///< the program sees an end, or nothing at all

    /// \param server the socket \param place where it listens itself
    CuttingProxy(std::string server, const std::string& place);
    CuttingProxy(const CuttingProxy&) = delete;
    CuttingProxy& operator=(const CuttingProxy&) = delete;
    ~CuttingProxy();

    /// Of each line from now on. \param after bytes
    void cut(Direction direction, std::int64_t after, How how = How::Close);
    void pass_everything() { after_ = -1; }
    std::int64_t passed(Direction direction) const; ///< bytes of the last line
    int cuts() const { return cuts_; }
    /// How often the server was done and waited for more since the last line began: one for each
    /// round trip, the first after the line is open.
    int round_trips() const { return round_trips_; }

private:
    void serve();
    void pass(int program);

    std::string server_;
    int listener_ = -1;
    std::atomic<bool> is_over_{false};
    std::atomic<std::int64_t> after_{-1};
    std::atomic<Direction> direction_{Direction::ToServer};
    std::atomic<How> how_{How::Close};
    std::atomic<std::int64_t> to_server_{0};
    std::atomic<std::int64_t> to_program_{0};
    std::atomic<int> cuts_{0};
    std::atomic<int> round_trips_{0};
    std::thread thread_;
};

} // namespace thawslip::test_support
