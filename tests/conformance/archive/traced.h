#pragma once

#include <cstddef>
#include <filesystem>
#include <functional>
#include <limits>
#include <optional>
#include <string>
#include <vector>

namespace thawslip::test_support {

/// One thing a program does to the disk: "rename" of "labels.pdf", "fsync" of "archive.db-wal".
struct Step {
    std::string call;
    std::string path; ///< of a rename, where it leads; symbolic links followed
};

struct TracedRun {
    std::vector<Step> steps;
    bool was_killed = false;
    int status = 0; ///< exit status, where it was not killed
};

inline constexpr std::size_t never = std::numeric_limits<std::size_t>::max();

/// Runs a program as its debugger would (Linux manual pages, ptrace(2)), stops it before each
/// system call that changes a file, and kills it before the one that `kill_before` counts from 0,
/// so that this call and all later ones never happen. What it says goes nowhere.
TracedRun run_traced(const std::vector<std::string>& command, const std::filesystem::path& folder,
                     std::size_t kill_before = never);

/// Lets a program go to its end, but first holds it still before the step that `is_moment` names
/// while `meanwhile` runs: what another program did in between, forced to the moment.
/// \returns its exit status; nothing where there was no such moment
std::optional<int> run_interrupted(const std::vector<std::string>& command,
                                   const std::filesystem::path& folder,
                                   const std::function<bool(const Step&)>& is_moment,
                                   const std::function<void()>& meanwhile);

/// For a child of fork(): becomes a program in `folder`, in silence.
[[noreturn]] void become(const std::vector<std::string>& command,
                         const std::filesystem::path& folder);

/// Whether the system lets a program be run like that; containers may forbid it.
bool can_trace();

} // namespace thawslip::test_support
