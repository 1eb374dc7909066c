#include "app/progress_line.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fmt/format.h>
#include <memory>
#include <mutex>
#include <string_view>
#include <unistd.h>

namespace thawslip::app {
namespace {

using Clock = std::chrono::steady_clock;

/// ECMA-48, 1991, 8.3.41, Erase In Line: from here to the line's end.
constexpr std::string_view clear_line = "\r\x1b[K";

bool shows_lines() {
    const char* terminal = std::getenv("TERM");
    return ::isatty(STDERR_FILENO) == 1 && terminal != nullptr &&
           std::string_view{terminal} != "dumb";
}

void write_raw(std::string_view text) {
    // What a terminal does not take is not worth a word.
    [[maybe_unused]] const auto written = ::write(STDERR_FILENO, text.data(), text.size());
}

std::string time_text(double seconds) {
    constexpr double minute = 60.0;
    return seconds < 1.5 * minute ? fmt::format("{:.0f} s", std::ceil(seconds))
                                  : fmt::format("{:.0f} min", std::ceil(seconds / minute));
}

class Line {
public:
    explicit Line(std::string doing) : doing_{std::move(doing)} {}
    Line(const Line&) = delete;
    Line& operator=(const Line&) = delete;
    ~Line() { clear(); }

    void show(std::size_t done, std::size_t of) {
        constexpr std::chrono::seconds patience{1};
        constexpr std::chrono::milliseconds pause{100};
        const std::lock_guard lock{guard_};
        const auto now = Clock::now();
        if (done >= of) {
            clear();
        } else if (now - begun_ > patience && now - shown_ > pause) {
            write_raw(std::string{clear_line} + progress_text(doing_, done, of, now - begun_));
            shown_ = now;
            is_shown_ = true;
        }
    }

private:
    void clear() {
        if (is_shown_) {
            write_raw(clear_line);
        }
        is_shown_ = false;
    }

    std::string doing_;
    std::mutex guard_;
    Clock::time_point begun_ = Clock::now();
    Clock::time_point shown_ = begun_;
    bool is_shown_ = false;
};

} // namespace

std::string progress_text(const std::string& doing, std::size_t done, std::size_t of,
                          std::chrono::duration<double> elapsed) {
    const double rate = static_cast<double>(done) / std::max(elapsed.count(), 0.001);
    const double left = static_cast<double>(of - std::min(done, of)) / std::max(rate, 0.001);
    return fmt::format("{}: {} of {}, {:.{}f} a second, {} left", doing, done, of, rate,
                       rate < 10.0 ? 1 : 0, time_text(left));
}

Progress progress_line(std::string doing) {
    if (!shows_lines()) {
        return {};
    }
    return [line = std::make_shared<Line>(std::move(doing))](std::size_t done, std::size_t of) {
        line->show(done, of);
    };
}

} // namespace thawslip::app
