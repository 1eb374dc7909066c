#pragma once

#include <chrono>
#include <string>
#include <sys/types.h>
#include <vector>

namespace thawslip::app {

/// What came of another process.
struct Ended {
    bool ended_well = false; ///< by itself, with status 0, and within what it was given
    std::string output;      ///< what it wrote to standard output
};

/// Starts this program again, hands it `input`, and waits for its end. Its standard error goes
/// nowhere. One that takes longer than `patience` or writes more than `most_output` is ended.
/// \throws SystemFailure where it cannot be started
Ended run_self(const std::vector<std::string>& words, const std::string& input,
               std::chrono::milliseconds patience, std::size_t most_output);

/// Starts another program, looked for as a shell does, which reads and writes nothing and goes on
/// when this one ends.
/// \returns its process; -1 where there is no such program
pid_t start_program(const std::vector<std::string>& words);

} // namespace thawslip::app
