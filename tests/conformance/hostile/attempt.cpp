#include "attempt.h"

#if defined(THAWSLIP_SANITIZED) && defined(NDEBUG)
#error "a sanitized build keeps its assertions: no NDEBUG"
#endif

namespace thawslip::test_support {
namespace {

/// 1 GiB of addresses is ten times what ten thousand labels take. Two minutes only turn a hang
/// into a failure.
std::string bounds() {
#ifdef THAWSLIP_SANITIZED
    return "";
#else
    return "ulimit -v 1048576; ";
#endif
}

} // namespace

Attempts::Attempts() {
    write_file(folder_ / "day.toml", read_file(sample_day));
    settle();
}

Outcome Attempts::run(const std::string& arguments, const std::string& before,
                      const std::string& program) const {
    return test_support::run(
        "cd " + shell_word(folder_.path().string()) +
        "; export XDG_CONFIG_HOME=/nonexistent XDG_DATA_HOME=" + shell_word(data_.path().string()) +
        "; " + bounds() + before + (before.empty() ? "" : "; ") + "timeout 120 " + program + " " +
        arguments);
}

std::set<std::string> Attempts::names() const {
    std::set<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator{folder_.path()}) {
        names.insert(entry.path().filename().string());
    }
    return names;
}

std::string Attempts::left_behind() const {
    std::string left;
    for (const auto& name : names()) {
        left += known_.contains(name) ? "" : name + " ";
    }
    return left;
}

} // namespace thawslip::test_support
